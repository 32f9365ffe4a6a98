#pragma once

#include "checks/check.h"

namespace throwline::checks {

/// What the lamps do at each mark, and what they do to what stands near them.
std::span<const Check> light_checks();

std::vector<Finding> level_at_marks(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> uneven_light(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> lamp_blocked(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> lamp_misses(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> lamp_angle(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> lighting_ratio(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> lamp_clearance(const CheckInput& input, const std::stop_token& stop);

} // namespace throwline::checks
