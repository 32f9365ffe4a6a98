#include "photometry/point_source.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::photometry {
namespace {

PointLamp lamp_at(const Vec3& place, const Vec3& target) {
    return {place, target - place,
            IntensityDistribution({20000, Angle::degrees(20), Angle::degrees(40)})};
}

RC_GTEST_PROP(PointSource, TwiceAsFarGivesAQuarter, ()) {
    const double peak_cd = *rc::gen::inRange(1, 100000);
    const Length distance = Length::millimetres(*rc::gen::inRange(100, 30000));
    const Angle incidence = Angle::degrees(*rc::gen::inRange(0, 89));
    const double near_lx = illuminance_lx(peak_cd, distance, incidence);
    const double far_lx = illuminance_lx(peak_cd, distance * 2.0, incidence);
    RC_ASSERT(std::abs(near_lx / far_lx - 4.0) < 1e-9);
}

TEST(PointSource, LightFromBehindGivesNothing) {
    EXPECT_EQ(illuminance_lx(1000, Length::metres(2), Angle::degrees(91)), 0.0);
    const PointLamp lamp = lamp_at({0, 0, 3}, {0, 0, 0});
    EXPECT_EQ(illuminance_lx(lamp, {0, 0, 0}, -Vec3::UnitZ()), 0.0);
}

TEST(PointSource, LevelAndUprightSurfacesShareTheLight) {
    const Vec3 point(3, 0, 1.5);
    const PointLamp lamp = lamp_at({0, 0, 4}, point);
    // 20 000 cd over 15.25 m^2, times 2.5 and 3 over the slant.
    const double slant_m = std::sqrt(15.25);
    EXPECT_NEAR(horizontal_lx(lamp, point), 20000 / 15.25 * 2.5 / slant_m, 1e-9);
    EXPECT_NEAR(facing_lx(lamp, point), 20000 / 15.25 * 3.0 / slant_m, 1e-9);
}

TEST(PointSource, StraightBelowOnlyTheLevelSurfaceIsLit) {
    const PointLamp lamp = lamp_at({0, 0, 4}, {0, 0, 0});
    EXPECT_EQ(facing_lx(lamp, {0, 0, 0}), 0.0);
    EXPECT_NEAR(horizontal_lx(lamp, {0, 0, 0}), 1250, 1e-9);
    EXPECT_EQ(horizontal_lx(lamp, {0, 0, 4}), 0.0);
}

RC_GTEST_PROP(PointSource, TurningTheWholeRoomChangesNothing, ()) {
    const double turn_rad = *rc::gen::inRange(-314, 314) / 100.0;
    const auto turned = [turn_rad](const Vec3& p) {
        return raised(rotated(floor_of(p), turn_rad), p.z());
    };
    const Vec3 place(1, 2, 4);
    const Vec3 target(3, -1, 1.5);
    const Vec3 point(2.5, -0.5, 1.6);
    const double before_lx = facing_lx(lamp_at(place, target), point);
    const double after_lx = facing_lx(lamp_at(turned(place), turned(target)), turned(point));
    RC_ASSERT(std::abs(before_lx - after_lx) < 1e-9 * before_lx);
}

RC_GTEST_PROP(PointSource, FootCandlesAndLuxUndoEachOther, ()) {
    const double level_lx = *rc::gen::inRange(1, 100000);
    RC_ASSERT(std::abs(lux_from_foot_candles(foot_candles(level_lx)) / level_lx - 1.0) < 1e-12);
}

TEST(PointSource, WorkingCarriesItsResult) {
    EXPECT_EQ(illuminance_working(10000, Length::metres(5), Angle::degrees(60)).result, "200 lx");
    EXPECT_EQ(illuminance_working(1000, Length::metres(5), Angle{}).result, "40.0 lx");
}

} // namespace
} // namespace throwline::photometry
