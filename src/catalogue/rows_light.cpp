#include "catalogue/row_words.h"
#include "catalogue/rows.h"

namespace throwline::catalogue {

namespace {

constexpr Range kPeakCd = above_zero_to(1e8);
/// 180° is the half space in front of a face; a lantern or bare lamp shines wider.
constexpr Range kFullAngleDeg = above_zero_to(360.0);
constexpr Range kWatts = zero_to(50000.0);
constexpr Range kMassKg = above_zero_to(500.0);
constexpr Range kBodyMm = above_zero_to(10000.0);
constexpr Range kKelvin{1000.0, 20000.0, false};

BeamSetting setting_from(RowReader& row, std::string_view peak_key, std::string_view beam_key,
                         std::string_view field_key) {
    BeamSetting setting;
    setting.peak_cd = row.number(peak_key, kPeakCd);
    setting.beam = Angle::degrees(row.number(beam_key, kFullAngleDeg));
    setting.field = Angle::degrees(row.number(field_key, kFullAngleDeg));
    row.require(setting.field > setting.beam, field_key,
                "the field angle (to 10 %) must be wider than the beam angle (to 50 %)");
    return setting;
}

/// A lamp of fixed focus gives the spot keys only.
BeamSetting flood_from(RowReader& row, const BeamSetting& spot) {
    if (!row.has("flood_peak_cd") && !row.has("flood_beam_deg") && !row.has("flood_field_deg")) {
        return spot;
    }
    const BeamSetting flood =
        setting_from(row, "flood_peak_cd", "flood_beam_deg", "flood_field_deg");
    row.require(flood.beam >= spot.beam, "flood_beam_deg",
                "the flood beam is narrower than the spot beam");
    return flood;
}

} // namespace

Instrument instrument_from(RowReader& row) {
    Instrument lamp;
    lamp.name = row.text("name");
    lamp.kind = row.choice("kind", kInstrumentKinds);
    lamp.spot = setting_from(row, "spot_peak_cd", "spot_beam_deg", "spot_field_deg");
    lamp.flood = flood_from(row, lamp.spot);
    lamp.watts = row.number("watts", kWatts);
    lamp.power_factor = row.number_or("power_factor", above_zero_to(1.0), 1.0);
    lamp.mass_kg = row.number("mass_kg", kMassKg);
    lamp.body_width = Length::millimetres(row.number("body_width_mm", kBodyMm));
    lamp.body_depth = Length::millimetres(row.number("body_depth_mm", kBodyMm));
    lamp.body_height = Length::millimetres(row.number("body_height_mm", kBodyMm));
    lamp.face_width = Length::millimetres(row.number("face_width_mm", kBodyMm));
    lamp.face_height = Length::millimetres(row.number("face_height_mm", kBodyMm));
    lamp.round_face = row.flag_or("round_face", true);
    lamp.soft = row.flag_or("soft", false);
    lamp.colour_temperature_k = row.number("colour_temperature_k", kKelvin);
    lamp.clearance = Length::metres(row.number("clearance_m", zero_to(20.0)));
    lamp.source = row.source();
    row.require(!lamp.round_face || lamp.face_width == lamp.face_height, "face_height_mm",
                "a round face is as high as it is wide");
    return lamp;
}

Filter filter_from(RowReader& row) {
    Filter filter;
    filter.name = row.text("name");
    filter.kind = row.choice("kind", kFilterKinds);
    filter.transmission = row.number("transmission", above_zero_to(1.0));
    filter.mired_shift = row.number_or("mired_shift", {-500.0, 500.0, false}, 0.0);
    filter.spread = row.number_or("spread", {1.0, 20.0, false}, 1.0);
    filter.source = row.source();
    row.require(filter.kind != FilterKind::neutral || filter.mired_shift == 0.0, "mired_shift",
                "a neutral filter shifts no colour");
    return filter;
}

Finish finish_from(RowReader& row) {
    Finish finish;
    finish.name = row.text("name");
    finish.reflectance = row.number("reflectance", zero_to(1.0));
    finish.source = row.source();
    return finish;
}

} // namespace throwline::catalogue
