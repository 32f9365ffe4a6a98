#pragma once

#include "base/quantity.h"
#include "sheet/drawing.h"

#include <span>
#include <string>
#include <vector>

namespace throwline::sheet {

/// How far tiles overlap unless somebody says otherwise: enough to glue on (common practice, no
/// source).
inline constexpr Length kUsualOverlap = Length::millimetres(10);

/// "B2": the second tile of the second row; both from 0.
std::string tile_code(int row, int column);

/// A drawing that is larger than the paper as sheets of that paper, row by row; the drawing itself
/// when it is not. Each tile shows its piece of the drawing, moved but otherwise the same, and in
/// the margins around it what is needed to trim it, to put it in its place and to see whether the
/// print is true. Nothing of that lies over the piece.
std::vector<Drawing> tiles_of(const Drawing& drawing, const TextMeasure& measure);
/// Larger drawings cut into tiles, the others as they are: what is printed, page by page.
std::vector<Drawing> pages_of(std::span<const Drawing> drawings, const TextMeasure& measure);

} // namespace throwline::sheet
