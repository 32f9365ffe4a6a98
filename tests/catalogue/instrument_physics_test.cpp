#include "catalogue/shipped.h"
#include "support/number.h"

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace throwline;
using namespace throwline::catalogue;

namespace {

/// Integral of the smooth beam over all directions, lm, by the midpoint rule.
double flux_lm(const BeamSetting& setting) {
    const double ratio = setting.field.rad() / setting.beam.rad();
    const double exponent = std::min(24.0, std::log(std::log2(10.0)) / std::log(ratio));
    constexpr int kSteps = 4000;
    double sum = 0.0;
    for (int i = 0; i < kSteps; ++i) {
        const double angle = (i + 0.5) * std::numbers::pi / kSteps;
        const double share = std::pow(0.5, std::pow(angle / (setting.beam.rad() / 2.0), exponent));
        sum += share * std::sin(angle);
    }
    return setting.peak_cd * sum * 2.0 * std::numbers::pi * std::numbers::pi / kSteps;
}

class Instruments : public testing::Test {
  protected:
    Catalogue shipped = shipped_catalogue();
};

/// What 3200 K lamps and white LEDs turn a watt into at best, before anything is lost in the
/// housing.
double best_lm_per_watt(const Instrument& lamp) {
    const bool tungsten = lamp.power_factor == 1.0 && lamp.colour_temperature_k <= 3200.0;
    return tungsten ? 26.0 : 110.0;
}

bool is_flame(const Instrument& lamp) {
    return lamp.watts == 0.0;
}

} // namespace

TEST_F(Instruments, GiveNoMoreLightThanTheirLampMakes) {
    for (const Instrument& lamp : shipped.instruments) {
        if (is_flame(lamp)) {
            continue;
        }
        const double made_lm = lamp.watts * best_lm_per_watt(lamp);
        EXPECT_LE(flux_lm(lamp.spot), made_lm) << lamp.name;
        EXPECT_LE(flux_lm(lamp.flood), made_lm) << lamp.name;
        EXPECT_GE(flux_lm(lamp.flood), 0.08 * lamp.watts) << lamp.name;
    }
}

TEST_F(Instruments, FocusingLosesLightAndGainsPeak) {
    int focusing = 0;
    for (const Instrument& lamp : shipped.instruments) {
        if (lamp.flood.beam == lamp.spot.beam) {
            EXPECT_DOUBLE_EQ(lamp.flood.peak_cd, lamp.spot.peak_cd) << lamp.name;
            continue;
        }
        ++focusing;
        EXPECT_LT(flux_lm(lamp.spot), flux_lm(lamp.flood)) << lamp.name;
        EXPECT_GT(lamp.spot.peak_cd, lamp.flood.peak_cd) << lamp.name;
        EXPECT_LT(lamp.spot.field, lamp.flood.field) << lamp.name;
    }
    EXPECT_GE(focusing, 15);
}

TEST_F(Instruments, TungstenFresnelsGiveATenthToAThirdOfTheirLamp) {
    for (const char* const name : {"Fresnel 150 W", "Fresnel 300 W", "Fresnel 650 W",
                                   "Fresnel 1 kW", "Fresnel 2 kW", "Fresnel 5 kW"}) {
        const Instrument* lamp = shipped.instrument(name);
        ASSERT_NE(lamp, nullptr) << name;
        const double made_lm = lamp->watts * (lamp->watts < 500.0 ? 19.0 : 26.0);
        EXPECT_GT(flux_lm(lamp->spot), 0.08 * made_lm) << name;
        EXPECT_LT(flux_lm(lamp->flood), 0.34 * made_lm) << name;
    }
}

TEST_F(Instruments, BiggerFresnelsAreBrighterHeavierAndNeedMoreRoom) {
    const Instrument* smaller = shipped.instrument("Fresnel 150 W");
    for (const char* const name :
         {"Fresnel 300 W", "Fresnel 650 W", "Fresnel 1 kW", "Fresnel 2 kW", "Fresnel 5 kW"}) {
        const Instrument* lamp = shipped.instrument(name);
        EXPECT_GT(lamp->spot.peak_cd, smaller->spot.peak_cd) << name;
        EXPECT_GT(lamp->flood.peak_cd, smaller->flood.peak_cd) << name;
        EXPECT_GT(lamp->mass_kg, smaller->mass_kg) << name;
        EXPECT_GT(lamp->clearance, smaller->clearance) << name;
        smaller = lamp;
    }
}

TEST_F(Instruments, ProfilesAreNamedAfterTheirField) {
    int profiles = 0;
    for (const Instrument& lamp : shipped.instruments) {
        const std::size_t at = lamp.name.find("profile ");
        if (lamp.kind != InstrumentKind::profile || at == std::string::npos) {
            continue;
        }
        ++profiles;
        EXPECT_NEAR(lamp.spot.field.deg(), support::number_at_start(lamp.name.substr(at + 8)), 1e-9)
            << lamp.name;
    }
    EXPECT_GE(profiles, 6);
}

TEST_F(Instruments, SoftFacesShineAsADiffuseFaceDoes) {
    int soft = 0;
    for (const Instrument& lamp : shipped.instruments) {
        if (!lamp.soft) {
            continue;
        }
        ++soft;
        const double width_m = lamp.face_width.m();
        const double area_m2 =
            width_m * lamp.face_height.m() * (lamp.round_face ? std::numbers::pi / 4.0 : 1.0);
        const double luminance_cd_m2 = lamp.spot.peak_cd / area_m2;
        EXPECT_GT(luminance_cd_m2, 200.0) << lamp.name;
        EXPECT_LT(luminance_cd_m2, 60000.0) << lamp.name;
        // A Lambertian face sends out pi times its axial intensity; a grid only narrows that.
        EXPECT_LT(flux_lm(lamp.spot), 1.06 * std::numbers::pi * lamp.spot.peak_cd) << lamp.name;
    }
    EXPECT_GE(soft, 12);
}

TEST_F(Instruments, FacesFitTheirBodies) {
    for (const Instrument& lamp : shipped.instruments) {
        EXPECT_LE(lamp.face_width, lamp.body_width) << lamp.name;
        EXPECT_LE(lamp.face_height, lamp.body_height) << lamp.name;
        EXPECT_GE(lamp.clearance.m(), 0.1) << lamp.name;
    }
}
