#pragma once

#include "checks/finding.h"
#include "command/json_value.h"

#include <span>
#include <string>

/// How findings are printed. What is the same matter in several shots or beats has one number,
/// counted from 1, as on the sheet of the whole production.
namespace throwline::command {

/// One entry a number under its severity, accepted ones last, then a line that counts the entries,
/// and the cautions that go with them.
std::string findings_text(std::span<const checks::Finding> findings, bool with_working);

/// {"findings": [{"number", "check", "severity", "shot", "beat", "things", "x_m", "y_m", "message",
/// "accepted", "working"}], "errors", "cautions", "notes", "accepted", "mind"}. Every finding by
/// itself; shot and beat are null when it is about none; the counts leave accepted ones out of
/// their severity; `mind` holds the cautions.
JsonValue::Object findings_json(std::span<const checks::Finding> findings);

} // namespace throwline::command
