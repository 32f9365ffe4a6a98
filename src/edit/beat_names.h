#pragma once

#include "plan/plan.h"

#include <string>

namespace throwline::edit {

/// Names of beats are mostly numbers, and crews number lamps and the like on their own: "3" when
/// there are two, or the next number that no beat has.
std::string next_beat_name(const plan::Plan& plan);

} // namespace throwline::edit
