#pragma once

#include "sheet/marks.h"

namespace throwline::sheet {

/// Length of paper that shows with a ruler whether a print is true.
inline constexpr double kCheckLength_mm = 100.0;
/// What stands beside it.
inline constexpr auto kCheckWords = "must measure 100 mm, else print at 100 %";

/// How a paper ruler is divided: `step_mm` ticks, each `major`-th longer.
struct RulerTicks {
    double length_mm = kCheckLength_mm;
    double step_mm = 1.0;
    int major = 10;
};

/// A paper ruler from a point along x or y, its ticks to the side `ticks_towards`; both are unit
/// directions.
void draw_check_ruler(Marks& marks, const Vec2& from, const Vec2& along, const Vec2& ticks_towards,
                      const RulerTicks& ticks = {});

} // namespace throwline::sheet
