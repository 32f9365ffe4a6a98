#include "sun/direct_beam.h"
#include "sun/position.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::sun {
namespace {

UtcTime any_time() {
    return {static_cast<double>(*rc::gen::inRange(946684800, 2000000000))};
}

EarthPlace any_place() {
    return {Angle::degrees(*rc::gen::inRange(-89, 90)),
            Angle::degrees(*rc::gen::inRange(-180, 180))};
}

RC_GTEST_PROP(SunPosition, LiesInItsRanges, ()) {
    const SunPosition sun = sun_position(any_place(), any_time());
    RC_ASSERT(sun.azimuth.deg() >= 0.0 && sun.azimuth.deg() <= 360.0);
    RC_ASSERT(std::abs(sun.airless_elevation.deg()) <= 90.01);
    RC_ASSERT(sun.elevation >= sun.airless_elevation - Angle::degrees(0.001));
    RC_ASSERT(sun.elevation.deg() - sun.airless_elevation.deg() < 1.0);
}

RC_GTEST_PROP(SunPosition, TheOtherSideOfTheEarthSeesTheOppositeSun, ()) {
    const EarthPlace here = any_place();
    const EarthPlace there{-here.latitude, here.longitude + Angle::degrees(180)};
    const UtcTime time = any_time();
    const SunPosition a = sun_position(here, time);
    const SunPosition b = sun_position(there, time);
    // Parallax lowers both by up to 0.0025 deg.
    RC_ASSERT(std::abs(a.airless_elevation.deg() + b.airless_elevation.deg()) < 0.0052);
}

RC_GTEST_PROP(SunPosition, AShortWhileMovesItLittle, ()) {
    const EarthPlace place = any_place();
    const UtcTime time = any_time();
    const Vec3 before = toward_sun(sun_position(place, time, {0.0, 10.0}), Angle::degrees(90));
    const Vec3 after =
        toward_sun(sun_position(place, {time.unix_s + 60.0}, {0.0, 10.0}), Angle::degrees(90));
    // A quarter of a degree a minute at most.
    RC_ASSERT((after - before).norm() < Angle::degrees(0.2515).rad());
}

TEST(SunPosition, SouthOfTheEquatorItCrossesTheNorthFromRightToLeft) {
    const EarthPlace place{Angle::degrees(-34), Angle::degrees(151)};
    // 2022-01-15 at 00:30 and 03:30 UTC, on either side of the sun's noon.
    const SunPosition before = sun_position(place, {1642206600.0});
    const SunPosition after = sun_position(place, {1642206600.0 + 10800.0});
    EXPECT_LT(before.azimuth.deg(), 90.0);
    EXPECT_GT(after.azimuth.deg(), 270.0);
}

TEST(Refraction, LiftsTheSetSunByAboutAHalfDegree) {
    EXPECT_NEAR(refraction(Angle::degrees(0), {}).deg(), 0.48, 0.02);
    EXPECT_LT(refraction(Angle::degrees(89), {}).deg(), 0.001);
    EXPECT_EQ(refraction(Angle::degrees(-5), {}).rad(), 0.0);
    EXPECT_EQ(refraction(Angle::degrees(10), {0.0, 10.0}).rad(), 0.0);
}

TEST(TowardSun, NorthOfThePlanTurnsIt) {
    SunPosition south;
    south.azimuth = Angle::degrees(180);
    south.elevation = Angle::degrees(0);
    EXPECT_LT((toward_sun(south, Angle::degrees(90)) + Vec3::UnitY()).norm(), 1e-12);
    EXPECT_LT((toward_sun(south, Angle::degrees(0)) + Vec3::UnitX()).norm(), 1e-12);
    south.azimuth = Angle::degrees(90);
    EXPECT_LT((toward_sun(south, Angle::degrees(90)) - Vec3::UnitX()).norm(), 1e-12);
}

TEST(SunPosition, WorkingNamesPlaceTimeAndSource) {
    const Working working = sun_position_working(
        {Angle::degrees(39.742476), Angle::degrees(-105.1786)}, {1066419030.0}, {820.0, 11.0});
    EXPECT_EQ(working.result, "azimuth 194.33° from true north, elevation 39.89°");
    EXPECT_NE(working.source.find("NREL"), std::string::npos);
}

TEST(DirectBeam, NoSunNoBeam) {
    EXPECT_EQ(direct_beam(80, Angle::degrees(0), Sky::clear).normal_lx, 0.0);
    EXPECT_EQ(direct_beam(80, Angle::degrees(-5), Sky::clear).horizontal_lx, 0.0);
    EXPECT_EQ(direct_beam(80, Angle::degrees(45), Sky::overcast).normal_lx, 0.0);
    EXPECT_NE(direct_beam_working(80, Angle::degrees(45), Sky::overcast).result.find("0 lx"),
              std::string::npos);
}

RC_GTEST_PROP(DirectBeam, AHigherSunIsStronger, ()) {
    const int low_deg = *rc::gen::inRange(1, 89);
    const Sky sky = *rc::gen::element(Sky::clear, Sky::partly_cloudy);
    const DirectBeam low = direct_beam(200, Angle::degrees(low_deg), sky);
    const DirectBeam high = direct_beam(200, Angle::degrees(low_deg + 1), sky);
    RC_ASSERT(high.normal_lx > low.normal_lx);
    RC_ASSERT(high.horizontal_lx > low.horizontal_lx);
    RC_ASSERT(low.horizontal_lx < low.normal_lx);
}

} // namespace
} // namespace throwline::sun
