#pragma once

#include "survey/adjust.h"
#include "survey/first_shape.h"

namespace throwline::survey {

/// Sets aside the readings that are wrong (data snooping after Baarda, and all pairs where one
/// after the other would not do), from a shape that wrong readings have hardly pulled.
/// Undetermined, with all points loose and nothing needed, when the readings contradict each other
/// so much that no adjustment settles.
tl::expected<Solution, Undetermined> without_wrong_readings(const Network& network,
                                                            std::span<const Shape> shapes);

} // namespace throwline::survey
