#pragma once

#include "plan/site.h"

#include <cstddef>

namespace throwline::sheet {

/// Walls without a thickness are drawn this thick, so that they can be seen.
inline constexpr double kLeastWall_m = 0.02;

/// One side of the room with its own axes: along the wall, and outward.
struct WallSide {
    Vec2 from = Vec2::Zero();
    Vec2 to = Vec2::Zero();
    Vec2 along = Vec2::UnitX();
    Vec2 outward = Vec2::UnitY();
    double length_m = 0.0;
    double thickness_m = 0.0;

    Vec2 inner(double s_m) const { return from + along * s_m; }
    Vec2 outer(double s_m) const { return inner(s_m) + outward * thickness_m; }
};

/// The wall from corner `index` (from 0) of a room with an outline.
WallSide side_of(const plan::Room& room, std::size_t index);

} // namespace throwline::sheet
