#pragma once

#include "command/arguments.h"
#include "command/command.h"

namespace throwline::command {

/// Splits what was typed behind a command's name. `--` ends the options; `-3` and the like are
/// operands, so that negative lengths can be typed. Errors name the option, and the nearest one for
/// an option that does not exist. -h and --help are always accepted.
Checked<Arguments> parse_arguments(const Command& command, std::span<const std::string> typed);

/// "; did you mean --focal?", or nothing when no candidate is near.
std::string suggestion(std::string_view typed, std::span<const std::string> candidates);

} // namespace throwline::command
