#include "plan/object_reader.h"
#include "plan/read_parts.h"

namespace throwline::plan {

namespace {

constexpr LengthRange kPrecisions{Length{}, Length::metres(1), true};
constexpr NumberRange kPrecisionPerMetre_mm{0.0, 100.0};

void read_names(Reading& reading, const Value& value, std::vector<std::string>& names) {
    if (!is_list(reading, value)) {
        return;
    }
    for (std::size_t i = 0; i < value.node->items.size(); ++i) {
        read_name(reading, value.item(i), names.emplace_back());
    }
}

} // namespace

void read_value(Reading& reading, const Value& value, Survey& survey) {
    const ObjectReader object{reading, value, kSurveyKeys};
    if (const auto corners = object.find("corners")) {
        read_names(reading, *corners, survey.corners);
    }
    if (const auto square = object.find("square_corners")) {
        read_names(reading, *square, survey.square_corners);
    }
    object.read("readings", survey.readings);
    object.read("features", survey.features);
    object.read("precision", survey.precision, kPrecisions);
    object.read("precision_per_metre_mm", survey.precision_per_metre_mm, kPrecisionPerMetre_mm);
    object.read("notes", survey.notes);
    object.read("extra", survey.extra);
}

void read_value(Reading& reading, const Value& value, TapeReading& tape) {
    const ObjectReader object{reading, value, kReadingKeys};
    object.read_name("from", tape.from);
    object.read_name("to", tape.to);
    object.read("length", tape.length, kSize);
    object.read("note", tape.note);
}

void read_value(Reading& reading, const Value& value, WallFeature& feature) {
    const ObjectReader object{reading, value, kFeatureKeys};
    object.read_name("name", feature.name);
    object.read_name("from", feature.from);
    object.read_name("to", feature.to);
    object.read("along", feature.along, kAnywhere);
    object.read("width", feature.width, kNotNegative);
    object.read("depth", feature.depth, kAnywhere);
    object.read("height", feature.height, kNotNegative);
}

} // namespace throwline::plan
