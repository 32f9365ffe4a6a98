#pragma once

#include "base/polygon.h"

#include <optional>

namespace throwline::sheet {

/// What is seen of a room from a point between two directions, as an outline that starts at the
/// point: the near walls cut it off (plain geometry). `to_rad` >= `from_rad`, at most a full turn.
/// From outside the room the first wall met is looked through, as through a window.
/// Empty when no wall is met.
Polygon coverage_fan(std::span<const Vec2> room, const Vec2& eye, double from_rad, double to_rad);

/// The same with things standing in the room that are higher than the point: each is seen up to its
/// near side. One that the point stands in hides nothing.
Polygon coverage_fan_among(std::span<const Vec2> room, std::span<const Polygon> things,
                           const Vec2& eye, double from_rad, double to_rad);

/// Where a ray from a point first meets an outline (the second time when the point is outside).
std::optional<Vec2> first_wall(std::span<const Vec2> room, const Vec2& eye, double angle_rad);

} // namespace throwline::sheet
