#pragma once

#include "base/quantity.h"
#include "base/result.h"
#include "base/vec.h"

#include <string_view>

namespace throwline::edit {

/// Where a line that was begun at `from` goes when a text is typed while the pointer is at
/// `pointer`. What can be typed, with `units` for bare numbers:
/// - "3.2 m", "10'6": that far towards the pointer. A pointer within 3 degrees of a whole multiple
///   of 15 degrees means that multiple. A length of 0 or less is an error.
/// - "3.2 m 45°", "3.2 m 45deg", "3.2 at 45": that far in a direction, anticlockwise from the right
///   of the page. After "at" a bare number is degrees; without it the angle has its unit.
/// - "2 m, 1.5 m" or "2; 1.5": across to the right and up the page; negative is left and down. A
///   comma parts two lengths when a space follows it, else it is a decimal comma.
/// Errors, each one sentence: a text that is none of these, no direction to go in, a place that is
/// the one where the line began, or one farther than a plan reaches.
Result<Vec2> typed_place(std::string_view text, const Vec2& from, const Vec2& pointer,
                         UnitSystem units);

} // namespace throwline::edit
