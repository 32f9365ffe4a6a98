#include "photometry/exposure.h"
#include "photometry/filters.h"
#include "photometry/ratio.h"
#include "photometry/zonal_lumens.h"

#include <array>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <rapidcheck/gtest.h>

namespace throwline::photometry {
namespace {

RC_GTEST_PROP(Exposure, StopAndLevelUndoEachOther, ()) {
    const ExposureSetting setting{*rc::gen::element(100.0, 400.0, 800.0, 3200.0),
                                  1.0 / *rc::gen::inRange(24, 500), kFlatReceptorConstant};
    const double stop = *rc::gen::inRange(10, 220) / 10.0;
    const double level_lx = illuminance_for_stop_lx(setting, stop);
    RC_ASSERT(std::abs(*stop_for_illuminance(setting, level_lx) / stop - 1.0) < 1e-12);
    RC_ASSERT(std::abs(*stops_over(setting, stop, level_lx)) < 1e-12);
    RC_ASSERT(std::abs(*stops_over(setting, stop, 2.0 * level_lx) - 1.0) < 1e-12);
}

TEST(Exposure, WithoutLightThereIsNoStop) {
    EXPECT_FALSE(stop_for_illuminance({}, 0.0));
    EXPECT_FALSE(stops_over({}, 4.0, 0.0));
    EXPECT_NE(stop_for_illuminance_working({}, 0.0).result.find("no light"), std::string::npos);
}

TEST(Exposure, ASlowerShutterNeedsLessLight) {
    EXPECT_NEAR(shutter_time_s(Angle::degrees(180), 24), 1.0 / 48.0, 1e-15);
    EXPECT_LT(illuminance_for_stop_lx({800, 1.0 / 24.0, 250}, 4),
              illuminance_for_stop_lx({800, 1.0 / 48.0, 250}, 4));
}

TEST(Exposure, WorkingsCarryTheirResult) {
    EXPECT_EQ(illuminance_for_stop_working({}, 4).result, "240 lx");
    EXPECT_EQ(stop_for_illuminance_working({}, 800).result, "T7.3");
}

RC_GTEST_PROP(Filters, StopsAndTransmissionUndoEachOther, ()) {
    const double transmission = *rc::gen::inRange(1, 100) / 100.0;
    RC_ASSERT(std::abs(transmission_of_stops(stops_of_transmission(transmission)) - transmission)
              < 1e-12);
}

TEST(Filters, StacksMultiplyAndShiftsAdd) {
    catalogue::Filter warm;
    warm.name = "warm";
    warm.transmission = 0.65;
    warm.mired_shift = 109;
    catalogue::Filter grid;
    grid.name = "grid";
    grid.transmission = 0.8;
    const std::array stack{warm, grid};
    EXPECT_NEAR(stacked_transmission(stack), 0.52, 1e-12);
    EXPECT_NEAR(*temperature_behind_k(5600, stack), 1e6 / (1e6 / 5600 + 109), 1e-9);
    EXPECT_EQ(stacked_transmission({}), 1.0);
    EXPECT_NEAR(*temperature_behind_k(3200, {}), 3200, 1e-9);
    EXPECT_EQ(temperature_behind_working(5600, stack).inputs.size(), 3U);
}

TEST(Filters, AnImpossibleShiftHasNoTemperature) {
    catalogue::Filter blue;
    blue.mired_shift = -400;
    EXPECT_FALSE(temperature_behind_k(5600, std::array{blue}));
    EXPECT_NE(temperature_behind_working(5600, std::array{blue}).result.find("none"),
              std::string::npos);
}

TEST(LightingRatio, WithoutFillThereIsNone) {
    EXPECT_FALSE(lighting_ratio({800, 0}));
    EXPECT_FALSE(key_to_fill({800, 0}));
    EXPECT_EQ(lighting_ratio_working({800, 400}).result, "3.0:1");
    EXPECT_EQ(lighting_ratio_working({800, 0}).result, "none: no fill");
    EXPECT_NEAR(*lighting_ratio({0, 400}), 1.0, 1e-12);
}

TEST(ZonalLumens, AnEvenSourceFillsTheSphere) {
    EXPECT_NEAR(zonal_constant_sr(Angle{}, Angle::degrees(180)), 4.0 * std::numbers::pi, 1e-12);
    EXPECT_EQ(zonal_flux_lm({}), 0.0);
    const std::array<IntensityRow, 2> repeated{
        {{Angle::degrees(10), 100.0}, {Angle::degrees(10), 50.0}}};
    EXPECT_EQ(zonal_flux_lm(repeated), 0.0);
}

} // namespace
} // namespace throwline::photometry
