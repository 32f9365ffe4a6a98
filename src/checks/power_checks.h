#pragma once

#include "checks/check.h"

namespace throwline::checks {

/// Circuits against their breakers, loads on pipes, and what the plan uses against what there is.
std::span<const Check> power_checks();

std::vector<Finding> circuit_load(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> pipe_load(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> kit_count(const CheckInput& input, const std::stop_token& stop);

} // namespace throwline::checks
