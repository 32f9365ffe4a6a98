#include "plan/object_reader.h"
#include "plan/read_parts.h"

#include "base/length_text.h"

namespace throwline::plan {

namespace {

/// From a small child to the tallest adult on record, with room to spare.
constexpr LengthRange kStatures{Length::metres(0.4), Length::metres(2.8)};
constexpr LengthRange kSeatHeights{Length{}, Length::metres(3)};

/// One entry of a beat's marks: a mark, or "off".
void read_change(Reading& reading, const Value& value, std::variant<Mark, OffFloor>& into) {
    if (value.is(catalogue::JsonKind::string) && value.node->text == "off") {
        into = OffFloor{};
        return;
    }
    if (!value.is(catalogue::JsonKind::object)) {
        reading.expected(value, "a mark {...}, or \"off\" for leaving the floor");
        return;
    }
    Mark mark;
    read_value(reading, value, mark);
    into = std::move(mark);
}

void read_marks(Reading& reading, const Value& value, Beat& beat) {
    if (!value.is(catalogue::JsonKind::object) || value.node->members.size() > kMostItems) {
        reading.expected(value, "marks by person, {\"name\": {...}}");
        return;
    }
    for (const catalogue::JsonMember& member : value.node->members) {
        const Value mark{&member.value, catalogue::pointer_to(value.pointer, member.key)};
        read_change(reading, mark, beat.marks[Id<Person>{member.key}]);
    }
}

} // namespace

void read_value(Reading& reading, const Value& value, Person& person) {
    const ObjectReader object{reading, value, kPersonKeys};
    object.read("id", person.id);
    object.read("stature", person.stature, kStatures);
    object.read("kind", person.kind, std::string_view{"person kind"});
    object.read("extra", person.extra);
}

void read_value(Reading& reading, const Value& value, Beat& beat) {
    const ObjectReader object{reading, value, kBeatKeys};
    object.read("id", beat.id);
    object.read("name", beat.name);
    if (const auto marks = object.find("marks")) {
        read_marks(reading, *marks, beat);
    }
    object.read("extra", beat.extra);
}

void read_value(Reading& reading, const Value& value, Mark& mark) {
    const ObjectReader object{reading, value, kMarkKeys};
    object.read("at", mark.at);
    object.read("faces", mark.faces);
    object.read("pose", mark.pose, std::string_view{"pose"});
    object.read("elevation", mark.elevation, kAnywhere);
    object.read("seat_height", mark.seat_height, kSeatHeights);
    object.read("path", mark.path);
}

void read_value(Reading& reading, const Value& value, Facing& facing) {
    if (value.is(catalogue::JsonKind::array)) {
        Vec2 point = Vec2::Zero();
        read_value(reading, value, point);
        facing = point;
        return;
    }
    const bool is_text = value.is(catalogue::JsonKind::string);
    if (is_text && !reads_as_angle(value.node->text)) {
        ThingName thing;
        read_name(reading, value, thing.name);
        facing = thing;
        return;
    }
    if (!is_text && !value.is(catalogue::JsonKind::number)) {
        reading.expected(value, "an angle such as 90 or \"90deg\", a name, or a point [x, y]");
        return;
    }
    Angle angle;
    read_value(reading, value, angle, kAnyTurn);
    facing = angle;
}

void read_value(Reading& reading, const Value& value, Aim& aim) {
    if (value.is(catalogue::JsonKind::array)) {
        Vec3 point = Vec3::Zero();
        read_value(reading, value, point);
        aim = point;
        return;
    }
    if (!value.is(catalogue::JsonKind::string)) {
        reading.expected(value, "a name or a place [x, y, z]");
        return;
    }
    ThingName thing;
    read_name(reading, value, thing.name);
    aim = thing;
}

} // namespace throwline::plan
