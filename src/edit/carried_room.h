#pragma once

#include "plan/plan.h"

#include <string>
#include <vector>

namespace throwline::edit {

/// Walls of an old room, with their openings, carried over to the plan's new one that has an
/// outline and walls already: those that are still there, both ends within 1 cm, also when they run
/// the other way. Openings keep their place on the floor, moved along by as little as lets them
/// fit. Walls that are still there stay locked, hidden and grouped as they were. Returns the names
/// of the openings that are left without a wall.
std::vector<std::string> carry_over(const plan::Room& old, plan::Plan& plan);

} // namespace throwline::edit
