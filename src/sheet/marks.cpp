#include "sheet/marks.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::sheet {

Pen pen(Ink ink, double width_mm, LinePattern pattern, double strength) {
    return {ink, width_mm, pattern, strength};
}

Pen no_pen() {
    return {Ink::paper, 0.0, LinePattern::solid, 1.0};
}

Fill solid(Ink ink, double strength) {
    return {ink, Hatch::solid, strength};
}

Fill hatched(Ink ink, Hatch hatch, double strength) {
    return {ink, hatch, strength};
}

Path line(const Vec2& from, const Vec2& to, const Pen& pen) {
    return {{from, to}, false, pen, {}};
}

Path open_path(std::vector<Vec2> points, const Pen& pen) {
    return {std::move(points), false, pen, {}};
}

Path outline(std::vector<Vec2> points, const Pen& pen, const Fill& fill) {
    return {std::move(points), true, pen, fill};
}

std::vector<Vec2> arc_points(const Vec2& centre, double radius_mm, double from_rad, double to_rad) {
    constexpr double kStep_rad = std::numbers::pi / 36.0;
    const int steps =
        std::max(2, static_cast<int>(std::ceil(std::abs(to_rad - from_rad) / kStep_rad)));
    std::vector<Vec2> points;
    for (int i = 0; i <= steps; ++i) {
        const double angle_rad = from_rad + (to_rad - from_rad) * i / steps;
        points.emplace_back(centre + radius_mm * paper_direction(angle_rad));
    }
    return points;
}

Mark drawn_back(Mark mark, double share) {
    const auto weaken = [share](Pen& pen, Fill& fill) {
        pen.strength *= share;
        fill.strength *= fill.ink == Ink::paper ? 1.0 : share;
    };
    if (auto* path = std::get_if<Path>(&mark)) {
        weaken(path->pen, path->fill);
    } else if (auto* round = std::get_if<Circle>(&mark)) {
        weaken(round->pen, round->fill);
    }
    return mark;
}

Vec2 paper_direction(double angle_rad) {
    return {std::cos(angle_rad), -std::sin(angle_rad)};
}

} // namespace throwline::sheet
