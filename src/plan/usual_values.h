#pragma once

#include "base/quantity.h"

/// What a plan file means where it leaves something out and the Plan itself has no default.
namespace throwline::plan {

/// Thickness of a room's walls (common practice, no source).
inline constexpr Length kUsualWallThickness = Length::millimetres(100);

} // namespace throwline::plan
