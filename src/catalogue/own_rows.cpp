#include "catalogue/own_rows.h"

#include "catalogue/row_words.h"

#include <algorithm>
#include <cmath>

namespace throwline::catalogue {

namespace {

/// Without the digits that a conversion leaves: a tenth of a millimetre is what a tape can tell.
double rounded(double value) {
    constexpr double kSteps = 10000.0;
    return std::round(value * kSteps) / kSteps;
}

/// Adds keys to a row, each with its unit.
class Writer {
  public:
    Writer(std::string_view table, const std::string& name) : row_{std::string{table}} {
        text("name", name);
    }
    void text(std::string_view key, std::string_view value) { row_.set(key, std::string{value}); }
    void number(std::string_view key, double value) { row_.set(key, rounded(value)); }
    /// A number that may be left out, and is where it is what leaving it out means.
    void number_unless(std::string_view key, double value, double usual) {
        if (value != usual) {
            number(key, value);
        }
    }
    void metres(std::string_view key, Length value) { number(key, value.m()); }
    void millimetres(std::string_view key, Length value) { number(key, value.mm()); }
    void metres_unless_zero(std::string_view key, Length value) {
        if (value > Length{}) {
            metres(key, value);
        }
    }
    void flag_unless(std::string_view key, bool value, bool usual) {
        if (value != usual) {
            row_.set(key, value);
        }
    }
    OwnRow row() && { return std::move(row_); }

  private:
    OwnRow row_;
};

OwnRow row_of(const StockItem& item, std::string_view table) {
    Writer row{table, item.name};
    row.text("use", word_of(item.use, kUses));
    row.text("shape", word_of(item.shape, kShapes));
    row.metres("width_m", item.width);
    row.metres("depth_m", item.depth);
    row.metres("height_m", item.height);
    row.metres_unless_zero("seat_height_m", item.seat_height);
    row.metres_unless_zero("clear_under_m", item.clear_under);
    row.number("mass_kg", item.mass_kg);
    return std::move(row).row();
}

OwnRow row_of(const Lens& lens, std::string_view table) {
    Writer row{table, lens.name};
    row.millimetres("focal_min_mm", lens.focal_min);
    row.millimetres("focal_max_mm", lens.focal_max);
    row.number("stop_wide", lens.stop_wide);
    row.number("stop_long", lens.stop_long);
    row.metres("close_focus_m", lens.close_focus);
    row.millimetres("image_circle_mm", lens.image_circle);
    row.number_unless("squeeze", lens.squeeze, 1.0);
    row.number_unless("extender", lens.extender, 1.0);
    row.millimetres("length_mm", lens.length);
    row.millimetres("front_diameter_mm", lens.front_diameter);
    row.millimetres("hood_length_mm", lens.hood_length);
    return std::move(row).row();
}

OwnRow row_of(const SensorMode& mode, std::string_view table) {
    Writer row{table, mode.name};
    row.millimetres("width_mm", mode.width);
    row.millimetres("height_mm", mode.height);
    row.number_unless("squeeze", mode.squeeze, 1.0);
    const double usual_mm = mode.diagonal().mm() / kDiagonalsPerCircle;
    if (std::abs(mode.circle_of_confusion.mm() - usual_mm) > 1e-9) {
        row.millimetres("circle_of_confusion_mm", mode.circle_of_confusion);
    }
    return std::move(row).row();
}

OwnRow row_of(const Instrument& lamp, std::string_view table) {
    Writer row{table, lamp.name};
    row.text("kind", word_of(lamp.kind, kInstrumentKinds));
    row.number("spot_peak_cd", lamp.spot.peak_cd);
    row.number("spot_beam_deg", lamp.spot.beam.deg());
    row.number("spot_field_deg", lamp.spot.field.deg());
    const bool is_fixed = lamp.flood.peak_cd == lamp.spot.peak_cd
                          && lamp.flood.beam == lamp.spot.beam
                          && lamp.flood.field == lamp.spot.field;
    if (!is_fixed) {
        row.number("flood_peak_cd", lamp.flood.peak_cd);
        row.number("flood_beam_deg", lamp.flood.beam.deg());
        row.number("flood_field_deg", lamp.flood.field.deg());
    }
    row.number("watts", lamp.watts);
    row.number_unless("power_factor", lamp.power_factor, 1.0);
    row.number("mass_kg", lamp.mass_kg);
    row.millimetres("body_width_mm", lamp.body_width);
    row.millimetres("body_depth_mm", lamp.body_depth);
    row.millimetres("body_height_mm", lamp.body_height);
    row.millimetres("face_width_mm", lamp.face_width);
    row.millimetres("face_height_mm", lamp.face_height);
    row.flag_unless("round_face", lamp.round_face, true);
    row.flag_unless("soft", lamp.soft, false);
    row.number("colour_temperature_k", lamp.colour_temperature_k);
    row.metres("clearance_m", lamp.clearance);
    return std::move(row).row();
}

OwnRow row_of(const Support& support, std::string_view table) {
    Writer row{table, support.name};
    row.metres("footprint_radius_m", support.footprint_radius);
    row.metres_unless_zero("operator_room_m", support.operator_room);
    row.metres("height_min_m", support.height_min);
    row.metres("height_max_m", support.height_max);
    row.metres("column_radius_m", support.column_radius);
    row.flag_unless("for_camera", support.for_camera, true);
    return std::move(row).row();
}

OwnRow row_of(const Filter& filter, std::string_view table) {
    Writer row{table, filter.name};
    row.text("kind", word_of(filter.kind, kFilterKinds));
    row.number("transmission", filter.transmission);
    row.number_unless("mired_shift", filter.mired_shift, 0.0);
    row.number_unless("spread", filter.spread, 1.0);
    return std::move(row).row();
}

template <class Row>
std::optional<OwnRow> row_or_none(const Row* row, std::string_view table) {
    return row == nullptr ? std::nullopt : std::optional{row_of(*row, table)};
}

} // namespace

const OwnValue* OwnRow::find(std::string_view key) const {
    const auto found = std::find_if(values.begin(), values.end(),
                                    [&](const auto& value) { return value.first == key; });
    return found == values.end() ? nullptr : &found->second;
}

void OwnRow::set(std::string_view key, OwnValue value) {
    const auto found = std::find_if(values.begin(), values.end(),
                                    [&](const auto& one) { return one.first == key; });
    if (found == values.end()) {
        values.emplace_back(std::string{key}, std::move(value));
    } else {
        found->second = std::move(value);
    }
}

void OwnRow::clear(std::string_view key) {
    std::erase_if(values, [&](const auto& value) { return value.first == key; });
}

std::string OwnRow::name() const {
    const OwnValue* value = find("name");
    const std::string* text = value == nullptr ? nullptr : std::get_if<std::string>(value);
    return text == nullptr ? std::string{} : *text;
}

std::optional<OwnRow> own_row(const Catalogue& catalogue, std::string_view table,
                              std::string_view name) {
    if (table == "stock") {
        return row_or_none(catalogue.stock_item(name), table);
    }
    if (table == "lenses") {
        return row_or_none(catalogue.lens(name), table);
    }
    if (table == "sensors") {
        return row_or_none(catalogue.sensor(name), table);
    }
    if (table == "instruments") {
        return row_or_none(catalogue.instrument(name), table);
    }
    if (table == "supports") {
        return row_or_none(catalogue.support(name), table);
    }
    if (table == "filters") {
        return row_or_none(catalogue.filter(name), table);
    }
    return std::nullopt;
}

} // namespace throwline::catalogue
