#pragma once

#include "command/json_value.h"
#include "plan/differences.h"

#include <span>
#include <string>

/// How differences between two plans are printed.
namespace throwline::command {

/// One sentence a line under what it is about, then how many there are, and the cautions that go
/// with them.
std::string differences_text(std::span<const plan::Difference> differences, bool with_working);

/// {"differences": [{"change", "about", "sentence", "things": [{"kind", "name", "before_m",
/// "now_m"}], "working"}], "count", "mind"}. `about` is "one", "together" or "slight"; places are
/// lists of [x, y]; `working` is null where no distance is told; `mind` holds the cautions.
JsonValue::Object differences_json(std::span<const plan::Difference> differences);

} // namespace throwline::command
