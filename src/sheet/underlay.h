#pragma once

#include "plan/site.h"
#include "sheet/board.h"
#include "sheet/page.h"
#include "sheet/reduced_pictures.h"

namespace throwline::sheet {

/// Lays the picture beneath everything in the field of a page, true to scale, as large as it is at
/// its own size. Only what shows there is kept of it.
void draw_underlay(Board& board, const plan::Underlay& underlay, const ReducedPicture& picture,
                   const Page& page);

} // namespace throwline::sheet
