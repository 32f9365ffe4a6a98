#include "photometry/beam_model.h"
#include "photometry/exposure.h"
#include "photometry/point_source.h"

#include <array>
#include <cmath>
#include <gtest/gtest.h>

namespace throwline::photometry {
namespace {

// ISO 2720:1974 incident form with C = 250 (the value seen; the range is from memory), 24 frames a
// second with a shutter of 180 degrees. Rows are lx; the table's foot-candles follow from 1 /
// 0.3048^2.
constexpr std::array<double, 6> kStops{1.4, 2, 2.8, 4, 5.6, 8};
struct ExposureRow {
    double iso;
    std::array<double, 6> levels_lx;
};
constexpr std::array<ExposureRow, 4> kRows{{{100, {235.2, 480, 940.8, 1920, 3763.2, 7680}},
                                            {400, {58.8, 120, 235.2, 480, 940.8, 1920}},
                                            {800, {29.4, 60, 117.6, 240, 470.4, 960}},
                                            {3200, {7.35, 15, 29.4, 60, 117.6, 240}}}};

TEST(ExposureReference, LevelsForStopsAgree) {
    const double exposure_s = shutter_time_s(Angle::degrees(180), 24);
    for (const ExposureRow& row : kRows) {
        for (std::size_t i = 0; i < kStops.size(); ++i) {
            EXPECT_NEAR(illuminance_for_stop_lx({row.iso, exposure_s, 250}, kStops[i]),
                        row.levels_lx[i], 1e-6 * row.levels_lx[i]);
        }
    }
    EXPECT_NEAR(foot_candles(illuminance_for_stop_lx({800, exposure_s, 250}, 4)), 22.30, 0.005);
    EXPECT_NEAR(foot_candles(illuminance_for_stop_lx({400, exposure_s, 250}, 2.8)), 21.85, 0.005);
}

TEST(ExposureReference, OtherShuttersAndConstantsAgree) {
    EXPECT_NEAR(illuminance_for_stop_lx({800, 1.0 / 50.0, 250}, 4), 250, 1e-9);
    EXPECT_NEAR(illuminance_for_stop_lx({800, 1.0 / 59.94, 250}, 4), 299.7, 0.05);
    EXPECT_NEAR(illuminance_for_stop_lx({800, shutter_time_s(Angle::degrees(172.8), 24), 250}, 4),
                250, 1e-9);
    EXPECT_NEAR(illuminance_for_stop_lx({800, 1.0 / 48.0, 340}, 4), 326.4, 1e-9);
    // The trade form fc = 25 T^2 / (S t), from two published notes.
    EXPECT_NEAR(kFootCandleRuleConstant, 269.098, 0.0005);
    EXPECT_NEAR(
        foot_candles(illuminance_for_stop_lx({800, 1.0 / 48.0, kFootCandleRuleConstant}, 4)), 24.0,
        1e-9);
    EXPECT_NEAR(std::log2(kFootCandleRuleConstant / kFlatReceptorConstant), 0.106, 0.0005);
    EXPECT_NEAR(std::log2(kHemisphericalReceptorConstant / kFlatReceptorConstant), 0.444, 0.0005);
}

TEST(ExposureReference, StopsForLevelsAgree) {
    const ExposureSetting setting{800, 1.0 / 48.0, 250};
    EXPECT_NEAR(*stop_for_illuminance(setting, 800), 7.303, 0.0005);
    EXPECT_NEAR(*stops_over(setting, 4, 800), 1.737, 0.0005);
    EXPECT_NEAR(illuminance_for_ev100_lx(8), 640, 1e-9);
    EXPECT_NEAR(illuminance_for_ev100_lx(15), 81920, 1e-9);
}

// Square-law dimming: common practice, no source.
TEST(ExposureReference, SquareLawDimmingAgrees) {
    EXPECT_NEAR(dimmer_share(0.75), .5625, 1e-12);
    const std::array<std::array<double, 2>, 4> rows{
        {{0.75, -0.830}, {0.7071, -1}, {0.5, -2}, {0.25, -4}}};
    for (const auto& [level, stops] : rows) {
        EXPECT_NEAR(std::log2(dimmer_share(level)), stops, 0.0006);
    }
}

} // namespace
} // namespace throwline::photometry
