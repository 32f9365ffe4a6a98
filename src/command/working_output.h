#pragma once

#include "base/working.h"
#include "command/json_value.h"

#include <span>
#include <string>

/// How workings are printed by every command.
namespace throwline::command {

/// A paragraph a working: formula, inputs one a line, result, source. `indent` stands before each
/// line.
std::string working_text(std::span<const Working> workings, const std::string& indent = "");

/// {"formula", "inputs": [{"symbol", "name", "value"}], "result", "source"}
JsonValue working_json(const Working& working);
JsonValue working_json(std::span<const Working> workings);

} // namespace throwline::command
