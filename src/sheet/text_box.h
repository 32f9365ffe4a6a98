#pragma once

#include "sheet/drawing.h"
#include "sheet/plan_frame.h"

#include <array>

namespace throwline::sheet {

/// Corners of what a text takes up on the sheet, turned with it: from the top of its capitals to
/// the foot of its descenders, as wide as its characters advance.
std::array<Vec2, 4> text_corners(const Text& text, const TextMeasure& measure);

/// The least upright box around it.
Box text_box(const Text& text, const TextMeasure& measure);

} // namespace throwline::sheet
