#include "photometry/positions.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::photometry {
namespace {

const Vec3 kEyes(0, 0, 1.6);
const Vec3 kCamera(0, -4, 1.6);

LampDirection at(double azimuth_deg, double elevation_deg) {
    return {Angle::degrees(azimuth_deg), Angle::degrees(elevation_deg)};
}

using Warnings = std::vector<PlacementWarning>;

TEST(LampDirection, CameraRightIsPositive) {
    // The camera looks along +y; its right is +x.
    EXPECT_NEAR(lamp_direction(kEyes, kCamera, {4, -4, 1.6})->azimuth.deg(), 45, 1e-9);
    EXPECT_NEAR(lamp_direction(kEyes, kCamera, {-4, -4, 1.6})->azimuth.deg(), -45, 1e-9);
    EXPECT_NEAR(lamp_direction(kEyes, kCamera, {0, 4, 1.6})->azimuth.deg(), 180, 1e-9);
}

TEST(LampDirection, StraightAboveHasNoAzimuthButAnElevation) {
    const auto above = lamp_direction(kEyes, kCamera, {0, 0, 4});
    ASSERT_TRUE(above);
    EXPECT_EQ(above->azimuth.rad(), 0.0);
    EXPECT_NEAR(above->elevation.deg(), 90, 1e-12);
    EXPECT_FALSE(lamp_direction(kEyes, {0, 0, 3}, {2, 2, 4}));
    EXPECT_FALSE(lamp_direction(kEyes, kCamera, kEyes));
}

RC_GTEST_PROP(LampDirection, TurningTheRoomChangesNothing, ()) {
    const double turn_rad = *rc::gen::inRange(-314, 314) / 100.0;
    const auto turned = [turn_rad](const Vec3& p) {
        return raised(rotated(floor_of(p), turn_rad), p.z());
    };
    const Vec3 lamp(*rc::gen::inRange(-40, 40) / 10.0, -2.05, 4);
    const auto before = lamp_direction(kEyes, kCamera, lamp);
    const auto after = lamp_direction(turned(kEyes), turned(kCamera), turned(lamp));
    RC_ASSERT(before && after);
    RC_ASSERT(std::abs(before->azimuth.rad() - after->azimuth.rad()) < 1e-9);
    RC_ASSERT(std::abs(before->elevation.rad() - after->elevation.rad()) < 1e-9);
}

TEST(PlacementWarnings, UsualPlacesDrawNone) {
    EXPECT_TRUE(placement_warnings(LampRole::key, at(35, 35)).empty());
    EXPECT_TRUE(placement_warnings(LampRole::key, at(-40, 40)).empty());
    EXPECT_TRUE(placement_warnings(LampRole::fill, at(-30, 15), at(35, 35)).empty());
    EXPECT_TRUE(placement_warnings(LampRole::back, at(-150, 50)).empty());
    EXPECT_TRUE(placement_warnings(LampRole::practical, at(0, -80)).empty());
}

TEST(PlacementWarnings, EachFaultOfAKeyIsNamed) {
    EXPECT_EQ(placement_warnings(LampRole::key, at(10, 35)), Warnings{PlacementWarning::flat_key});
    EXPECT_EQ(placement_warnings(LampRole::key, at(-75, 35)), Warnings{PlacementWarning::wide_key});
    EXPECT_EQ(placement_warnings(LampRole::key, at(35, 55)), Warnings{PlacementWarning::dark_eyes});
    EXPECT_EQ(placement_warnings(LampRole::key, at(35, 15)),
              Warnings{PlacementWarning::shadows_on_set});
    EXPECT_EQ(placement_warnings(LampRole::key, at(55, 35)),
              Warnings{PlacementWarning::outside_range});
    const Warnings both{PlacementWarning::flat_key, PlacementWarning::dark_eyes};
    EXPECT_EQ(placement_warnings(LampRole::key, at(0, 70)), both);
}

TEST(PlacementWarnings, FillAndBackHaveTheirOwn) {
    EXPECT_EQ(placement_warnings(LampRole::fill, at(30, 15), at(35, 35)),
              Warnings{PlacementWarning::fill_beside_key});
    EXPECT_EQ(placement_warnings(LampRole::back, at(170, 20)),
              Warnings{PlacementWarning::low_back_light});
}

TEST(PlacementWarnings, EveryWarningHasASentenceAndEveryRoleAName) {
    for (const PlacementWarning warning :
         {PlacementWarning::flat_key, PlacementWarning::wide_key, PlacementWarning::dark_eyes,
          PlacementWarning::shadows_on_set, PlacementWarning::low_back_light,
          PlacementWarning::fill_beside_key, PlacementWarning::outside_range}) {
        EXPECT_GT(sentence_of(warning).size(), 20U);
    }
    for (const LampRole role : {LampRole::key, LampRole::fill, LampRole::back, LampRole::background,
                                LampRole::effect, LampRole::practical}) {
        EXPECT_FALSE(name_of(role).empty());
    }
}

TEST(DistanceForElevation, ALampMustBeAboveTheEyes) {
    EXPECT_FALSE(
        distance_for_elevation(Length::metres(1.6), Length::metres(1.5), Angle::degrees(30)));
    EXPECT_FALSE(distance_for_elevation(Length::metres(1.6), Length::metres(4), Angle{}));
    EXPECT_FALSE(
        distance_for_elevation(Length::metres(1.6), Length::metres(4), Angle::degrees(90)));
}

TEST(LampDirection, WorkingCarriesItsResult) {
    EXPECT_EQ(lamp_direction_working(kEyes, kCamera, {4, -4, 1.6}).result,
              "azimuth 45.0°, elevation 0.0°");
}

} // namespace
} // namespace throwline::photometry
