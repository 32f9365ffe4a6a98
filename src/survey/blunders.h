#pragma once

#include "survey/adjust.h"

namespace throwline::survey {

/// Sets aside the readings that are wrong (data snooping after Baarda, and all pairs where one
/// after the other would not do), from a shape that wrong readings have hardly pulled. Nothing when
/// the network cannot be adjusted there.
std::optional<Solution> without_wrong_readings(const Network& network, std::span<const Vec2> shape);

} // namespace throwline::survey
