#pragma once

#include "sheet/set_pieces.h"

/// The sizes of what is built in a room, and where it stands, drawn where they cross least.
namespace throwline::sheet {

/// With more built pieces than this their places are in the table alone.
inline constexpr std::size_t kMostPlacedPieces = 16;

/// For each built piece: its widths with their overall beside it, and two distances from the walls
/// that it stands nearest to, square to them. A distance that another piece in the same line has
/// already told is not told again. Lays everything down, the walls' own sizes before.
void draw_set_sizes(Board& board, const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                    const RoomDatum& datum);

} // namespace throwline::sheet
