#include "sheet/raster_outline.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace throwline::sheet {

namespace {

/// Cells of a raster over an area, one more on each side that always stay free.
class Raster {
  public:
    Raster(const Box& area, double cell_mm)
        : corner_{area.left, area.top}, cell_mm_{cell_mm},
          columns_{std::max(0, static_cast<int>(area.width / cell_mm)) + 2},
          rows_{std::max(0, static_cast<int>(area.height / cell_mm)) + 2},
          taken_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_), false) {}

    int columns() const { return columns_; }
    int rows() const { return rows_; }
    bool is_taken(int column, int row) const { return taken_[index(column, row)]; }
    void take(const Box& box);
    /// Takes a cell beside each two that only touch at a corner, so that every outline is simple.
    void join_corners();
    void fill_holes();
    Vec2 corner_at(int column, int row) const {
        return corner_ + cell_mm_ * Vec2{column - 1, row - 1};
    }

  private:
    std::size_t index(int column, int row) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_)
               + static_cast<std::size_t>(column);
    }
    int column_of(double x_mm) const {
        return static_cast<int>(std::floor((x_mm - corner_.x()) / cell_mm_)) + 1;
    }
    int row_of(double y_mm) const {
        return static_cast<int>(std::floor((y_mm - corner_.y()) / cell_mm_)) + 1;
    }
    bool join_corner(int column, int row);

    Vec2 corner_;
    double cell_mm_;
    int columns_;
    int rows_;
    std::vector<bool> taken_;
};

void Raster::take(const Box& box) {
    for (int row = std::max(1, row_of(box.top)); row <= std::min(rows_ - 2, row_of(box.bottom()));
         ++row) {
        for (int column = std::max(1, column_of(box.left));
             column <= std::min(columns_ - 2, column_of(box.right())); ++column) {
            taken_[index(column, row)] = true;
        }
    }
}

bool Raster::join_corner(int column, int row) {
    const bool here = is_taken(column, row);
    const bool right = is_taken(column + 1, row);
    const bool below = is_taken(column, row + 1);
    const bool across = is_taken(column + 1, row + 1);
    if (here != across || right != below || here == right) {
        return false;
    }
    // Either of the free two lies between two taken ones, so it is no edge cell.
    taken_[here ? index(column + 1, row) : index(column, row)] = true;
    return true;
}

void Raster::join_corners() {
    bool any = true;
    while (any) {
        any = false;
        for (int row = 0; row + 1 < rows_; ++row) {
            for (int column = 0; column + 1 < columns_; ++column) {
                any = join_corner(column, row) || any;
            }
        }
    }
}

void Raster::fill_holes() {
    std::vector<bool> outside(taken_.size(), false);
    std::vector<std::pair<int, int>> open{{0, 0}};
    outside[0] = true;
    while (!open.empty()) {
        const auto [column, row] = open.back();
        open.pop_back();
        for (const auto& [dx, dy] : {std::pair{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
            const int x = column + dx;
            const int y = row + dy;
            if (x < 0 || y < 0 || x >= columns_ || y >= rows_ || is_taken(x, y)
                || outside[index(x, y)]) {
                continue;
            }
            outside[index(x, y)] = true;
            open.emplace_back(x, y);
        }
    }
    for (std::size_t i = 0; i < taken_.size(); ++i) {
        taken_[i] = !outside[i];
    }
}

using Node = std::pair<int, int>;

/// From each corner of the raster that an outline passes to the next, taken cells to the left as
/// seen on paper.
std::map<Node, Node> sides_of(const Raster& raster) {
    std::map<Node, Node> next;
    for (int row = 1; row + 1 < raster.rows(); ++row) {
        for (int column = 1; column + 1 < raster.columns(); ++column) {
            if (!raster.is_taken(column, row)) {
                continue;
            }
            if (!raster.is_taken(column - 1, row)) {
                next[{column, row}] = {column, row + 1};
            }
            if (!raster.is_taken(column, row + 1)) {
                next[{column, row + 1}] = {column + 1, row + 1};
            }
            if (!raster.is_taken(column + 1, row)) {
                next[{column + 1, row + 1}] = {column + 1, row};
            }
            if (!raster.is_taken(column, row - 1)) {
                next[{column + 1, row}] = {column, row};
            }
        }
    }
    return next;
}

} // namespace

std::vector<Polygon> raster_outlines(std::span<const Box> boxes, const Box& area, double cell_mm) {
    Raster raster{area, cell_mm};
    for (const Box& box : boxes) {
        raster.take(box);
    }
    raster.join_corners();
    raster.fill_holes();
    std::map<Node, Node> next = sides_of(raster);
    std::vector<Polygon> outlines;
    while (!next.empty()) {
        Polygon outline;
        for (auto side = next.begin(); side != next.end();) {
            outline.push_back(raster.corner_at(side->first.first, side->first.second));
            const Node to = side->second;
            next.erase(side);
            side = next.find(to);
        }
        outlines.push_back(std::move(outline));
    }
    return outlines;
}

} // namespace throwline::sheet
