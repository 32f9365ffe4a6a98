#include "photometry/beam_model.h"
#include "photometry/intensity_distribution.h"

#include <array>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <rapidcheck/gtest.h>

namespace throwline::photometry {
namespace {

BeamModel beam_of(double peak_cd, double beam_deg, double field_deg) {
    return {peak_cd, Angle::degrees(beam_deg), Angle::degrees(field_deg)};
}

BeamModel any_beam() {
    const double beam_deg = *rc::gen::inRange(4, 120);
    return beam_of(*rc::gen::inRange(100, 500000), beam_deg,
                   beam_deg * (1.0 + *rc::gen::inRange(6, 100) / 100.0));
}

catalogue::Instrument focusing_instrument() {
    catalogue::Instrument instrument;
    instrument.spot = {80000, Angle::degrees(10), Angle::degrees(18)};
    instrument.flood = {9000, Angle::degrees(50), Angle::degrees(64)};
    return instrument;
}

RC_GTEST_PROP(BeamModel, HalfAtTheBeamAngleAndATenthAtTheFieldAngle, ()) {
    const BeamModel model = any_beam();
    RC_ASSERT(std::abs(intensity_cd(model, model.beam / 2.0) / model.peak_cd - 0.5) < 1e-9);
    RC_ASSERT(std::abs(intensity_cd(model, model.field / 2.0) / model.peak_cd - 0.1) < 1e-9);
    RC_ASSERT(intensity_cd(model, Angle{}) == model.peak_cd);
}

RC_GTEST_PROP(BeamModel, FartherOffTheAxisIsNeverBrighter, ()) {
    const BeamModel model = any_beam();
    const Angle inner = Angle::degrees(*rc::gen::inRange(0, 170));
    const Angle outer = inner + Angle::degrees(*rc::gen::inRange(1, 10));
    RC_ASSERT(intensity_cd(model, outer) <= intensity_cd(model, inner));
}

TEST(BeamModel, AHardEdgeIsHeldToTheSteepestExponent) {
    EXPECT_EQ(edge_exponent(beam_of(1, 26, 26)), kSteepestExponent);
    EXPECT_EQ(edge_exponent(beam_of(1, 26, 20)), kSteepestExponent);
    EXPECT_EQ(edge_exponent(beam_of(1, 26, 26.5)), kSteepestExponent);
    EXPECT_LT(edge_exponent(beam_of(1, 26, 30)), kSteepestExponent);
    EXPECT_NEAR(edge_exponent(beam_of(1, 20, 20 * 1.82262)), 2.0, 1e-5);
}

TEST(BeamModel, FluxAgreesWithAFineSum) {
    const BeamModel model = beam_of(20000, 20, 40);
    double sum_lm = 0.0;
    constexpr int kSlices = 200000;
    for (int i = 0; i < kSlices; ++i) {
        const double angle_rad = (i + 0.5) * std::numbers::pi / kSlices;
        sum_lm += intensity_cd(model, Angle::radians(angle_rad)) * std::sin(angle_rad)
                  * (2.0 * std::numbers::pi * std::numbers::pi / kSlices);
    }
    EXPECT_NEAR(flux_lm(model) / sum_lm, 1.0, 1e-4);
}

RC_GTEST_PROP(BeamFocus, FloodingWidensAndNeverBrightens, ()) {
    const catalogue::Instrument instrument = focusing_instrument();
    const double tight = *rc::gen::inRange(0, 100) / 100.0;
    const double wide = tight + 0.01;
    const BeamModel before = beam_at_focus(instrument, tight);
    const BeamModel after = beam_at_focus(instrument, wide);
    RC_ASSERT(after.beam > before.beam);
    RC_ASSERT(after.field > before.field);
    RC_ASSERT(after.peak_cd < before.peak_cd);
}

TEST(BeamFocus, TheEndsAreThoseOfTheInstrument) {
    const catalogue::Instrument instrument = focusing_instrument();
    EXPECT_EQ(beam_at_focus(instrument, 0.0).peak_cd, 80000);
    EXPECT_NEAR(beam_at_focus(instrument, 1.0).peak_cd, 9000, 1e-6);
    EXPECT_NEAR(beam_at_focus(instrument, 1.0).beam.deg(), 50, 1e-9);
    EXPECT_EQ(beam_at_focus(instrument, -1.0), beam_at_focus(instrument, 0.0));
    EXPECT_EQ(beam_at_focus(instrument, 2.0), beam_at_focus(instrument, 1.0));
}

TEST(BeamFocus, ADarkLampStaysDark) {
    catalogue::Instrument dark = focusing_instrument();
    dark.flood.peak_cd = 0.0;
    EXPECT_EQ(beam_at_focus(dark, 0.5).peak_cd, 0.0);
}

RC_GTEST_PROP(FilteredBeam, FluxFallsByTheTransmissionAlone, ()) {
    const BeamModel model = any_beam();
    catalogue::Filter filter;
    filter.transmission = *rc::gen::inRange(5, 100) / 100.0;
    filter.spread = *rc::gen::inRange(10, 30) / 10.0;
    const BeamModel behind = filtered(model, filter);
    RC_ASSERT(std::abs(flux_lm(behind) / (flux_lm(model) * filter.transmission) - 1.0) < 1e-3);
    RC_ASSERT(behind.peak_cd <= model.peak_cd * filter.transmission * (1.0 + 1e-9));
    RC_ASSERT(behind.beam >= model.beam);
    RC_ASSERT(behind.field.deg() <= std::max(180.0, model.field.deg()) + 1e-9);
}

TEST(FilteredBeam, NeutralFiltersMultiply) {
    catalogue::Filter half;
    half.transmission = 0.5;
    const BeamModel behind = filtered(beam_of(1000, 20, 40), std::array{half, half});
    EXPECT_EQ(behind, beam_of(250, 20, 40));
}

TEST(DimmedBeam, LevelsOutsideAreHeld) {
    EXPECT_EQ(dimmer_share(1.5), 1.0);
    EXPECT_EQ(dimmer_share(-0.5), 0.0);
    EXPECT_EQ(dimmed(beam_of(1000, 20, 40), 0.5), beam_of(250, 20, 40));
}

RC_GTEST_PROP(IntensityDistribution, HalfAngleIsWhereTheShareIsReached, ()) {
    const IntensityDistribution distribution(any_beam());
    const double share = *rc::gen::inRange(2, 99) / 100.0;
    const double angle_rad = distribution.half_angle_rad(share);
    RC_PRE(angle_rad < std::numbers::pi);
    RC_ASSERT(std::abs(distribution.at_angle_cd(angle_rad) / distribution.peak_cd() - share)
              < 1e-9);
}

TEST(IntensityDistribution, DirectionsNeedNotBeUnitVectors) {
    const IntensityDistribution distribution(beam_of(1000, 90, 120));
    EXPECT_NEAR(distribution.toward_cd({0, 0, -2}, {3, 0, -3}), 500, 1e-9);
    EXPECT_EQ(distribution.toward_cd({0, 0, 0}, {3, 0, -3}), 0.0);
    EXPECT_EQ(distribution.half_angle_rad(1.0), 0.0);
    EXPECT_EQ(distribution.half_angle_rad(0.0), std::numbers::pi);
}

TEST(IntensityDistribution, ABeamWithoutAnAngleSendsNothing) {
    EXPECT_EQ(IntensityDistribution(beam_of(1000, 0, 0)).at_angle_cd(0.0), 0.0);
    EXPECT_EQ(flux_lm(BeamModel{}), 0.0);
}

TEST(BeamModel, WorkingCarriesItsResult) {
    EXPECT_EQ(intensity_working(beam_of(20000, 20, 40), Angle::degrees(10)).result, "10000 cd");
}

} // namespace
} // namespace throwline::photometry
