#pragma once

#include "base/quantity.h"
#include "base/result.h"
#include "base/vec.h"

#include <string_view>

namespace throwline::ui {

/// Where a typed text leads from a place, heading towards another: "2.4 m" that far in this
/// direction; "2.4 m 30°" in a direction anticlockwise from the right of the page; "2 m, -1 m"
/// across and up. `units`: what bare numbers mean. Errors: a text that is none of these.
Result<Vec2> typed_point(std::string_view text, const Vec2& from, const Vec2& towards,
                         UnitSystem units);

} // namespace throwline::ui
