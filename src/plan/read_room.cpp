#include "plan/object_reader.h"
#include "plan/read_parts.h"
#include "plan/usual_values.h"

#include "base/utf8.h"

namespace throwline::plan {

namespace {

constexpr AngleRange kSwings{Angle::degrees(1), Angle::degrees(180)};

const std::vector<std::string> kSwingWords{"in, hinge at start", "in, hinge at end",
                                           "out, hinge at start", "out, hinge at end"};

/// Every wall as the room says; `walls` then says what is different for some.
std::vector<Wall> usual_walls(const ObjectReader& room, std::size_t count, Length height) {
    Wall usual;
    usual.height = height;
    usual.thickness = kUsualWallThickness;
    room.read("thickness", usual.thickness, kSize);
    room.read("dressed", usual.dressed);
    return std::vector<Wall>(count, usual);
}

void read_wall(Reading& reading, const Value& value, std::vector<Wall>& walls,
               std::vector<bool>& given) {
    const ObjectReader object{reading, value, kWallKeys};
    int number = 0;
    object.read("wall", number, WholeRange{1, static_cast<int>(walls.size())});
    if (number < 1) {
        return;
    }
    const auto at = static_cast<std::size_t>(index_of_wall(number));
    if (given[at]) {
        reading.wrong(value.at("wall"), fmt::format("wall {} is given twice", number));
    }
    given[at] = true;
    object.read("height", walls[at].height, kSize);
    object.read("thickness", walls[at].thickness, kSize);
    object.read("finish", walls[at].finish);
    object.read("dressed", walls[at].dressed);
}

void read_walls(Reading& reading, const ObjectReader& object, Room& room) {
    room.walls = usual_walls(object, room.outline.size(), room.height);
    const auto walls = object.find("walls");
    if (!walls || room.walls.empty() || !is_list(reading, *walls)) {
        return;
    }
    std::vector<bool> given(room.walls.size(), false);
    for (std::size_t i = 0; i < walls->node->items.size(); ++i) {
        read_wall(reading, walls->item(i), room.walls, given);
    }
}

} // namespace

void read_value(Reading& reading, const Value& value, Room& room) {
    const ObjectReader object{reading, value, kRoomKeys};
    object.read("outline", room.outline);
    object.read("height", room.height, kSize);
    object.read("finish", room.finish);
    object.read("floor_finish", room.floor_finish);
    object.read("ceiling_finish", room.ceiling_finish);
    object.read("floor_dressed", room.floor_dressed);
    object.read("ceiling_dressed", room.ceiling_dressed);
    read_walls(reading, object, room);
    object.read("openings", room.openings);
    object.read("extra", room.extra);
}

void read_value(Reading& reading, const Value& value, Opening& opening) {
    const ObjectReader object{reading, value, kOpeningKeys};
    object.read("id", opening.id);
    object.read("kind", opening.kind, std::string_view{"opening kind"});
    int wall = number_of_wall(opening.wall);
    object.read("wall", wall, WholeRange{1, static_cast<int>(kMostItems)});
    opening.wall = index_of_wall(wall);
    object.read("from_start", opening.from_start, kNotNegative);
    object.read("width", opening.width, kSize);
    object.read("sill", opening.sill, kNotNegative);
    object.read("head", opening.head, kSize);
    object.read("swing", opening.swing);
    object.read("way_out", opening.way_out);
    object.read("transmission", opening.transmission, kShare);
    object.read("extra", opening.extra);
    if (object.has("swing") && opening.kind == OpeningKind::opening) {
        reading.wrong(value.at("swing"), "an opening without a leaf has no swing");
    }
}

void read_value(Reading& reading, const Value& value, Swing& swing) {
    if (value.is(catalogue::JsonKind::string)) {
        const int chosen = read_choice(reading, value, "swing", kSwingWords);
        swing.inward = chosen == 0 || chosen == 1;
        swing.hinge_at_start = chosen == 0 || chosen == 2;
        return;
    }
    const ObjectReader object{reading, value, kSwingKeys};
    object.read("inward", swing.inward);
    object.read("widest", swing.widest, kSwings);
    if (const auto hinge = object.find("hinge")) {
        const std::vector<std::string> ends{"start", "end"};
        swing.hinge_at_start = read_choice(reading, *hinge, "hinge", ends) != 1;
    }
}

} // namespace throwline::plan
