#include "command/bare_studio.h"
#include "command/call.h"
#include "command/file_mark.h"

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

namespace throwline::command_test {
namespace {

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

Called sheet(const std::string& options) {
    return call(split("sheet - " + options), bare_studio(32));
}

TEST(SheetCommand, WritesTheFormatOfTheExtension) {
    const WorkingFolder folder;
    EXPECT_EQ(sheet("-o floor.pdf").code, 0);
    EXPECT_EQ(sheet("--output floor.svg").code, 0);
    EXPECT_EQ(sheet("-o floor.png --dpi 40").code, 0);
    EXPECT_TRUE(read("floor.pdf").starts_with("%PDF-"));
    EXPECT_TRUE(says(read("floor.svg").substr(0, 400), "<svg"));
    EXPECT_TRUE(read("floor.png").starts_with("\x89PNG"));
    EXPECT_EQ(folder.files(), (std::vector<std::string>{"floor.pdf", "floor.png", "floor.svg"}));
}

TEST(SheetCommand, TellsWhatItWrote) {
    const WorkingFolder folder;
    const Called answer = sheet("-o floor.svg --paper a4 --orientation portrait --json");
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_EQ(text_at(answer, "/file"), "floor.svg");
    EXPECT_EQ(number_at(answer, "/width_mm"), 210.0);
    EXPECT_EQ(number_at(answer, "/height_mm"), 297.0);
    EXPECT_TRUE(says(sheet("-o floor.svg").out, "print it at 100 %"));
}

TEST(SheetCommand, WritesTheSameBytesEveryTime) {
    const WorkingFolder folder;
    for (const char* name : {"a.pdf", "b.pdf", "a.svg", "b.svg"}) {
        EXPECT_EQ(sheet(std::string{"-o "} + name).code, 0);
    }
    EXPECT_EQ(read("a.pdf"), read("b.pdf"));
    EXPECT_EQ(read("a.svg"), read("b.svg"));
}

TEST(SheetCommand, MarksThePrintWithTheStateOfTheFile) {
    const WorkingFolder folder;
    EXPECT_EQ(sheet("-o floor.svg").code, 0);
    EXPECT_TRUE(says(read("floor.svg"), command::file_mark(bare_studio(32))));
    EXPECT_FALSE(says(read("floor.svg"), command::file_mark(bare_studio(33))));
}

TEST(SheetCommand, LeavesAnOldFileWholeWhenItFails) {
    const WorkingFolder folder;
    write("floor.pdf", "old");
    EXPECT_EQ(sheet("-o floor.pdf --scale 1:1").code, 2);
    EXPECT_EQ(sheet("-o floor.pdf --paper a4x").code, 2);
    EXPECT_EQ(sheet("-o floor.pdf --shot 9Z").code, 2);
    EXPECT_EQ(call(split("sheet - -o floor.pdf"), "{").code, 2);
    EXPECT_EQ(read("floor.pdf"), "old");
    EXPECT_EQ(folder.files(), std::vector<std::string>{"floor.pdf"});
}

TEST(SheetCommand, RefusesPlacesItCannotWriteTo) {
    const WorkingFolder folder;
    mkdir("folder.pdf", 0755);
    for (const char* name : {"missing/floor.pdf", "folder.pdf", "/proc/floor.pdf"}) {
        const Called answer = sheet(std::string{"-o "} + name);
        EXPECT_EQ(answer.code, 2) << name;
        EXPECT_TRUE(answer.out.empty()) << name;
        EXPECT_TRUE(says(answer.err, name)) << answer.err;
    }
    EXPECT_EQ(folder.files(), std::vector<std::string>{"folder.pdf"});
}

TEST(SheetCommand, NamesWhatItDoesNotKnow) {
    EXPECT_TRUE(says(sheet("-o floor.pfd").err, ".pdf, .svg or .png"));
    EXPECT_TRUE(says(sheet("").err, "--output is missing"));
    EXPECT_TRUE(says(sheet("-o a.pdf --orientation sideways").err, "landscape or portrait"));
    EXPECT_TRUE(says(sheet("-o a.pdf --without walls").err, "ground, coverage, pools or findings"));
    EXPECT_TRUE(says(sheet("-o a.pdf --margin -3mm").err, "--margin"));
}

TEST(SheetCommand, LeavesLayersOut) {
    const WorkingFolder folder;
    EXPECT_EQ(sheet("-o all.svg").code, 0);
    EXPECT_EQ(sheet("-o less.svg --without pools --without ground").code, 0);
    EXPECT_LT(read("less.svg").size(), read("all.svg").size());
}

// Check value of the CRC catalogue for this polynomial: the digits 1 to 9 give CBF43926.
TEST(FileMark, IsTheUsualChecksum) {
    EXPECT_EQ(command::file_mark("123456789"), "cbf43926");
    EXPECT_EQ(command::file_mark(""), "00000000");
}

} // namespace
} // namespace throwline::command_test
