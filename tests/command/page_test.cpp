#include "base/file_mark.h"
#include "command/bare_studio.h"
#include "command/call.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

namespace throwline::command_test {
namespace {

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

Called page(const std::string& options) {
    return call(split("page - " + options), bare_studio(32));
}

TEST(PageCommand, WritesOnePage) {
    const WorkingFolder folder;
    const Called answer = page("-o floor.html");
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_TRUE(says(answer.out, "floor.html: "));
    const std::string html = read("floor.html");
    EXPECT_TRUE(html.starts_with("<!doctype html>\n"));
    EXPECT_TRUE(says(html, "<svg "));
    EXPECT_TRUE(says(html, file_mark(bare_studio(32))));
    EXPECT_EQ(text_at(page("-o floor.html --json"), "/file"), "floor.html");
    EXPECT_EQ(folder.files(), std::vector<std::string>{"floor.html"});
}

TEST(PageCommand, WritesTheSameBytesEveryTime) {
    const WorkingFolder folder;
    EXPECT_EQ(page("-o a.html").code, 0);
    EXPECT_EQ(page("-o b.html").code, 0);
    EXPECT_EQ(read("a.html"), read("b.html"));
}

TEST(PageCommand, RefusesWhatCannotBe) {
    const WorkingFolder folder;
    mkdir("folder.html", 0755);
    EXPECT_TRUE(says(page("").err, "--output is missing"));
    EXPECT_TRUE(says(page("-o floor.pdf").err, "must end in .html"));
    EXPECT_EQ(call(split("page - -o floor.html"), "{").code, 2);
    for (const char* place : {"missing/floor.html", "folder.html", "/proc/floor.html"}) {
        const Called answer = page(std::string{"-o "} + place);
        EXPECT_EQ(answer.code, 2) << place;
        EXPECT_TRUE(answer.out.empty()) << place;
        EXPECT_TRUE(says(answer.err, place)) << answer.err;
    }
    EXPECT_EQ(folder.files(), std::vector<std::string>{"folder.html"});
}

} // namespace
} // namespace throwline::command_test
