#pragma once

#include "sheet/marks.h"
#include "sheet/plan_frame.h"

namespace throwline::sheet {

/// What of a mark lies within a rectangle of paper: none, one, or a fill and pieces of its outline.
/// Lines are cut by parameter (Liang and Barsky, 1984), fills edge by edge (Sutherland and Hodgman,
/// 1974); both from memory. A circle that crosses the edge becomes a many-sided outline. Words are
/// kept or left out whole, by the place of their anchor; pictures are kept.
Marks clipped(const Mark& mark, const Box& window);

} // namespace throwline::sheet
