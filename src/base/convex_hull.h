#pragma once

#include "base/polygon.h"

namespace throwline {

/// The smallest convex polygon around points, anticlockwise, without corners on its edges. Fewer
/// than three corners come back when the points lie on a line. Andrew's monotone chain, 1979.
Polygon convex_hull(std::vector<Vec2> points);

} // namespace throwline
