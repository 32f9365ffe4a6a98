#pragma once

#include "base/polygon.h"
#include "plan/reading.h"

namespace throwline::plan {

/// Reports an outline with fewer than three or too many corners, two corners in one place, edges
/// that cross, or no area.
void check_outline(Reading& reading, const Value& value, const Polygon& outline,
                   std::size_t most_corners);

} // namespace throwline::plan
