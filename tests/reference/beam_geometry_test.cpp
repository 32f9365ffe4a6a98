#include "optics/hood.h"
#include "photometry/beam_model.h"
#include "photometry/cone_floor.h"
#include "photometry/zonal_lumens.h"

#include <array>
#include <cmath>
#include <gtest/gtest.h>
#include <vector>

namespace throwline::photometry {
namespace {

// Beam and field angle as the IES defines them; diameters by plain geometry, computed apart.
TEST(BeamGeometryReference, SpotDiametersAtFiveMetresAgree) {
    const std::array<std::array<double, 2>, 4> rows{
        {{10, 0.8749}, {26, 2.3087}, {50, 4.6631}, {90, 10.0}}};
    for (const auto& [angle_deg, diameter_m] : rows) {
        EXPECT_NEAR(spot_diameter(Length::metres(5), Angle::degrees(angle_deg)).m(), diameter_m,
                    0.00006);
    }
}

// Tilted cone on a floor: conic section, verified apart by casting rays.
struct ConeRow {
    double height_m, tilt_deg, half_deg;
    double near_m, far_m, centre_m, major_m, minor_m, hit_m;
};
constexpr std::array<ConeRow, 5> kCones{
    {{4, 0, 13, -0.9235, 0.9235, 0, 0.9235, 0.9235, 0},
     {4, 30, 13, 1.2229, 3.7301, 2.4765, 1.2536, 1.0759, 2.3094},
     {4, 45, 10, 2.8008, 5.7126, 4.2567, 1.4559, 1.0133, 4.0000},
     {5, 50, 20, 2.8868, 13.7374, 8.3121, 5.4253, 3.1422, 5.9588},
     {3.5, 60, 15, 3.5000, 13.0622, 8.2811, 4.7811, 2.1175, 6.0622}}};

TEST(BeamGeometryReference, TiltedConesOnTheFloorAgreeWithCastRays) {
    constexpr double kLastDigit_m = 0.00006;
    for (const ConeRow& row : kCones) {
        const auto patch =
            cone_footprint(Length::metres(row.height_m), Angle::degrees(row.tilt_deg),
                           Angle::degrees(row.half_deg));
        ASSERT_TRUE(patch) << row.tilt_deg;
        EXPECT_NEAR(patch->near_edge.m(), row.near_m, kLastDigit_m);
        EXPECT_NEAR(patch->far_edge.m(), row.far_m, kLastDigit_m);
        EXPECT_NEAR(patch->centre.m(), row.centre_m, kLastDigit_m);
        EXPECT_NEAR(patch->semi_major.m(), row.major_m, kLastDigit_m);
        EXPECT_NEAR(patch->semi_minor.m(), row.minor_m, kLastDigit_m);
        EXPECT_NEAR(patch->axis_hit.m(), row.hit_m, kLastDigit_m);
    }
}

// The smooth model is our own; its flux was integrated apart.
TEST(BeamGeometryReference, SmoothBeamsHaveTheFluxIntegratedApart) {
    const std::array<std::array<double, 6>, 4> rows{{{80000, 26, 40, 2.7869, 58622, 15233},
                                                     {30000, 20, 36.45, 2.0002, 20314, 4111},
                                                     {200000, 10, 14, 3.5680, 156020, 5223},
                                                     {12000, 55, 90, 2.4378, 8509, 10553}}};
    for (const auto& [peak_cd, beam_deg, field_deg, exponent, three_quarter_cd, flux] : rows) {
        const BeamModel model{peak_cd, Angle::degrees(beam_deg), Angle::degrees(field_deg)};
        EXPECT_NEAR(edge_exponent(model), exponent, 0.00006);
        EXPECT_NEAR(intensity_cd(model, Angle::degrees(0.375 * beam_deg)), three_quarter_cd, 0.6);
        EXPECT_NEAR(flux_lm(model), flux, 0.6);
    }
}

// IES zonal-constant practice, from memory; constants and sums computed apart.
TEST(ZonalLumensReference, TenDegreeConstantsAgree) {
    const std::array<double, 9> constants{0.0955, 0.2835, 0.4629, 0.6282, 0.7744,
                                          0.8972, 0.9926, 1.0579, 1.0911};
    for (std::size_t i = 0; i < constants.size(); ++i) {
        const double from_deg = 10.0 * static_cast<double>(i);
        EXPECT_NEAR(zonal_constant_sr(Angle::degrees(from_deg), Angle::degrees(from_deg + 10.0)),
                    constants[i], 0.00006);
    }
}

TEST(ZonalLumensReference, TablesSumToTheFluxComputedApart) {
    std::vector<IntensityRow> lambert;
    for (int angle_deg = 0; angle_deg <= 90; angle_deg += 5) {
        const Angle angle = Angle::degrees(angle_deg);
        lambert.push_back({angle, 1000.0 * std::cos(angle.rad())});
    }
    EXPECT_NEAR(zonal_flux_lm(lambert), 3139.60, 0.006);
    const std::array<std::array<double, 2>, 8> table{
        {{0, 1000}, {5, 1100}, {10, 1300}, {20, 1150}, {30, 930}, {45, 650}, {65, 350}, {90, 0}}};
    std::vector<IntensityRow> rows;
    for (const auto& [angle_deg, intensity] : table) {
        rows.push_back({Angle::degrees(angle_deg), intensity});
    }
    EXPECT_NEAR(zonal_flux_lm(rows), 3056.14, 0.006);
    const std::array<IntensityRow, 2> even{
        {{Angle::degrees(0), 100.0}, {Angle::degrees(180), 100.0}}};
    EXPECT_NEAR(zonal_flux_lm(even), 1256.64, 0.006);
}

// Plain geometry, computed apart.
TEST(HoodReference, ShadeAnglesAgree) {
    const auto shade = [](double length_mm, double opening_mm, double glass_mm) {
        return optics::hood_shade({Length::millimetres(opening_mm), Length::millimetres(length_mm),
                                   Length::millimetres(glass_mm)});
    };
    EXPECT_NEAR(shade(80, 60, 40).begins.deg(), 14.036, 0.0006);
    EXPECT_NEAR(shade(80, 60, 40).complete.deg(), 51.340, 0.0006);
    EXPECT_NEAR(shade(120, 75, 40).begins.deg(), 16.260, 0.0006);
    EXPECT_NEAR(shade(120, 75, 40).complete.deg(), 43.781, 0.0006);
    EXPECT_NEAR(optics::veiled_contrast(100, 1, 1), 50.5, 1e-9);
    EXPECT_NEAR(optics::veiled_contrast(20, 1, 1), 10.5, 1e-9);
}

} // namespace
} // namespace throwline::photometry
