#pragma once

#include "checks/check.h"

namespace throwline::checks {

/// What each shot takes in, what it should and should not see, and how shots cut together.
std::span<const Check> camera_checks();

std::vector<Finding> coverage(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> shot_size(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> focus(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> sight_lines(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> off_the_set(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> in_the_frame(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> into_the_lens(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> line_of_action(const CheckInput& input, const std::stop_token& stop);
std::vector<Finding> cut_angle(const CheckInput& input, const std::stop_token& stop);

} // namespace throwline::checks
