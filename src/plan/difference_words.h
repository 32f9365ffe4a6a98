#pragma once

#include "base/quantity.h"
#include "base/vec.h"
#include "base/working.h"

#include <string>

/// How differences tell distances and directions.
namespace throwline::plan {

/// As much as a tape is moved by: "25 mm", "40 cm", "1.40 m"; or feet and inches, to 1/16 in below
/// an inch and to 1/4 in from there on. Without sign.
std::string distance_text(Length distance, UnitSystem units);

/// "40 cm to the left", "2'-0\" to the right and 0'-6\" up the sheet". A part that is too small to
/// matter beside the other is left out.
std::string shift_text(const Vec2& shift, UnitSystem units);
Working shift_working(const Vec2& shift, UnitSystem units);

/// "raised by 30 cm", "lowered by 1'-2\""
std::string rise_text(Length rise, UnitSystem units);
Working rise_working(Length before, Length now, UnitSystem units);

/// "15° clockwise", seen from above; the shorter way round.
std::string turn_text(Angle turn);

/// A text that stands in a sentence: on one line, cut where it is long.
std::string short_text(const std::string& text);

} // namespace throwline::plan
