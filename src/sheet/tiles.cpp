#include "sheet/tiles.h"

#include "sheet/mark_bounds.h"
#include "sheet/tile_margins.h"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>

namespace throwline::sheet {

namespace {

/// Where a tile's piece lies on the whole drawing.
Box piece_of(const TilePlace& tile) {
    const TileGrid& grid = tile.grid;
    return {tile.column * (grid.piece_width_mm() - grid.overlap_mm),
            tile.row * (grid.piece_height_mm() - grid.overlap_mm), grid.piece_width_mm(),
            grid.piece_height_mm()};
}

/// The marks of a layer that touch the piece.
Layer touched(const Layer& layer, const Box& piece, const Vec2& shift_mm,
              const TextMeasure& measure) {
    Layer cut{layer.name, {}, layer.shift_mm + shift_mm};
    for (const Mark& mark : layer.marks) {
        Box bounds = bounds_of(mark, measure);
        bounds.left += layer.shift_mm.x();
        bounds.top += layer.shift_mm.y();
        if (bounds.overlaps(piece)) {
            cut.marks.push_back(mark);
        }
    }
    return cut;
}

Drawing tile_of(const Drawing& drawing, const TilePlace& tile, const TextMeasure& measure) {
    const std::string code = tile_code(tile.row, tile.column);
    Drawing sheet;
    sheet.title = fmt::format("{}, tile {}", drawing.title, code);
    sheet.subject =
        fmt::format("{}, tile {} of {}", drawing.subject, code, tile.grid.columns * tile.grid.rows);
    sheet.scale = drawing.scale;
    sheet.paper = drawing.paper;
    sheet.width_mm = tile.grid.paper_width_mm;
    sheet.height_mm = tile.grid.paper_height_mm;
    const Box piece = piece_of(tile);
    const Vec2 shift_mm{tile.grid.margin_mm - piece.left, tile.grid.margin_mm - piece.top};
    for (const Layer& layer : drawing.layers) {
        Layer cut = touched(layer, piece, shift_mm, measure);
        if (!cut.marks.empty()) {
            sheet.layers.push_back(std::move(cut));
        }
    }
    Layer margins{"tile", {}, Vec2::Zero()};
    draw_margin_masks(margins.marks, tile);
    draw_tile_margins(margins.marks, tile, measure);
    sheet.layers.push_back(std::move(margins));
    return sheet;
}

} // namespace

std::string tile_code(int row, int column) {
    // Never more than a dozen rows; see composed().
    return fmt::format("{}{}", static_cast<char>('A' + row), column + 1);
}

std::vector<Drawing> tiles_of(const Drawing& drawing, const TextMeasure& measure) {
    if (!drawing.tiles) {
        return {drawing};
    }
    std::vector<Drawing> sheets;
    TilePlace tile{*drawing.tiles, 0, 0, drawing.caption};
    for (tile.row = 0; tile.row < tile.grid.rows; ++tile.row) {
        for (tile.column = 0; tile.column < tile.grid.columns; ++tile.column) {
            sheets.push_back(tile_of(drawing, tile, measure));
        }
    }
    return sheets;
}

std::vector<Drawing> pages_of(std::span<const Drawing> drawings, const TextMeasure& measure) {
    std::vector<Drawing> pages;
    for (const Drawing& drawing : drawings) {
        std::vector<Drawing> tiles = tiles_of(drawing, measure);
        std::move(tiles.begin(), tiles.end(), std::back_inserter(pages));
    }
    return pages;
}

} // namespace throwline::sheet
