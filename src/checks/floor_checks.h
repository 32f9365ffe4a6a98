#pragma once

#include "checks/check.h"

namespace throwline::checks {

/// What stands on the floor, and the ways across it.
std::span<const Check> floor_checks();

std::vector<Finding> floor_overlap(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> walk(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> door_swing(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> way_out(const CheckInput& input, const std::stop_token& stop);

} // namespace throwline::checks
