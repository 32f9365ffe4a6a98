#pragma once

#include "plan/plan.h"

#include <map>
#include <string>
#include <vector>

/// What the plan's arrangement calls the things on the floor, and how it keeps up with them.
namespace throwline::plan {

/// "wall 3" for index 2.
std::string name_on_floor(int wall);
/// "outlet 1 of C1" for index 0.
std::string name_on_floor(const Id<Circuit>& circuit, int outlet);
/// Everything that can be locked, hidden or grouped, in the order of the plan. Things of different
/// kinds that share a name are held together.
std::vector<std::string> names_on_floor(const Plan& plan);

/// Gives what is held newer names by older ones, all at once; a name without a newer one stays.
void rename_held(Arrangement& arrangement, const std::map<std::string, std::string>& names);
/// Drops the names of what is not there any more, and groups that this leaves with fewer than two.
void forget_gone(Plan& plan);

} // namespace throwline::plan
