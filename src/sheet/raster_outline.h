#pragma once

#include "base/polygon.h"
#include "sheet/plan_frame.h"

#include <span>
#include <vector>

namespace throwline::sheet {

/// Outlines, on a square raster of paper, around all cells that any of the boxes touches; boxes
/// that touch common or neighbouring cells share one. Corners that follow each other are one cell
/// apart. Holes are filled. Cells that do not lie wholly within `area` are left out. Anticlockwise
/// as seen on paper, first the one that begins leftmost, of those the topmost.
std::vector<Polygon> raster_outlines(std::span<const Box> boxes, const Box& area, double cell_mm);

} // namespace throwline::sheet
