#include "optics/line_rules.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::optics {
namespace {

const Vec2 kFirst(0, 0);
const Vec2 kSecond(2, 0);

TEST(LineRules, CamerasOnOneSideDoNotCross) {
    EXPECT_EQ(side_of_line(kFirst, kSecond, {1, -3}), LineSide::right);
    EXPECT_EQ(side_of_line(kFirst, kSecond, {1, 2}), LineSide::left);
    EXPECT_FALSE(crosses_line(kFirst, kSecond, {1, -3}, {3, -2}));
    EXPECT_TRUE(crosses_line(kFirst, kSecond, {1, -3}, {1, 2}));
}

TEST(LineRules, ACameraOnTheLineCrossesNothing) {
    EXPECT_EQ(side_of_line(kFirst, kSecond, {5, 0.005}), LineSide::on_line);
    EXPECT_FALSE(crosses_line(kFirst, kSecond, {5, 0}, {1, 2}));
    EXPECT_EQ(side_of_line(kFirst, kFirst, {1, 2}), LineSide::on_line);
}

TEST(LineRules, TheTurnIsMeasuredAtTheSubject) {
    EXPECT_NEAR(angle_between_cameras({1, 0}, {1, -3}, {2.2, -2.75})->deg(), 23.575, 0.0006);
    EXPECT_NEAR(angle_between_cameras({1, 0}, {1, -3}, {3, -2})->deg(), 45.0, 1e-9);
    EXPECT_FALSE(angle_between_cameras({1, 0}, {1, 0}, {3, -2}));
    EXPECT_EQ(angle_between_cameras_working({1, 0}, {1, -3}, {3, -2}).result, "45.0°");
}

TEST(LineRules, ACutIsClearByTurnOrBySize) {
    EXPECT_FALSE(cut_is_clear(Angle::degrees(23.6), ShotSize::medium, ShotSize::medium));
    EXPECT_FALSE(cut_is_clear(Angle::degrees(23.6), ShotSize::medium, ShotSize::medium_close_up));
    EXPECT_TRUE(cut_is_clear(Angle::degrees(23.6), ShotSize::medium, ShotSize::close_up));
    EXPECT_TRUE(cut_is_clear(Angle::degrees(30), ShotSize::medium, ShotSize::medium));
}

RC_GTEST_PROP(LineRules, SwappingTheSubjectsSwapsTheSides, ()) {
    const Vec2 camera(*rc::gen::inRange(-50, 50), *rc::gen::inRange(1, 50));
    RC_ASSERT(side_of_line(kFirst, kSecond, camera) == LineSide::left);
    RC_ASSERT(side_of_line(kSecond, kFirst, camera) == LineSide::right);
}

} // namespace
} // namespace throwline::optics
