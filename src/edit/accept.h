#pragma once

#include "base/result.h"
#include "checks/finding.h"
#include "edit/thing.h"

#include <span>
#include <string>
#include <vector>

/// Findings that a crew lives with.
namespace throwline::edit {

/// Accepts findings with one reason, each for its own shot and things. Errors: no reason.
Result<Step> accepted(const Context& context, std::span<const checks::Finding> findings,
                      const std::string& reason);
/// Takes back whatever accepts any of the findings. Errors: nothing does.
Result<Step> acceptance_taken_back(const Context& context,
                                   std::span<const checks::Finding> findings);

/// What of the names in a finding can be taken hold of on the floor, in their order.
std::vector<Thing> things_named(const plan::Plan& plan, std::span<const std::string> names);

} // namespace throwline::edit
