#include "catalogue/row_words.h"
#include "catalogue/rows.h"

namespace throwline::catalogue {

namespace {

constexpr Range kSensorSideMm = above_zero_to(200.0);
constexpr Range kFocalMm = above_zero_to(3000.0);
/// T0.5 is faster than any lens that is made, T64 slower than any that is used.
constexpr Range kStop{0.5, 64.0, false};
constexpr Range kSqueeze{1.0, 2.5, false};
/// A body, front glass or hood.
constexpr Range kLensPartMm = above_zero_to(2000.0);
constexpr Range kSupportM = zero_to(20.0);
constexpr Range kTallestM = above_zero_to(30.0);

} // namespace

SensorMode sensor_from(RowReader& row) {
    SensorMode mode;
    mode.name = row.text("name");
    mode.width = Length::millimetres(row.number("width_mm", kSensorSideMm));
    mode.height = Length::millimetres(row.number("height_mm", kSensorSideMm));
    mode.squeeze = row.number_or("squeeze", kSqueeze, 1.0);
    mode.circle_of_confusion = Length::millimetres(row.number_or(
        "circle_of_confusion_mm", above_zero_to(1.0), mode.diagonal().mm() / kDiagonalsPerCircle));
    mode.source = row.source();
    return mode;
}

Lens lens_from(RowReader& row) {
    Lens lens;
    lens.name = row.text("name");
    lens.focal_min = Length::millimetres(row.number("focal_min_mm", kFocalMm));
    lens.focal_max = Length::millimetres(row.number("focal_max_mm", kFocalMm));
    lens.stop_wide = row.number("stop_wide", kStop);
    lens.stop_long = row.number("stop_long", kStop);
    lens.close_focus = Length::metres(row.number("close_focus_m", above_zero_to(20.0)));
    lens.image_circle = Length::millimetres(row.number("image_circle_mm", kSensorSideMm));
    lens.squeeze = row.number_or("squeeze", kSqueeze, 1.0);
    lens.extender = row.number_or("extender", {1.0, 3.0, false}, 1.0);
    lens.length = Length::millimetres(row.number("length_mm", kLensPartMm));
    lens.front_diameter = Length::millimetres(row.number("front_diameter_mm", kLensPartMm));
    lens.hood_length = Length::millimetres(row.number("hood_length_mm", zero_to(kLensPartMm.high)));
    lens.source = row.source();
    row.require(lens.focal_max >= lens.focal_min, "focal_max_mm",
                "the longest focal length is shorter than the shortest");
    row.require(lens.stop_long >= lens.stop_wide, "stop_long",
                "the widest stop at the long end is faster than at the wide end");
    return lens;
}

Support support_from(RowReader& row) {
    Support support;
    support.name = row.text("name");
    support.footprint_radius = Length::metres(row.number("footprint_radius_m", kSupportM));
    support.operator_room = Length::metres(row.number_or("operator_room_m", kSupportM, 0.0));
    support.height_min = Length::metres(row.number("height_min_m", kSupportM));
    support.height_max = Length::metres(row.number("height_max_m", kTallestM));
    support.column_radius = Length::metres(row.number("column_radius_m", kSupportM));
    support.for_camera = row.flag_or("for_camera", true);
    support.source = row.source();
    row.require(support.height_max >= support.height_min, "height_max_m",
                "the greatest height is lower than the least");
    row.require(support.column_radius <= support.footprint_radius, "column_radius_m",
                "the column is wider than the footprint");
    return support;
}

} // namespace throwline::catalogue
