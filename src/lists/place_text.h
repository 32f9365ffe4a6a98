#pragma once

#include "plan/plan.h"

#include <optional>
#include <string>

/// Where something stands, as a crew measures it with a tape.
namespace throwline::lists {

/// "wall 4 (left)": number as in the plan file; the side of the page that it stands at is left out
/// where it runs askew.
std::string wall_text(const plan::Room& room, int wall);

/// A distance square off a wall.
struct FromWall {
    int wall = 0;
    double distance_m = 0.0;
};

/// The nearest wall and the nearest one that runs across it, both seen from there along the tape;
/// or, where there is no second, how far along the first from its start corner.
struct FromWalls {
    FromWall first;
    std::optional<FromWall> second;
    double along_first_m = 0.0;
};

/// Nothing for a point that is square off no wall, which lies outside the room.
std::optional<FromWalls> from_walls(const plan::Room& room, const Vec2& point);

/// "7'-0\" from wall 1 (bottom), 10'-0\" from wall 4 (left)"; outside the room, how far right and
/// up the page from the plan's origin.
std::string place_text(const plan::Plan& plan, const Vec2& point);

/// "C2", "C2 and 0'-6\" towards D, 1'-0\" towards 3"; empty without a grid over the point.
std::string grid_place_text(const plan::Plan& plan, const Vec2& point);

} // namespace throwline::lists
