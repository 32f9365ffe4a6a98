#pragma once

#include "sheet/drawing.h"
#include "sheet/plan_frame.h"

namespace throwline::sheet {

/// A rectangle of paper that holds all that a mark paints, a little larger than need be.
Box bounds_of(const Mark& mark, const TextMeasure& measure);

} // namespace throwline::sheet
