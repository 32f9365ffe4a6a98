#pragma once

#include "sheet/drawing.h"

#include <span>
#include <utility>
#include <vector>

namespace throwline::sheet {

using LineSegment = std::pair<Vec2, Vec2>;

/// Parallel lines that fill an outline (even-odd), `spacing` apart, at an angle anticlockwise from
/// +x of the given axes. The lines lie on a raster through the origin, so that neighbouring
/// outlines hatch as one. Plain geometry instead of a painter's pattern, so that every output has
/// the same lines.
std::vector<LineSegment> hatch_lines(std::span<const Vec2> outline, double angle_rad,
                                     double spacing);

/// The middles of dots on a square raster through the origin, inside an outline.
std::vector<Vec2> hatch_dots(std::span<const Vec2> outline, double spacing);

} // namespace throwline::sheet
