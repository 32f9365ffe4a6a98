#pragma once

#include "base/polygon.h"

#include <span>
#include <vector>

namespace throwline::sheet {

/// A rectangle of paper, millimetres, y down.
struct Box {
    double left = 0.0;
    double top = 0.0;
    double width = 0.0;
    double height = 0.0;

    double right() const { return left + width; }
    double bottom() const { return top + height; }
    Vec2 centre() const { return {left + width / 2.0, top + height / 2.0}; }
    /// Smaller by `by_mm` on each side; a negative one is larger.
    Box inset(double by_mm) const {
        return {left + by_mm, top + by_mm, width - 2.0 * by_mm, height - 2.0 * by_mm};
    }
    bool operator==(const Box&) const = default;
    bool contains(const Vec2& point) const {
        return point.x() >= left && point.x() <= right() && point.y() >= top
               && point.y() <= bottom();
    }
    bool overlaps(const Box& other) const {
        return left < other.right() && other.left < right() && top < other.bottom()
               && other.top < bottom();
    }
    bool holds(const Box& other) const {
        return other.left >= left && other.right() <= right() && other.top >= top
               && other.bottom() <= bottom();
    }
};

/// Least rectangle of the plan around points, metres.
struct Extent {
    Vec2 low = Vec2::Zero();
    Vec2 high = Vec2::Zero();
    bool empty = true;

    void include(const Vec2& point);
    Vec2 size() const { return high - low; }
};

/// Where the plan lies on the paper.
struct PlanFrame {
    /// Paper place of the plan's origin, and how long a metre is drawn.
    Vec2 origin_mm = Vec2::Zero();
    double mm_per_m = 20.0;

    Vec2 at(const Vec2& plan_point) const;
    std::vector<Vec2> at(std::span<const Vec2> plan_points) const;
    double mm(double length_m) const { return length_m * mm_per_m; }
};

/// A place and a turn on the plan, to draw a thing in its own axes: x across, y ahead.
struct ThingFrame {
    const PlanFrame& frame;
    Vec2 place = Vec2::Zero();
    double turn_rad = 0.0;

    /// Paper place of a point in the thing's own axes, metres.
    Vec2 at(double x_m, double y_m) const;
    /// Paper outline of a rectangle in the thing's own axes.
    std::vector<Vec2> box(double low_x_m, double low_y_m, double high_x_m, double high_y_m) const;
};

} // namespace throwline::sheet
