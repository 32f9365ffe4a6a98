#pragma once

#include "plan/plan.h"
#include "survey/recce.h"

#include <string>
#include <vector>

namespace throwline::survey {

struct RecceInPlan {
    plan::Plan plan;
    /// What was left out or taken as usual, a sentence each.
    std::vector<std::string> remarks;
};

/// A plan of nothing but the room as read: outline as walked from the origin, its first wall along
/// +x; openings (no way out among them), things along walls and on the floor as scenery, circuits
/// with their outlets, site notes, north, and the survey itself. What is not known yet, such as a
/// ceiling that nobody read, is an error, a sentence each.
Checked<RecceInPlan> plan_of(const RecceResult& result, const std::string& title, UnitSystem units);

/// The same into a plan that is there: the first corner and the direction of the first wall stay.
/// What an earlier survey of the plan gave is replaced by name, keeping what the tape does not tell
/// (finish, swing, way out); what it no longer gives goes; all else stays. A height that was not
/// read stays as it was.
Checked<RecceInPlan> put_into(plan::Plan plan, const RecceResult& result);

} // namespace throwline::survey
