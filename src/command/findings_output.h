#pragma once

#include "checks/finding.h"
#include "command/json_value.h"

#include <span>
#include <string>

/// How findings are printed. They are numbered from 1 in the order given, as on the sheet.
namespace throwline::command {

/// Grouped by severity, accepted ones last, then a line that counts them and the cautions that go
/// with them.
std::string findings_text(std::span<const checks::Finding> findings, bool with_working);

/// {"findings": [{"number", "check", "severity", "shot", "beat", "things", "x_m", "y_m", "message",
/// "accepted", "working"}], "errors", "cautions", "notes", "accepted", "mind"}. Shot and beat are
/// null when a finding is about none; counts leave accepted findings out; `mind` holds the
/// cautions.
JsonValue::Object findings_json(std::span<const checks::Finding> findings);

} // namespace throwline::command
