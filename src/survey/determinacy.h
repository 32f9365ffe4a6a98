#pragma once

#include "survey/adjust.h"

namespace throwline::survey {

/// What can still move at a shape: nothing when every point is held.
std::optional<Undetermined> looseness(const Network& network, std::span<const Vec2> points);

/// The readings fit two shapes; which points differ, and what would tell one from the other.
Undetermined two_shapes(const Network& network, std::span<const Vec2> a, std::span<const Vec2> b);

} // namespace throwline::survey
