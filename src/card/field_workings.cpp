#include "card/field_workings.h"

#include "base/length_text.h"
#include "base/words.h"
#include "checks/hanging.h"

#include <fmt/format.h>

namespace throwline::card {

namespace {

Working of_row(const std::string& name, const std::string& source,
               std::vector<WorkingTerm> inputs) {
    return {"a row of the catalogue", std::move(inputs), name, source};
}

std::string by_text(Length width, Length height, UnitSystem units) {
    return shown(width, units) + " by " + shown(height, units);
}

std::string sensor_text(Length length) {
    return fixed(length.mm(), 2) + " mm";
}

std::string beam_text(const catalogue::BeamSetting& beam) {
    return fmt::format("{} cd, beam {}, field {}", fixed(beam.peak_cd, 0), degrees_text(beam.beam),
                       degrees_text(beam.field));
}

} // namespace

std::function<Working()> length_working(Length length) {
    return [length] {
        return Working{"1 in = 25.4 mm exactly; 1 ft = 12 in",
                       {{"", "as kept", exact_metres(length)},
                        {"", "to the millimetre", metres_text(length, 3)},
                        {"", "to 1/64 in", feet_inches(length, {64})}},
                       fmt::format("{} or {}", metres_text(length), feet_inches(length)),
                       "typed; international yard and pound agreement, 1959"};
    };
}

Working row_working(const catalogue::SensorMode& row, UnitSystem) {
    return of_row(row.name, row.source,
                  {{"w", "width", sensor_text(row.width)},
                   {"h", "height", sensor_text(row.height)},
                   {"c", "largest blur that passes as sharp",
                    fixed(row.circle_of_confusion.mm(), 4) + " mm"}});
}

Working row_working(const catalogue::Lens& row, UnitSystem units) {
    const std::string focal = row.is_zoom()
                                  ? focal_text(row.focal_min) + " to " + focal_text(row.focal_max)
                                  : focal_text(row.focal_min);
    const std::string stop = row.stop_wide == row.stop_long
                                 ? stop_text(row.stop_wide)
                                 : stop_text(row.stop_wide) + " to " + stop_text(row.stop_long);
    return of_row(row.name, row.source,
                  {{"f", "focal length", focal},
                   {"T", "widest stop", stop},
                   {"", "close focus", shown(row.close_focus, units)},
                   {"", "picture it covers", sensor_text(row.image_circle)},
                   {"", "extender", shortest(row.extender) + " times"}});
}

Working row_working(const catalogue::Support& row, UnitSystem units) {
    return of_row(
        row.name, row.source,
        {{"", "heights", shown(row.height_min, units) + " to " + shown(row.height_max, units)},
         {"", "radius on the floor", shown(row.footprint_radius, units)},
         {"", "room for its operator", shown(row.operator_room, units)}});
}

Working row_working(const catalogue::Instrument& row, UnitSystem units) {
    return of_row(row.name, row.source,
                  {{"", "spot", beam_text(row.spot)},
                   {"", "flood", beam_text(row.flood)},
                   {"P", "power", fixed(row.watts, 0) + " W"},
                   {"", "mass", checks::mass_text(row.mass_kg, units)},
                   {"", "bright face", by_text(row.face_width, row.face_height, units)},
                   {"", "colour temperature", fixed(row.colour_temperature_k, 0) + " K"},
                   {"", "least distance to what burns", shown(row.clearance, units)}});
}

Working row_working(const catalogue::StockItem& row, UnitSystem units) {
    return of_row(row.name, row.source,
                  {{"", "on the floor", by_text(row.width, row.depth, units)},
                   {"", "height", shown(row.height, units)},
                   {"", "mass", checks::mass_text(row.mass_kg, units)}});
}

Working row_working(const catalogue::Finish& row, UnitSystem) {
    return of_row(row.name, row.source, {{"", "reflectance", share_text(row.reflectance)}});
}

} // namespace throwline::card
