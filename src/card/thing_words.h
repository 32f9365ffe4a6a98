#pragma once

#include "edit/thing.h"

#include <span>

namespace throwline::card {

/// What things of one kind are called together: "camera 2", "lamp 3" of a lamp that is called "3",
/// "3 set pieces", "2 people".
std::string what_of(std::span<const edit::Thing> things);

} // namespace throwline::card
