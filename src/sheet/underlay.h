#pragma once

#include "plan/site.h"
#include "sheet/board.h"
#include "sheet/page.h"
#include "sheet/reduced_pictures.h"

namespace throwline::sheet {

/// Lays the picture beneath everything, true to scale, as large as it is at its own size. Only what
/// shows within `shown`, paper millimetres, is kept of it; it may reach beyond that by a part of a
/// pixel.
void draw_underlay(Board& board, const plan::Underlay& underlay, const ReducedPicture& picture,
                   const Box& shown);
/// The same in the field of a page, and nothing of it beyond that.
void draw_underlay_on(Board& board, const plan::Underlay& underlay, const ReducedPicture& picture,
                      const Page& page);

} // namespace throwline::sheet
