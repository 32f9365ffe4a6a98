#pragma once

#include "sheet/drawing.h"

#include <string>

namespace throwline::test {

/// Compares a sheet with tests/golden/`name`.txt; where it must not change unseen. Set
/// THROWLINE_UPDATE_GOLDEN to write it anew.
void expect_golden(const sheet::Drawing& drawing, const std::string& name);

} // namespace throwline::test
