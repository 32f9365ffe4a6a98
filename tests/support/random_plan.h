#pragma once

#include "plan/plan.h"

#include <cstdint>

namespace throwline::support {

/// An invented production: a room of random shape, 5 to 60 things of which many crowd into one
/// corner, 1 to 6 people over up to three beats, 1 to 4 cameras with up to eight shots, 0 to 40
/// lamps on a grid and on stands. Every name is known to the shipped tables. Same seed, same plan,
/// on every machine.
plan::Plan random_plan(std::uint32_t seed);

} // namespace throwline::support
