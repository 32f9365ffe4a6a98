#pragma once

#include "checks/finding.h"
#include "plan/differences.h"

#include <span>
#include <string>
#include <vector>

namespace throwline::command {

/// What has to be said beside findings about things that can hurt somebody, each once, in a fixed
/// order; empty when there are no such findings. General duty, common practice, no source.
std::vector<std::string> cautions_for(std::span<const checks::Finding> findings);

/// The same for what a crew is told to change: what hangs, mains power, hot lamps, ways out.
std::vector<std::string> cautions_for(std::span<const plan::Difference> differences);

/// Ids of the checks whose findings bring a caution.
std::vector<std::string> checks_with_caution();

} // namespace throwline::command
