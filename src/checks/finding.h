#pragma once

#include "base/vec.h"
#include "base/working.h"
#include "plan/plan.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace throwline::checks {

/// error: the shot cannot be taken or somebody may be hurt as planned; caution: it can, but look;
/// note: worth knowing.
enum class Severity { error, caution, note };
std::string_view name_of(Severity severity);

/// Something that is wrong or worth knowing about a plan.
struct Finding {
    /// Id of the check, kebab-case.
    std::string check;
    Severity severity = Severity::note;
    /// Empty when it is about no shot, no beat.
    plan::Id<plan::Shot> shot;
    plan::Id<plan::Beat> beat;
    /// Ids of the things involved, the one to move first.
    std::vector<std::string> things;
    /// Where to look on the plan.
    Vec2 at = Vec2::Zero();
    /// How bad it is within its severity, for sorting: 0 none .. 1 and more.
    double weight = 0.0;
    /// One plain sentence with names and figures in the plan's units.
    std::string message;
    Working working;
    /// The crew's reason for living with it, when the plan accepts it.
    std::optional<std::string> accepted;
};

/// Whether what a crew accepted is this finding.
bool covers(const plan::Acceptance& acceptance, const Finding& finding);

/// Worst first: severity, then weight, then check, shot, beat, things, so that the order is total.
/// Accepted findings come last.
void sort_worst_first(std::vector<Finding>& findings);

} // namespace throwline::checks
