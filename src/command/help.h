#pragma once

#include "command/command.h"

namespace throwline::command {

/// What `throwline --help` prints: every command with its summary.
std::string help_text(std::span<const Command> commands);

/// What `throwline lens --help` prints.
std::string help_text(const Command& command);

} // namespace throwline::command
