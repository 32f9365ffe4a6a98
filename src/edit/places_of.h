#pragma once

#include "edit/thing.h"

#include <vector>

namespace throwline::edit {

/// Every place that the plan's file has of a thing where it is now, with what it looks at when that
/// is a place: what a move must keep on the paper. None of walls and openings, which the room has,
/// and of lamps along what holds them.
std::vector<Vec2> places_of(const plan::Plan& plan, const Now& now, const Thing& thing);

} // namespace throwline::edit
