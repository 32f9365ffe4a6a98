#pragma once

#include "sheet/marks.h"
#include "sheet/plan_frame.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace throwline::sheet {

/// How much a mark minds being lettered over.
enum class Crowd { none, light, firm, never };

/// Knows what is drawn where, to half a millimetre, and sums it over boxes at the price of one cell
/// (summed-area tables: F. C. Crow, SIGGRAPH 1984).
class CrowdMap {
  public:
    explicit CrowdMap(const Box& area);

    /// A line covers its way; what must never be lettered over covers its inside as well.
    void cover(const Path& path, Crowd crowd);
    void cover(const Circle& circle, Crowd crowd);

    /// How much is drawn under a box. Nothing when it reaches over the edge of the area or over
    /// what must never be hidden.
    std::optional<double> under(const Box& box);
    /// How much a line from one point to another crosses; infinite outside the area.
    double across(const Vec2& from, const Vec2& to) const;

    const Box& area() const { return area_; }

  private:
    struct Cell {
        std::uint16_t crowd = 0;
        bool forbidden = false;
    };
    const Cell* cell_at(const Vec2& point) const;
    void cover_point(const Vec2& point, Crowd crowd);
    void cover_line(std::span<const Vec2> points, bool closed, Crowd crowd);
    void cover_inside(std::span<const Vec2> points);
    void sum_up();

    Box area_;
    double cell_mm_;
    int columns_;
    int rows_;
    std::vector<Cell> cells_;
    /// Sums over all cells left of and above a corner, a column and a row more than there are
    /// cells; made when they are asked for.
    struct Sum {
        std::uint32_t crowd = 0;
        std::uint32_t forbidden = 0;
    };
    std::vector<Sum> sums_;
    bool is_summed_ = false;
};

} // namespace throwline::sheet
