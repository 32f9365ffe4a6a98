#pragma once

#include "plan/plan.h"

#include <map>
#include <string>
#include <vector>

/// What a plan takes from the store: for the check, and for the kit list that shows the same.
namespace throwline::checks {

/// Names of what uses a catalogue thing, by the name of that thing. Somebody who uses two of it is
/// there twice. Names that stand empty in the plan are the empty item.
using ThingsUsed = std::map<std::string, std::vector<std::string>>;
ThingsUsed things_used(const plan::Plan& plan);

} // namespace throwline::checks
