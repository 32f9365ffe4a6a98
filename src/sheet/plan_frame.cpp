#include "sheet/plan_frame.h"

namespace throwline::sheet {

void Extent::include(const Vec2& point) {
    low = empty ? point : Vec2{low.cwiseMin(point)};
    high = empty ? point : Vec2{high.cwiseMax(point)};
    empty = false;
}

Vec2 PlanFrame::at(const Vec2& plan_point) const {
    return {origin_mm.x() + plan_point.x() * mm_per_m, origin_mm.y() - plan_point.y() * mm_per_m};
}

std::vector<Vec2> PlanFrame::at(std::span<const Vec2> plan_points) const {
    std::vector<Vec2> points;
    points.reserve(plan_points.size());
    for (const Vec2& point : plan_points) {
        points.push_back(at(point));
    }
    return points;
}

Vec2 ThingFrame::at(double x_m, double y_m) const {
    return frame.at(place + rotated(Vec2{x_m, y_m}, turn_rad));
}

std::vector<Vec2> ThingFrame::box(double low_x_m, double low_y_m, double high_x_m,
                                  double high_y_m) const {
    return {at(low_x_m, low_y_m), at(high_x_m, low_y_m), at(high_x_m, high_y_m),
            at(low_x_m, high_y_m)};
}

} // namespace throwline::sheet
