#pragma once

#include "edit/outlines.h"
#include "edit/snap.h"

#include <cstdint>
#include <map>
#include <utility>

/// Points and straight sides of everything on the floor, found by where they are.
namespace throwline::edit {

struct SnapPoint {
    Vec2 at = Vec2::Zero();
    /// end, middle or pipe_position.
    SnapKind kind = SnapKind::end;
    /// "end of wall 2"
    std::string words;
};

struct SnapSide {
    Vec2 from = Vec2::Zero();
    Vec2 to = Vec2::Zero();
    /// "wall 2"
    std::string words;

    Vec2 nearest(const Vec2& point) const;
};

class SnapIndex {
  public:
    SnapIndex(const Context& context, std::span<const Thing> left_out);

    std::vector<const SnapPoint*> points_near(const Vec2& at, double reach_m) const;
    std::vector<const SnapSide*> sides_near(const Vec2& at, double reach_m) const;
    /// The point that shares x (axis 0) or y (axis 1) with a place best, within reach; of several
    /// the one nearest to the place. Null when there is none.
    const SnapPoint* in_line(const Vec2& at, Eigen::Index axis, double reach_m) const;

  private:
    using Cell = std::pair<std::int64_t, std::int64_t>;

    static Cell cell_of(const Vec2& at);
    /// Indices in the cells that a square about a place touches, each once, in rising order.
    static std::vector<std::size_t> near(const std::map<Cell, std::vector<std::size_t>>& cells,
                                         const Vec2& at, double reach_m);

    void add_point(const Vec2& at, SnapKind kind, std::string words);
    void add_side(const Vec2& from, const Vec2& to, std::string words);
    void add_line(std::span<const Vec2> points, const std::string& name);
    void add_outline(std::span<const Vec2> outline, const std::string& name);
    void add_thing(const Context& context, const Thing& thing);
    void add_scenery(const Outlines& outlines, const plan::Scenery& piece);
    void add_grid(const plan::Grid& grid);
    void sort_by_axes();

    std::vector<SnapPoint> points_;
    std::vector<SnapSide> sides_;
    std::map<Cell, std::vector<std::size_t>> point_cells_;
    std::map<Cell, std::vector<std::size_t>> side_cells_;
    std::vector<std::size_t> long_sides_;
    /// Indices of points in the order of x, and of y.
    std::vector<std::size_t> by_axis_[2];
};

} // namespace throwline::edit
