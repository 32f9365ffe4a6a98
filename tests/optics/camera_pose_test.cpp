#include "optics/camera_pose.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::optics {
namespace {

Vec3 any_point() {
    return Vec3(*rc::gen::inRange(-1000, 1000), *rc::gen::inRange(-1000, 1000),
                *rc::gen::inRange(-300, 300))
           / 100.0;
}

CameraPose any_pose() {
    return {any_point(), Angle::degrees(*rc::gen::inRange(-180, 180)),
            Angle::degrees(*rc::gen::inRange(-89, 89)), Angle::degrees(*rc::gen::inRange(-45, 45))};
}

TEST(CameraPose, ALevelCameraAlongXHasItsRightTowardsMinusY) {
    const CameraAxes axes = axes_of({});
    EXPECT_LT((axes.forward - Vec3::UnitX()).norm(), 1e-15);
    EXPECT_LT((axes.right + Vec3::UnitY()).norm(), 1e-15);
    EXPECT_LT((axes.down + Vec3::UnitZ()).norm(), 1e-15);
}

RC_GTEST_PROP(CameraPose, AxesAreSquareUnitVectors, ()) {
    const CameraAxes axes = axes_of(any_pose());
    RC_ASSERT(std::abs(axes.right.norm() - 1.0) < 1e-12);
    RC_ASSERT(std::abs(axes.down.norm() - 1.0) < 1e-12);
    RC_ASSERT(std::abs(axes.right.dot(axes.forward)) < 1e-12);
    RC_ASSERT(std::abs(axes.down.dot(axes.forward)) < 1e-12);
    RC_ASSERT(std::abs(axes.right.dot(axes.down)) < 1e-12);
}

RC_GTEST_PROP(CameraPose, WhatItLooksAtIsInTheMiddle, ()) {
    const Vec3 lens = any_point();
    const Vec3 target = any_point();
    RC_PRE((target - lens).norm() > 0.1);
    const auto pose = look_at(lens, target);
    RC_ASSERT(pose.has_value());
    const auto seen = Frame(*pose, 0.5, 0.3).project(target);
    RC_ASSERT(seen.has_value());
    RC_ASSERT(seen->norm() < 1e-9);
}

TEST(CameraPose, LookingAtItselfHasNoAnswer) {
    EXPECT_FALSE(look_at({1, 2, 3}, {1, 2, 3}));
    const auto up = look_at({0, 0, 0}, {0, 0, 2});
    ASSERT_TRUE(up);
    EXPECT_NEAR(up->tilt.deg(), 90, 1e-12);
}

RC_GTEST_PROP(Frame, RaysAndProjectionUndoEachOther, ()) {
    const Frame frame(any_pose(), *rc::gen::inRange(5, 200) / 100.0,
                      *rc::gen::inRange(5, 200) / 100.0);
    const Vec2 wanted(*rc::gen::inRange(-100, 101) / 100.0, *rc::gen::inRange(-100, 101) / 100.0);
    const double reach_m = *rc::gen::inRange(1, 300) / 10.0;
    const Vec3 point = frame.pose().lens + reach_m * frame.ray_direction(wanted);
    const auto seen = frame.project(point);
    RC_ASSERT(seen.has_value());
    RC_ASSERT((*seen - wanted).norm() < 1e-9);
    RC_ASSERT(std::abs(frame.axes().forward.dot(frame.ray_per_depth(wanted)) - 1.0) < 1e-12);
}

TEST(Frame, PointsBehindTheLensFallNowhere) {
    const Frame frame;
    EXPECT_FALSE(frame.project({-1, 0, 0}));
    EXPECT_FALSE(frame.project({kNearPlane_m / 2.0, 0, 0}));
    EXPECT_FALSE(frame.contains({-1, 0, 0}));
    EXPECT_LT(frame.depth({-1, 0, 0}), 0.0);
}

TEST(Frame, RightAndUpArePositive) {
    const Frame frame;
    const auto right_and_up = frame.project({2, -1, 1});
    ASSERT_TRUE(right_and_up);
    EXPECT_NEAR(right_and_up->x(), 0.5, 1e-12);
    EXPECT_NEAR(right_and_up->y(), 0.5, 1e-12);
    EXPECT_TRUE(frame.contains({2, -2, 2}));
    EXPECT_FALSE(frame.contains({2, -2.001, 0}));
}

TEST(Frame, CornersGoRoundFromTheUpperLeft) {
    const Frame frame({}, 1.0, 0.5);
    const auto corners = frame.corner_directions();
    EXPECT_GT(corners[0].y(), 0.0);
    EXPECT_GT(corners[0].z(), 0.0);
    EXPECT_LT(corners[1].y(), 0.0);
    EXPECT_LT(corners[2].z(), 0.0);
    EXPECT_GT(corners[3].y(), 0.0);
    EXPECT_NEAR(aspect_of(frame), 2.0, 1e-12);
}

TEST(Frame, ARolledCameraTurnsThePictureTheOtherWay) {
    // Rolled clockwise, what was straight above the middle moves to the left.
    const CameraPose rolled{Vec3::Zero(), Angle{}, Angle{}, Angle::degrees(10)};
    const auto above = Frame(rolled, 1.0, 1.0).project({4, 0, 1});
    ASSERT_TRUE(above);
    EXPECT_LT(above->x(), 0.0);
    EXPECT_GT(above->y(), 0.0);
}

TEST(Frame, AnAngleOfViewMakesTheSameFrame) {
    const AngleOfView view{Angle::degrees(90), Angle::degrees(60), Angle::degrees(100)};
    const Frame frame(CameraPose{}, view);
    EXPECT_NEAR(frame.tan_half_h(), 1.0, 1e-12);
    EXPECT_NEAR(frame.tan_half_v(), std::tan(Angle::degrees(30).rad()), 1e-12);
}

} // namespace
} // namespace throwline::optics
