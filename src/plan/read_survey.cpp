#include "plan/object_reader.h"
#include "plan/read_parts.h"
#include "plan/survey_limits.h"

namespace throwline::plan {

namespace {

void read_names(Reading& reading, const ObjectReader& object, std::string_view key,
                std::vector<std::string>& names) {
    const std::optional<Value> list = object.find(key);
    if (!list || !is_list(reading, *list)) {
        return;
    }
    for (std::size_t i = 0; i < list->node->items.size(); ++i) {
        read_name(reading, list->item(i), names.emplace_back());
    }
}

} // namespace

void read_value(Reading& reading, const Value& value, Survey& survey) {
    const ObjectReader object{reading, value, kSurveyKeys};
    read_names(reading, object, "corners", survey.corners);
    object.read("clockwise", survey.clockwise);
    read_names(reading, object, "square_corners", survey.square_corners);
    object.read("squareness", survey.squareness, kSquarenesses);
    object.read("readings", survey.readings);
    object.read("chains", survey.chains);
    object.read("points", survey.points);
    object.read("things", survey.things);
    object.read("heights", survey.heights);
    object.read("outlets", survey.outlets);
    object.read("first_wall_bearing", survey.first_wall_bearing, kAnyTurn);
    object.read("precision", survey.precision, kTapePrecisions);
    object.read("precision_per_metre_mm", survey.precision_per_metre_mm,
                kTapePrecisionsPerMetre_mm);
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

void read_value(Reading& reading, const Value& value, Chain& chain) {
    const ObjectReader object{reading, value, kChainKeys};
    object.read_name("from", chain.from);
    object.read_name("to", chain.to);
    object.read("stretches", chain.stretches);
    object.read("to_the_end", chain.to_the_end);
}

void read_value(Reading& reading, const Value& value, Stretch& stretch) {
    const ObjectReader object{reading, value, kStretchKeys};
    object.read_name("name", stretch.name);
    object.read("kind", stretch.kind, std::string_view{"stretch kind"});
    object.read("width", stretch.width, kSize);
    object.read("depth", stretch.depth, kNotNegative);
    object.read("height", stretch.height, kNotNegative);
    object.read("sill", stretch.sill, kNotNegative);
}

void read_value(Reading& reading, const Value& value, FloorPoint& point) {
    const ObjectReader object{reading, value, kFloorPointKeys};
    object.read_name("name", point.name);
    object.read("outside", point.outside);
}

void read_value(Reading& reading, const Value& value, FloorThing& thing) {
    const ObjectReader object{reading, value, kFloorThingKeys};
    object.read_name("name", thing.name);
    read_names(reading, object, "points", thing.points);
    object.read("diameter", thing.diameter, kNotNegative);
    object.read("height", thing.height, kNotNegative);
}

void read_value(Reading& reading, const Value& value, HeightReading& height) {
    const ObjectReader object{reading, value, kHeightReadingKeys};
    object.read_name("at", height.at);
    object.read("height", height.height, kSize);
}

void read_value(Reading& reading, const Value& value, OutletReading& outlet) {
    const ObjectReader object{reading, value, kOutletReadingKeys};
    object.read_name("circuit", outlet.circuit);
    object.read_name("from", outlet.from);
    object.read_name("to", outlet.to);
    object.read("along", outlet.along, kNotNegative);
    object.read("height", outlet.height, kNotNegative);
}

void read_value(Reading& reading, const Value& value, SiteNote& note) {
    if (value.is(catalogue::JsonKind::string)) {
        read_value(reading, value, note.text);
        return;
    }
    const ObjectReader object{reading, value, kSiteNoteKeys};
    object.read("kind", note.kind, std::string_view{"site note kind"});
    object.read("text", note.text);
}

} // namespace throwline::plan
