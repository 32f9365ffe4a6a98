#pragma once

#include "plan/plan.h"
#include "sheet/dimensions.h"

#include <optional>

/// The sizes of a room, for whoever builds in it.
namespace throwline::sheet {

/// Where places in a room are measured from: a corner, and two directions square to each other.
struct RoomDatum {
    /// Index of the corner.
    std::size_t corner = 0;
    Vec2 origin = Vec2::Zero();
    /// Along one of its walls, and square off that into the room.
    Vec2 x = Vec2::UnitX();
    Vec2 y = Vec2::UnitY();

    /// In these axes, metres.
    Vec2 of(const Vec2& place) const { return {(place - origin).dot(x), (place - origin).dot(y)}; }
    /// Direction in these axes on the plan.
    Vec2 on_plan(const Vec2& direction) const { return x * direction.x() + y * direction.y(); }
};

/// The square corner furthest to the lower left of the plan; of a room without one, the outward
/// corner furthest there. The room has an outline.
RoomDatum datum_of(const plan::Room& room);

/// Walls whose sizes stand in one row: all that look the same way out, or one alone.
struct WallRow {
    std::vector<std::size_t> walls;
    Vec2 outward = Vec2::UnitY();
    /// Another part of the room is in the way, as in a niche: the row stands at the wall itself.
    bool hemmed_in = false;
};
std::vector<WallRow> wall_rows(const plan::Room& room);

/// Whether an edge of a piece lies along a wall, as that of a radiator does.
struct WallPart {
    std::size_t wall = 0;
    /// Along the wall.
    double from_m = 0.0;
    double to_m = 0.0;
};
std::optional<WallPart> wall_part_of(const plan::Room& room, const plan::Scenery& piece);

/// Chains of walls with their openings and what is built along them, overalls beyond them.
void add_room_sizes(DimensionRows& rows, const plan::Plan& plan, const PlanFrame& frame);

/// A quartered circle on the datum's corner with the names of its two directions.
void draw_datum(Board& board, const RoomDatum& datum);

} // namespace throwline::sheet
