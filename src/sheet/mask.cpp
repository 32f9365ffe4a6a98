#include "sheet/mask.h"

namespace throwline::sheet {

namespace {

/// Past the edge of the sheet, so that nothing shows in the last, partly covered row of pixels.
constexpr double kPast_mm = 2.0;

} // namespace

Path box_outline(const Box& box, const Pen& pen, const Fill& fill) {
    return outline({{box.left, box.top},
                    {box.right(), box.top},
                    {box.right(), box.bottom()},
                    {box.left, box.bottom()}},
                   pen, fill);
}

void draw_mask_around(Marks& marks, const Box& box, double sheet_width_mm, double sheet_height_mm) {
    const Box sheet = Box{0.0, 0.0, sheet_width_mm, sheet_height_mm}.inset(-kPast_mm);
    for (const Box& side :
         {Box{sheet.left, sheet.top, sheet.width, box.top - sheet.top},
          Box{sheet.left, box.bottom(), sheet.width, sheet.bottom() - box.bottom()},
          Box{sheet.left, box.top, box.left - sheet.left, box.height},
          Box{box.right(), box.top, sheet.right() - box.right(), box.height}}) {
        marks.emplace_back(box_outline(side, no_pen(), solid(Ink::paper)));
    }
}

} // namespace throwline::sheet
