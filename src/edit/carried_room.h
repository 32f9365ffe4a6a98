#pragma once

#include "plan/plan.h"

#include <string>
#include <vector>

namespace throwline::edit {

/// Walls of an old room, with their openings, carried over to a new one that has an outline and
/// walls already: those that are still there, both ends within 1 cm, also when they run the other
/// way. Openings keep their place on the floor, moved along by as little as lets them fit. Returns
/// the names of those that are left without a wall.
std::vector<std::string> carry_over(const plan::Room& old, plan::Room& room);

} // namespace throwline::edit
