#pragma once

#include "sheet/marks.h"
#include "sheet/plan_frame.h"

namespace throwline::sheet {

/// The outline of a rectangle.
Path box_outline(const Box& box, const Pen& pen, const Fill& fill = {});

/// Bare paper over what has been laid down outside of a box of the sheet.
void draw_mask_around(Marks& marks, const Box& box, double sheet_width_mm, double sheet_height_mm);

} // namespace throwline::sheet
