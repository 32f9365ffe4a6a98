#include "plan/object_reader.h"
#include "plan/read_parts.h"

namespace throwline::plan {

namespace {

/// More pipes than any studio has; positions stay countable.
constexpr WholeRange kGridCounts{1, 100};
constexpr LengthRange kPitches{Length::metres(-100), Length::metres(100)};
constexpr NumberRange kVolts{0.0, 1000.0, true};
constexpr NumberRange kAmps{0.0, 10'000.0, true};

/// The two items of a list, one along x and one along y; whether there are two.
bool is_pair(Reading& reading, const Value& value, std::string_view what) {
    if (value.is(catalogue::JsonKind::array) && value.node->items.size() == 2) {
        return true;
    }
    reading.expected(value, what);
    return false;
}

void read_pitch(Reading& reading, const Value& value, Length& into) {
    read_value(reading, value, into, kPitches);
    if (!reading.is_spoilt(value) && into == Length{}) {
        reading.wrong(value, "pipes of a grid cannot stand in one place; the pitch must not be 0");
    }
}

} // namespace

void read_value(Reading& reading, const Value& value, Grid& grid) {
    const ObjectReader object{reading, value, kGridKeys};
    object.read("origin", grid.origin);
    const auto pitch = object.find("pitch");
    if (pitch && is_pair(reading, *pitch, "two pitches [across, up]")) {
        read_pitch(reading, pitch->item(0), grid.pitch_x);
        read_pitch(reading, pitch->item(1), grid.pitch_y);
    }
    const auto count = object.find("count");
    if (count && is_pair(reading, *count, "two whole numbers [letters, numbers]")) {
        read_value(reading, count->item(0), grid.columns, kGridCounts);
        read_value(reading, count->item(1), grid.rows, kGridCounts);
    }
    object.read("height", grid.height, kSize);
    object.read("turn", grid.turn, kAnyTurn);
    object.read("pipes", grid.run, std::string_view{"pipe run"});
    object.read("point_load_kg", grid.point_load_kg, kLoad_kg);
    object.read("pipe_load_kg", grid.pipe_load_kg, kLoad_kg);
    object.read("extra", grid.extra);
}

void read_value(Reading& reading, const Value& value, Pipe& pipe) {
    const ObjectReader object{reading, value, kPipeKeys};
    object.read("id", pipe.id);
    object.read("from", pipe.from);
    object.read("to", pipe.to);
    object.read("height", pipe.height, kSize);
    object.read("point_load_kg", pipe.point_load_kg, kLoad_kg);
    object.read("load_kg", pipe.load_kg, kLoad_kg);
    object.read("extra", pipe.extra);
    if (!reading.is_spoilt(value) && pipe.from == pipe.to) {
        reading.wrong(value.at("to"), "a pipe must not end where it begins");
    }
}

void read_value(Reading& reading, const Value& value, Circuit& circuit) {
    const ObjectReader object{reading, value, kCircuitKeys};
    object.read("id", circuit.id);
    object.read("volts", circuit.volts, kVolts);
    object.read("breaker_amps", circuit.breaker_amps, kAmps);
    object.read("continuous", circuit.continuous);
    object.read("outlets", circuit.outlets);
    object.read("extra", circuit.extra);
}

} // namespace throwline::plan
