#include "command/bare_studio.h"
#include "command/call.h"

#include <gtest/gtest.h>

namespace throwline::command_test {
namespace {

bool says(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

Called section(const std::string& options) {
    return call(split("sheet - --which section -o cut.svg " + options), bare_studio(32));
}

TEST(SectionLine, GoesBetweenTwoPlacesInAnyUnit) {
    const WorkingFolder folder;
    const Called metric = section("--along \"1m,2m to 9m,2m\" --depth 3m");
    EXPECT_EQ(metric.code, 0) << metric.err;
    EXPECT_TRUE(says(metric.out, "Section from"));
    const Called feet = section("--along \"3ft 3in,6' to 20ft,6'\"");
    EXPECT_EQ(feet.code, 0) << feet.err;
}

TEST(SectionLine, NeedsNothingForARoom) {
    const WorkingFolder folder;
    const Called answer = section("");
    EXPECT_EQ(answer.code, 0) << answer.err;
}

TEST(SectionLine, TellsEveryFault) {
    const WorkingFolder folder;
    const Called answer = section("--along \"1m,2 to x,2m\" --depth 0m");
    EXPECT_EQ(answer.code, 2);
    EXPECT_TRUE(says(answer.err, "--along: cannot read \"2\" as a length")) << answer.err;
    EXPECT_TRUE(says(answer.err, "--along: cannot read \"x\" as a length")) << answer.err;
    EXPECT_TRUE(says(answer.err, "--depth")) << answer.err;
    EXPECT_TRUE(folder.files().empty());
}

TEST(SectionLine, NamesAShotThatIsNotThere) {
    const WorkingFolder folder;
    const Called answer = section("--along 9Z");
    EXPECT_EQ(answer.code, 2);
    EXPECT_TRUE(says(answer.err, "there is no shot \"9Z\"")) << answer.err;
}

} // namespace
} // namespace throwline::command_test
