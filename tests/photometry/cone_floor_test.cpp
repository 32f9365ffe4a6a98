#include "photometry/cone_floor.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::photometry {
namespace {

/// Angle off the axis of a point of the plane, radians.
double off_axis_rad(const BeamCone& cone, const Vec2& point, double plane_z_m) {
    const Vec3 sight = raised(point, plane_z_m) - cone.apex;
    return std::acos(
        std::clamp(sight.dot(cone.axis) / (sight.norm() * cone.axis.norm()), -1.0, 1.0));
}

BeamCone cone_of(const Vec3& apex, double pan_deg, double tilt_deg, double half_deg) {
    const double tilt_rad = Angle::degrees(tilt_deg).rad();
    const Vec2 ahead = unit_at(Angle::degrees(pan_deg).rad()) * std::sin(tilt_rad);
    return {apex, raised(ahead, -std::cos(tilt_rad)), Angle::degrees(half_deg)};
}

constexpr double kReach_m = 12.0;
constexpr double kOnEdge = 1e-6;

RC_GTEST_PROP(ConeFootprint, EveryCornerLiesOnTheConeOrOnTheReach, ()) {
    const BeamCone cone =
        cone_of({1, 2, *rc::gen::inRange(20, 60) / 10.0}, *rc::gen::inRange(-180, 180),
                *rc::gen::inRange(0, 110), *rc::gen::inRange(2, 60));
    const double plane_z_m = *rc::gen::element(0.0, 1.5);
    const Polygon outline = footprint_outline(cone, plane_z_m, Length::metres(kReach_m));
    for (const Vec2& corner : outline) {
        const double run_m = (corner - floor_of(cone.apex)).norm();
        const double off_rad = off_axis_rad(cone, corner, plane_z_m) - cone.half_angle.rad();
        RC_ASSERT(run_m <= kReach_m + kOnEdge);
        RC_ASSERT(off_rad <= kOnEdge);
        RC_ASSERT(std::abs(off_rad) < kOnEdge || run_m > kReach_m - kOnEdge);
    }
    RC_ASSERT(outline.empty() || signed_area(outline) > 0.0);
}

RC_GTEST_PROP(ConeFootprint, TheEllipseSpansFromNearToFar, ()) {
    const int tilt_deg = *rc::gen::inRange(0, 80);
    const int half_deg = *rc::gen::inRange(1, 89 - tilt_deg);
    const auto patch =
        cone_footprint(Length::metres(3), Angle::degrees(tilt_deg), Angle::degrees(half_deg));
    RC_ASSERT(patch.has_value());
    const double length_m = (patch->far_edge - patch->near_edge).m();
    RC_ASSERT(std::abs(patch->length().m() / length_m - 1.0) < 1e-9);
    RC_ASSERT(patch->width() <= patch->length() * (1.0 + 1e-12));
    RC_ASSERT(patch->axis_hit >= patch->near_edge && patch->axis_hit <= patch->far_edge);
}

TEST(ConeFootprint, ABeamThatReachesTheHorizontalIsOpen) {
    const Length height = Length::metres(4);
    EXPECT_FALSE(cone_footprint(height, Angle::degrees(80), Angle::degrees(10)));
    EXPECT_FALSE(cone_footprint(height, Angle::degrees(120), Angle::degrees(10)));
    EXPECT_FALSE(cone_footprint(Length{}, Angle::degrees(10), Angle::degrees(10)));
    EXPECT_TRUE(cone_footprint(height, Angle::degrees(79.9), Angle::degrees(10)));
}

TEST(ConeFootprint, AnOpenPatchEndsAtTheReach) {
    const BeamCone cone = cone_of({0, 0, 3}, 0, 85, 10);
    const Polygon outline = footprint_outline(cone, 0.0, Length::metres(20));
    ASSERT_FALSE(outline.empty());
    const auto farthest = std::max_element(
        outline.begin(), outline.end(), [](const Vec2& a, const Vec2& b) { return a.x() < b.x(); });
    EXPECT_NEAR(farthest->norm(), 20.0, kOnEdge);
}

TEST(ConeFootprint, ABeamThatLooksAwayHasNoOutline) {
    EXPECT_TRUE(footprint_outline(cone_of({0, 0, 3}, 0, 120, 10), 0.0, Length::metres(20)).empty());
    EXPECT_TRUE(footprint_outline(cone_of({0, 0, 3}, 0, 30, 10), 3.0, Length::metres(20)).empty());
    EXPECT_TRUE(
        footprint_outline({{0, 0, 3}, Vec3::Zero(), Angle::degrees(10)}, 0.0, Length::metres(20))
            .empty());
    // Its near edge lies beyond the reach.
    EXPECT_TRUE(footprint_outline(cone_of({0, 0, 3}, 0, 80, 5), 0.0, Length::metres(5)).empty());
}

TEST(ConeFootprint, ACeilingIsLitLikeAFloor) {
    BeamCone down = cone_of({0, 0, 2}, 30, 25, 12);
    BeamCone up = down;
    up.axis.z() = -up.axis.z();
    const Polygon floor = footprint_outline(down, 0.0, Length::metres(20));
    const Polygon ceiling = footprint_outline(up, 4.0, Length::metres(20));
    ASSERT_EQ(floor.size(), ceiling.size());
    for (std::size_t i = 0; i < floor.size(); ++i) {
        EXPECT_LT((floor[i] - ceiling[i]).norm(), 1e-9);
    }
}

TEST(SpotDiameter, GrowsWithDistance) {
    EXPECT_NEAR(spot_diameter(Length::metres(2), Angle::degrees(90)).m(), 4.0, 1e-12);
    EXPECT_EQ(spot_diameter_working(Length::metres(5), Angle::degrees(26)).result, "2.309 m");
}

} // namespace
} // namespace throwline::photometry
