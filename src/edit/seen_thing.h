#pragma once

#include "edit/thing.h"
#include "stage/stage.h"

#include <optional>

namespace throwline::edit {

/// What can be taken hold of on the floor when this was met in a picture; nothing for the floor and
/// the ceiling.
std::optional<Thing> seen_thing(const plan::Plan& plan, const stage::Owner& owner);

} // namespace throwline::edit
