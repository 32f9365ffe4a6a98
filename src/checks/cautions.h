#pragma once

#include "plan/plan.h"

#include <string>
#include <string_view>
#include <vector>

/// What has to be said beside everything that a crew works from, in one wording for sheets and
/// lists. General duty, common practice, no source; local rules and licensed people decide.
namespace throwline::checks {

/// What on a set can hurt people.
enum class Danger { any, overhead, hot_lamps, mains, ways_and_cables, sun };

/// One or two sentences: "Overhead: rated clamp and separate rated safety bond on ...".
std::string_view caution_about(Danger danger);

/// Those that a plan calls for, in the order of Danger.
std::vector<std::string> cautions_for(const plan::Plan& plan);

} // namespace throwline::checks
