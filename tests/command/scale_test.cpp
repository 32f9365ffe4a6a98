#include "command/call.h"

#include <gtest/gtest.h>

namespace throwline::command_test {
namespace {

// 420 x 297 less 10 mm all round: 400 x 277; 12 m / 400 mm = 30, 9 m / 277 mm = 32.49, so 1:50.
TEST(ScaleCommand, ChoosesTheLargestStandardScale) {
    const Called answer =
        call(split("scale --width 12m --depth 9m --paper a3 --margin 10mm --system metric --json"));
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_EQ(number_at(answer, "/ratio"), 50.0);
    EXPECT_EQ(text_at(answer, "/name"), "1:50");
    EXPECT_EQ(text_at(answer, "/orientation"), "landscape");
    EXPECT_NEAR(number_at(answer, "/drawn_width_mm"), 240.0, 1e-9);
    EXPECT_NEAR(number_at(answer, "/drawn_height_mm"), 180.0, 1e-9);
    EXPECT_GE(size_at(answer, "/alternatives"), 1U);
}

// 40 x 30 ft on 17 x 11 in less half an inch all round and an inch at the foot: 16 x 9 in,
// ratio 40.
TEST(ScaleCommand, NamesInchScalesDrawingFirst) {
    const Called answer = call(split("scale --width 40ft --depth 30ft --paper tabloid "
                                     "--margin 0.5in --strip 1in --system imperial --json"));
    EXPECT_EQ(text_at(answer, "/name"), "1/4 in = 1 ft");
    EXPECT_EQ(number_at(answer, "/ratio"), 48.0);
    EXPECT_NEAR(number_at(answer, "/needed_ratio"), 40.0, 1e-9);
}

TEST(ScaleCommand, OffersOtherScalesOnlyWhenAsked) {
    const std::string room = "scale --width 9m --depth 6m --paper A3 --json ";
    EXPECT_EQ(number_at(call(split(room)), "/ratio"), 50.0);
    EXPECT_EQ(number_at(call(split(room + "--extras")), "/ratio"), 25.0);
}

TEST(ScaleCommand, SaysWhenAWantedScaleDoesNotFit) {
    const std::string room = "scale --width 12m --depth 9m --paper A3 ";
    EXPECT_EQ(call(split(room + "--scale 1:100")).code, 0);
    const Called answer = call(split(room + "--scale 1:20"));
    EXPECT_EQ(answer.code, 2);
    EXPECT_NE(answer.err.find("1:50"), std::string::npos) << answer.err;
}

TEST(ScaleCommand, NamesTheNearestPaper) {
    const Called answer = call(split("scale --width 12m --depth 9m --paper tabliod"));
    EXPECT_EQ(answer.code, 2);
    EXPECT_NE(answer.err.find("nearest is \"tabloid\""), std::string::npos) << answer.err;
}

TEST(ScaleCommand, RefusesMarginsThatLeaveNothing) {
    EXPECT_EQ(call(split("scale --width 12m --depth 9m --margin 200mm")).code, 2);
    EXPECT_EQ(call(split("scale --width 12m --depth 9m --margin -1mm")).code, 2);
    EXPECT_EQ(call(split("scale --width 0m --depth 9m")).code, 2);
}

} // namespace
} // namespace throwline::command_test
