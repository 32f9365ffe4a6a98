#include "photometry/filters.h"
#include "photometry/point_source.h"
#include "photometry/positions.h"
#include "photometry/ratio.h"

#include <array>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

namespace throwline::photometry {
namespace {

// Inverse-square and cosine law; figures computed by a separate script.
TEST(InverseSquareReference, DirectLightAgreesWithASeparateComputation) {
    const Length five = Length::metres(5);
    EXPECT_NEAR(illuminance_lx(10000, five, Angle::degrees(0)), 400, 1e-9);
    EXPECT_NEAR(foot_candles(400), 37.161, 0.0005);
    EXPECT_NEAR(illuminance_lx(10000, five, Angle::degrees(30)), 346.41, 0.005);
    EXPECT_NEAR(illuminance_lx(10000, five, Angle::degrees(60)), 200, 1e-9);
    const double far_lx = illuminance_lx(50000, Length::feet(30), Angle::degrees(0));
    EXPECT_NEAR(far_lx, 597.995, 0.0006);
    EXPECT_NEAR(foot_candles(far_lx), 55.556, 0.0005);
    EXPECT_NEAR(lux_from_foot_candles(1), 10.7639, 0.00005);
}

// CIE 171:2006, case 5.2: a diffuse source of I = 1000 cos cd, 3 m over the middle of a 4 x 4 m
// surface. Table as transcribed in a public test repository.
TEST(InverseSquareReference, Cie171PointSourceCaseIsMet) {
    const std::array<std::array<double, 3>, 10> published{{{0, 0, 111.11},
                                                           {.5, 0, 105.21},
                                                           {1, 0, 90.02},
                                                           {1.5, 0, 71.11},
                                                           {.5, .5, 99.73},
                                                           {1, .5, 85.64},
                                                           {1.5, .5, 68.06},
                                                           {1, 1, 74.36},
                                                           {1.5, 1, 59.98},
                                                           {1.5, 1.5, 49.39}}};
    for (const auto& [x_m, y_m, published_lx] : published) {
        const double distance_m = std::hypot(x_m, y_m, 3.0);
        const Angle off_axis = Angle::radians(std::acos(3.0 / distance_m));
        const double level_lx =
            illuminance_lx(1000.0 * std::cos(off_axis.rad()), Length::metres(distance_m), off_axis);
        EXPECT_NEAR(level_lx, published_lx, 0.03) << x_m << ", " << y_m;
    }
}

// 10 000 lm sent evenly all round, 3 m over a floor; computed by a separate script.
TEST(InverseSquareReference, AnEvenSourceOverAFloorAgrees) {
    const double even_cd = 10000.0 / (4.0 * std::numbers::pi);
    const std::array<double, 4> expected_lx{88.419, 75.494, 50.933, 31.261};
    for (std::size_t i = 0; i < expected_lx.size(); ++i) {
        const double distance_m = std::hypot(3.0, static_cast<double>(i));
        EXPECT_NEAR(illuminance_lx(even_cd, Length::metres(distance_m),
                                   Angle::radians(std::acos(3.0 / distance_m))),
                    expected_lx[i], 0.0006);
    }
}

// Hemispherical receptor, from memory: ISO 2720.
TEST(InverseSquareReference, HemisphericalReceptorFollowsItsCurve) {
    const std::array<std::array<double, 2>, 5> curve{
        {{0, 1}, {45, 0.8536}, {60, 0.75}, {90, 0.5}, {120, 0.25}}};
    for (const auto& [angle_deg, response] : curve) {
        EXPECT_NEAR(hemispherical_response(Angle::degrees(angle_deg)), response, 0.00005);
    }
}

// Common practice, no source; figures computed by a separate script.
TEST(LampDirectionReference, CheckPlacesAgree) {
    const Vec3 eyes(0, 0, 1.59);
    const Vec3 camera(0, -5, 1.59);
    const auto front = lamp_direction(eyes, camera, {2, -3, 4});
    ASSERT_TRUE(front);
    EXPECT_NEAR(front->azimuth.deg(), 33.690, 0.0006);
    EXPECT_NEAR(front->elevation.deg(), 33.759, 0.0006);
    const auto back = lamp_direction(eyes, camera, {-1, 2.2, 4});
    ASSERT_TRUE(back);
    EXPECT_NEAR(back->azimuth.deg(), -155.556, 0.0006);
    EXPECT_NEAR(back->elevation.deg(), 44.922, 0.0006);
}

TEST(LampDirectionReference, DistancesUnderAGridOfFourMetresAgree) {
    const std::array<std::array<double, 3>, 5> rows{{{30, 4.174, 4.820},
                                                     {35, 3.442, 4.202},
                                                     {40, 2.872, 3.749},
                                                     {45, 2.410, 3.408},
                                                     {60, 1.391, 2.783}}};
    for (const auto& [elevation_deg, horizontal_m, slant_m] : rows) {
        const auto distance = distance_for_elevation(Length::metres(1.59), Length::metres(4.0),
                                                     Angle::degrees(elevation_deg));
        ASSERT_TRUE(distance);
        EXPECT_NEAR(distance->horizontal.m(), horizontal_m, 0.0006);
        EXPECT_NEAR(distance->slant.m(), slant_m, 0.0006);
    }
}

TEST(LightingRatioReference, BothWaysOfWritingItAgree) {
    const std::array<std::array<double, 4>, 3> rows{
        {{800, 400, 3, 2}, {600, 200, 4, 3}, {700, 100, 8, 7}}};
    for (const auto& [key_lx, fill_lx, ratio, key_over_fill] : rows) {
        EXPECT_NEAR(*lighting_ratio({key_lx, fill_lx}), ratio, 1e-12);
        EXPECT_NEAR(*key_to_fill({key_lx, fill_lx}), key_over_fill, 1e-12);
    }
    EXPECT_NEAR(ratio_stops(3), 1.585, 0.0005);
}

// Transmissions and mired arithmetic computed apart; shifts from published gel lists (series differ
// by 10-40 mired); tungsten exponents from memory: IES handbook.
TEST(FiltersReference, StopsOfTransmissionsAgree) {
    const std::array<std::array<double, 2>, 6> rows{
        {{.8, 0.322}, {.65, 0.621}, {.5, 1.0}, {.34, 1.556}, {.2, 2.322}, {.65 * .8, 0.943}}};
    for (const auto& [transmission, stops] : rows) {
        EXPECT_NEAR(stops_of_transmission(transmission), stops, 0.0006);
    }
    EXPECT_NEAR(stops_of_transmission(transmission_of_density(0.3)), 0.9966, 0.00005);
    EXPECT_NEAR(stops_of_transmission(transmission_of_density(0.9)), 2.990, 0.0005);
}

TEST(FiltersReference, TemperaturesBehindConversionFiltersAgree) {
    const std::array<std::array<double, 3>, 6> rows{{{5600, 159, 2962},
                                                     {6500, 159, 3196},
                                                     {7000, 159, 3313},
                                                     {3200, -137, 5698},
                                                     {3200, -78, 4264},
                                                     {3200, -35, 3604}}};
    for (const auto& [source_k, shift, behind_k] : rows) {
        catalogue::Filter filter;
        filter.mired_shift = shift;
        EXPECT_NEAR(*temperature_behind_k(source_k, std::array{filter}), behind_k, 0.6);
    }
    EXPECT_NEAR(mired(3200), 312.50, 0.005);
    EXPECT_NEAR(mired(5600), 178.57, 0.005);
    EXPECT_NEAR(mired(2856), 350.14, 0.005);
}

TEST(FiltersReference, TungstenOnReducedVoltsAgrees) {
    EXPECT_NEAR(tungsten_flux_share(0.9), .699, 0.0006);
    EXPECT_NEAR(tungsten_temperature_k(3200, 0.9), 3061, 0.6);
    EXPECT_NEAR(tungsten_flux_share(0.8), .468, 0.0006);
    EXPECT_NEAR(tungsten_temperature_k(3200, 0.8), 2914, 0.6);
}

} // namespace
} // namespace throwline::photometry
