#pragma once

#include "sheet/marks.h"
#include "sheet/plan_frame.h"

#include <string>

namespace throwline::sheet {

/// One tile of a drawing, and what is lettered in its margins.
struct TilePlace {
    TileGrid grid;
    int row = 0;
    int column = 0;
    /// Title, scale and state of the file.
    std::string caption;

    /// The piece of the drawing on the paper of the tile.
    Box piece() const {
        return {grid.margin_mm, grid.margin_mm, grid.piece_width_mm(), grid.piece_height_mm()};
    }
    bool has_left() const { return column > 0; }
    bool has_above() const { return row > 0; }
    bool has_right() const { return column + 1 < grid.columns; }
    bool has_below() const { return row + 1 < grid.rows; }
};

/// Least margin that takes what stands in it, and stays off the edge that office printers leave
/// white (5 mm; common practice, no source).
inline constexpr double kLeastTileMargin_mm = 12.0;
/// Least piece beside which the check ruler with its words fits.
inline constexpr double kLeastTilePiece_mm = 118.0;

/// Covers what the marks of the piece paint outside of it.
void draw_margin_masks(Marks& marks, const TilePlace& tile);

/// Crop marks at the corners, the strip that the next tile is glued on, the tile's code and place
/// in the whole, which way is up, a check ruler along both axes, the caption.
void draw_tile_margins(Marks& marks, const TilePlace& tile, const TextMeasure& measure);

} // namespace throwline::sheet
