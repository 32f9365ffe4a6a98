#include "plan/calendar_text.h"
#include "plan/usual_values.h"
#include "plan/write_parts.h"
#include "plan/write_values.h"

#include <algorithm>

namespace throwline::plan {

namespace {

/// What most walls have in common; the first of several equally common values.
template <class Part>
Part most_common(const std::vector<Wall>& walls, Part Wall::* part, Part usual) {
    const auto times = [&](const Part& value) {
        return std::count_if(walls.begin(), walls.end(),
                             [&](const Wall& wall) { return wall.*part == value; });
    };
    for (const Wall& wall : walls) {
        usual = times(wall.*part) > times(usual) ? wall.*part : usual;
    }
    return usual;
}

JsonOut wall_out(std::size_t index, const Wall& wall, const Wall& usual) {
    JsonOut object = JsonOut::object();
    put(object, "wall", number_of_wall(static_cast<int>(index)));
    put_unless(object, "height", wall.height, usual.height);
    put_unless(object, "thickness", wall.thickness, usual.thickness);
    put_unless(object, "finish", wall.finish, usual.finish);
    put_unless(object, "dressed", wall.dressed, usual.dressed);
    return object;
}

/// The walls that are not as the room says.
std::vector<JsonOut> unusual_walls(const std::vector<Wall>& walls, const Wall& usual) {
    std::vector<JsonOut> unusual;
    for (std::size_t i = 0; i < walls.size(); ++i) {
        if (!(walls[i] == usual)) {
            unusual.push_back(wall_out(i, walls[i], usual));
        }
    }
    return unusual;
}

JsonOut pair_out(JsonOut first, JsonOut second) {
    return JsonOut::array({std::move(first), std::move(second)});
}

} // namespace

JsonOut out(const Site& site) {
    const Site usual;
    JsonOut object = JsonOut::object();
    put_some(object, "place", site.place);
    put_unless(object, "north", site.north, usual.north);
    put_some(object, "latitude", site.latitude);
    put_some(object, "longitude", site.longitude);
    put_some(object, "date", site.date);
    if (site.hours) {
        object.put("hours", pair_out(out(text_of(site.hours->from)), out(text_of(site.hours->to))));
    }
    if (site.utc_offset_minutes) {
        put(object, "utc_offset", utc_offset_text(*site.utc_offset_minutes));
    }
    put_some(object, "notes", site.notes);
    put_extra(object, site.extra);
    return object;
}

JsonOut out(const Room& room) {
    const Room usual;
    Wall usual_wall;
    usual_wall.height = room.height;
    usual_wall.thickness = most_common(room.walls, &Wall::thickness, kUsualWallThickness);
    usual_wall.dressed = most_common(room.walls, &Wall::dressed, false);
    JsonOut object = JsonOut::object();
    put(object, "outline", room.outline);
    put(object, "height", room.height);
    put_unless(object, "thickness", usual_wall.thickness, kUsualWallThickness);
    put_some(object, "finish", room.finish);
    put_some(object, "floor_finish", room.floor_finish);
    put_some(object, "ceiling_finish", room.ceiling_finish);
    put_unless(object, "dressed", usual_wall.dressed, false);
    put_unless(object, "floor_dressed", room.floor_dressed, usual.floor_dressed);
    put_unless(object, "ceiling_dressed", room.ceiling_dressed, usual.ceiling_dressed);
    std::vector<JsonOut> unusual = unusual_walls(room.walls, usual_wall);
    if (!unusual.empty()) {
        object.put("walls", JsonOut::array(std::move(unusual)));
    }
    put_some(object, "openings", room.openings);
    put_extra(object, room.extra);
    return object;
}

JsonOut out(const Opening& opening) {
    const Opening usual;
    JsonOut object = JsonOut::object();
    put(object, "id", opening.id);
    put(object, "kind", opening.kind);
    put(object, "wall", number_of_wall(opening.wall));
    put(object, "from_start", opening.from_start);
    put(object, "width", opening.width);
    put_unless(object, "sill", opening.sill, usual.sill);
    put(object, "head", opening.head);
    put_some(object, "swing", opening.swing);
    put_unless(object, "way_out", opening.way_out, usual.way_out);
    put_unless(object, "transmission", opening.transmission, usual.transmission);
    put_extra(object, opening.extra);
    return object;
}

JsonOut out(const Swing& swing) {
    const Swing usual;
    const std::string hinge = swing.hinge_at_start ? "start" : "end";
    if (swing.widest == usual.widest) {
        return out((swing.inward ? "in, hinge at " : "out, hinge at ") + hinge);
    }
    JsonOut object = JsonOut::object();
    put(object, "inward", swing.inward);
    put(object, "hinge", hinge);
    put(object, "widest", swing.widest);
    return object;
}

JsonOut out(const Grid& grid) {
    const Grid usual;
    JsonOut object = JsonOut::object();
    put(object, "origin", grid.origin);
    object.put("pitch", pair_out(out(grid.pitch_x), out(grid.pitch_y)));
    object.put("count", pair_out(out(grid.columns), out(grid.rows)));
    put(object, "height", grid.height);
    put_unless(object, "turn", grid.turn, usual.turn);
    put_unless(object, "pipes", grid.run, usual.run);
    put_unless(object, "point_load_kg", grid.point_load_kg, usual.point_load_kg);
    put_unless(object, "pipe_load_kg", grid.pipe_load_kg, usual.pipe_load_kg);
    put_extra(object, grid.extra);
    return object;
}

JsonOut out(const Pipe& pipe) {
    const Pipe usual;
    JsonOut object = JsonOut::object();
    put(object, "id", pipe.id);
    put(object, "from", pipe.from);
    put(object, "to", pipe.to);
    put(object, "height", pipe.height);
    put_unless(object, "point_load_kg", pipe.point_load_kg, usual.point_load_kg);
    put_unless(object, "load_kg", pipe.load_kg, usual.load_kg);
    put_extra(object, pipe.extra);
    return object;
}

JsonOut out(const Circuit& circuit) {
    JsonOut object = JsonOut::object();
    put(object, "id", circuit.id);
    put(object, "volts", circuit.volts);
    put(object, "breaker_amps", circuit.breaker_amps);
    put_unless(object, "continuous", circuit.continuous, true);
    put_some(object, "outlets", circuit.outlets);
    put_extra(object, circuit.extra);
    return object;
}

} // namespace throwline::plan
