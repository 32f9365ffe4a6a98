#pragma once

#include "base/result.h"
#include "plan/plan.h"

#include <set>
#include <string>

namespace throwline::edit {

/// Every name that something on the floor, a circuit, a beat or a shot has; "wall 1" too.
std::set<std::string> taken_names(const plan::Plan& plan);

/// A name like the wanted one that is not among the taken: "chair", else "chair 2", "chair 3";
/// "chair 3" is like "chair 2", and 18 like 17. It is then among them. The end of a name that would
/// become too long is cut off.
std::string new_name(std::set<std::string>& taken, const std::string& wanted);
std::string new_name(const plan::Plan& plan, const std::string& wanted);

/// Whether what is called `old` may be called `now`. Errors: no name that a plan can have, or
/// something else has it.
Result<void> check_new_name(const plan::Plan& plan, const std::string& old, const std::string& now);

} // namespace throwline::edit
