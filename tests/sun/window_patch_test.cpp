#include "sun/window_patch.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <utility>

namespace throwline::sun {
namespace {

WindowOpening south_window(double reveal_m = 0.0) {
    return {{1, 0},
            {2.5, 0},
            {0, -1},
            Length::metres(0.9),
            Length::metres(2.1),
            Length::metres(reveal_m)};
}

Vec3 sun_from(double azimuth_deg, double elevation_deg) {
    const double a = Angle::degrees(azimuth_deg).rad();
    const double h = Angle::degrees(elevation_deg).rad();
    return {std::sin(a) * std::cos(h), std::cos(a) * std::cos(h), std::sin(h)};
}

TEST(WindowPatch, SunBehindTheWallOrBelowTheHorizonSendsNothing) {
    EXPECT_TRUE(sun_patch(south_window(), sun_from(0, 30)).empty());
    EXPECT_TRUE(sun_patch(south_window(), sun_from(180, -5)).empty());
    EXPECT_FALSE(sun_reach(south_window(), sun_from(0, 30), Length::metres(2)));
    EXPECT_FALSE(profile_angle(south_window(), sun_from(0, 30)));
    EXPECT_FALSE(pane_incidence(south_window(), sun_from(0, 30)));
}

TEST(WindowPatch, AThickWallCutsThePatch) {
    const Vec3 sun = sun_from(210, 35);
    const double thin_m2 = area(sun_patch(south_window(), sun));
    const double thick_m2 = area(sun_patch(south_window(0.3), sun));
    EXPECT_LT(thick_m2, thin_m2);
    // By hand: width 1.5 - 0.3 tan 30, height 1.2 - 0.3 tan 35 / cos 30, over tan(profile).
    const double profile_tan =
        std::tan(Angle::degrees(35).rad()) / std::cos(Angle::degrees(30).rad());
    const double width_m = 1.5 - 0.3 * std::tan(Angle::degrees(30).rad());
    const double height_m = 1.2 - 0.3 * profile_tan;
    EXPECT_NEAR(thick_m2, width_m * height_m / profile_tan, 1e-9);
    EXPECT_TRUE(sun_patch(south_window(3.0), sun).empty());
}

TEST(WindowPatch, APlaneAboveTheSillSeesPartOfTheOpening) {
    const Vec3 sun = sun_from(180, 45);
    EXPECT_NEAR(area(sun_patch(south_window(), sun, 0.0)), 1.5 * 1.2, 1e-9);
    EXPECT_NEAR(area(sun_patch(south_window(), sun, 1.5)), 1.5 * 0.6, 1e-9);
    EXPECT_TRUE(sun_patch(south_window(), sun, 2.2).empty());
}

RC_GTEST_PROP(WindowPatch, PointsOfThePatchSeeTheSun, ()) {
    const WindowOpening window = south_window(*rc::gen::inRange(0, 40) / 100.0);
    const Vec3 sun = sun_from(*rc::gen::inRange(120, 240), *rc::gen::inRange(5, 60));
    const double plane_z_m = *rc::gen::element(0.0, 0.75);
    const Polygon patch = sun_patch(window, sun, plane_z_m);
    RC_PRE(!patch.empty());
    RC_ASSERT(signed_area(patch) > 0.0);
    const Vec2 middle = (patch[0] + patch[2]) / 2.0;
    RC_ASSERT(sees_sun_through(window, sun, raised(middle, plane_z_m)));
    for (const Vec2& corner : patch) {
        const Vec2 inner = corner + (middle - corner) * 1e-6;
        const Vec2 outer = corner - (middle - corner) * 1e-6;
        RC_ASSERT(sees_sun_through(window, sun, raised(inner, plane_z_m)));
        RC_ASSERT(!sees_sun_through(window, sun, raised(outer, plane_z_m)));
    }
}

TEST(WindowPatch, PointsOutsideTheRoomAreNotAsked) {
    EXPECT_FALSE(sees_sun_through(south_window(), sun_from(180, 45), {1.5, -1, 0}));
    EXPECT_FALSE(sees_sun_through(south_window(), sun_from(0, 45), {1.5, 1.5, 0}));
}

TEST(WindowPatch, WalkingTheOpeningTheOtherWayGivesTheSamePatch) {
    WindowOpening reversed = south_window(0.2);
    std::swap(reversed.from, reversed.to);
    const Vec3 sun = sun_from(200, 30);
    EXPECT_NEAR(area(sun_patch(reversed, sun)), area(sun_patch(south_window(0.2), sun)), 1e-12);
}

TEST(WindowPatch, AnOpeningWithoutWidthSendsNothing) {
    WindowOpening closed = south_window();
    closed.to = closed.from;
    EXPECT_FALSE(lit_opening(closed, sun_from(180, 45)));
}

} // namespace
} // namespace throwline::sun
