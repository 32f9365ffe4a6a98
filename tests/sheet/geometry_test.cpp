#include "sheet/coverage_fan.h"
#include "sheet/hatch.h"
#include "sheet/text_wrap.h"

#include "sheet/sheet_support.h"

#include <gtest/gtest.h>
#include <numbers>

namespace throwline::sheet {
namespace {

const Polygon kRoom{{0, 0}, {10, 0}, {10, 8}, {0, 8}};
/// An L: the upper right quarter is missing.
const Polygon kCornerRoom{{0, 0}, {10, 0}, {10, 4}, {5, 4}, {5, 8}, {0, 8}};

TEST(HatchLines, CoverARectangleEvenly) {
    const Polygon square{{0.25, 0.25}, {10.25, 0.25}, {10.25, 5.25}, {0.25, 5.25}};
    const auto lines = hatch_lines(square, 0.0, 1.0);
    ASSERT_EQ(lines.size(), 5U);
    for (const auto& [from, to] : lines) {
        EXPECT_NEAR((to - from).norm(), 10.0, 1e-12);
    }
}

TEST(HatchLines, LeaveTheMissingCornerOpen) {
    double total_m = 0.0;
    for (const auto& [from, to] : hatch_lines(kCornerRoom, std::numbers::pi / 4.0, 0.05)) {
        total_m += (to - from).norm();
        EXPECT_TRUE(contains(kCornerRoom, (from + to) / 2.0, 1e-6));
    }
    EXPECT_NEAR(total_m * 0.05, area(kCornerRoom), 0.2);
}

TEST(HatchDots, LieInside) {
    const auto dots = hatch_dots(kCornerRoom, 0.5);
    EXPECT_NEAR(static_cast<double>(dots.size()) * 0.25, area(kCornerRoom), 5.0);
    for (const Vec2& dot : dots) {
        EXPECT_TRUE(contains(kCornerRoom, dot));
    }
}

TEST(CoverageFan, StopsAtTheFarWall) {
    const double half_rad = std::atan(0.25);
    const double up_rad = std::numbers::pi / 2.0;
    const Polygon fan = coverage_fan(kRoom, {5, 0.5}, up_rad - half_rad, up_rad + half_rad);
    ASSERT_EQ(fan.size(), 3U);
    EXPECT_NEAR(area(fan), 7.5 * 7.5 * 0.25, 1e-9);
}

TEST(CoverageFan, DoesNotSeeRoundACorner) {
    const Polygon fan = coverage_fan(kCornerRoom, {7.5, 1.0}, 0.0, std::numbers::pi);
    ASSERT_GE(fan.size(), 4U);
    // Behind the corner at 5, 4 only what the ray past it lets through.
    EXPECT_TRUE(contains(fan, {2.0, 6.0}));
    EXPECT_FALSE(contains(fan, {4.8, 7.5}));
    for (const Vec2& corner : fan) {
        EXPECT_TRUE(contains(kCornerRoom, corner, 0.001));
    }
}

TEST(FirstWall, LooksThroughTheNearWallFromOutside) {
    const auto wall = first_wall(kRoom, {5, -2}, std::numbers::pi / 2.0);
    ASSERT_TRUE(wall);
    EXPECT_NEAR(wall->y(), 8.0, 1e-12);
    EXPECT_FALSE(first_wall(kRoom, {5, -2}, -std::numbers::pi / 2.0));
}

TEST(WrappedLines, KeepEveryWordAndTheWidth) {
    const test::EvenMeasure measure;
    const auto lines =
        wrapped_lines("one two three four five six", 2.0 * 10.0, 2.5, false, measure);
    std::string together;
    for (const std::string& line : lines) {
        EXPECT_LE(measure.width_mm(line, 2.5, false), 20.0);
        together += line + " ";
    }
    EXPECT_EQ(together, "one two three four five six ");
}

TEST(WrappedLines, BreakAWordThatIsTooLong) {
    const test::EvenMeasure measure;
    const auto lines = wrapped_lines("größergrößergrößer", 10.0, 2.5, false, measure);
    ASSERT_GT(lines.size(), 1U);
    std::string together;
    for (const std::string& line : lines) {
        EXPECT_LE(measure.width_mm(line, 2.5, false), 10.0);
        together += line;
    }
    EXPECT_EQ(together, "größergrößergrößer");
}

TEST(CutToWidth, ShowsThatSomethingIsMissing) {
    const test::EvenMeasure measure;
    EXPECT_EQ(cut_to_width("short", 10.0, 2.5, false, measure), "short");
    EXPECT_EQ(cut_to_width("rather long", 10.0, 2.5, false, measure), "rath…");
}

} // namespace
} // namespace throwline::sheet
