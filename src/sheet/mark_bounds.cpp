#include "sheet/mark_bounds.h"

#include "sheet/marks.h"

#include <algorithm>
#include <limits>
#include <span>

namespace throwline::sheet {

namespace {

/// A pen reaches half its width past its line, and at a corner twice its width (mitre limit of the
/// painter); a hatch or a smoothed edge adds less than this.
constexpr double kPenReach = 2.0;
constexpr double kAir_mm = 0.5;

Box around(std::span<const Vec2> points, double air_mm) {
    if (points.empty()) {
        return {};
    }
    Vec2 low = points.front();
    Vec2 high = points.front();
    for (const Vec2& point : points) {
        low = low.cwiseMin(point);
        high = high.cwiseMax(point);
    }
    return Box{low.x(), low.y(), high.x() - low.x(), high.y() - low.y()}.inset(-air_mm);
}

double reach_mm(const Pen& pen) {
    return kPenReach * std::max(pen.width_mm, 0.0) + kAir_mm;
}

double share_before(TextAnchor anchor) {
    switch (anchor) {
    case TextAnchor::start:
        return 0.0;
    case TextAnchor::middle:
        return 0.5;
    case TextAnchor::end:
        return 1.0;
    }
    return 0.0;
}

struct Bounds {
    const TextMeasure& measure;

    Box operator()(const Path& path) const { return around(path.points, reach_mm(path.pen)); }
    Box operator()(const Circle& circle) const {
        return Box{circle.centre.x(), circle.centre.y(), 0.0, 0.0}.inset(-circle.radius_mm
                                                                         - reach_mm(circle.pen));
    }
    Box operator()(const Text& text) const {
        const double width_mm = measure.width_mm(text.text, text.height_mm, text.bold);
        const double left_mm = -share_before(text.anchor) * width_mm;
        const Vec2 along = paper_direction(text.turn_rad);
        const Vec2 down{-along.y(), along.x()};
        std::vector<Vec2> corners;
        for (const double across_mm : {left_mm, left_mm + width_mm}) {
            // An accent on a capital reaches half its height above it.
            for (const double down_mm : {-1.5 * text.height_mm, kDescent * text.height_mm}) {
                corners.emplace_back(text.at + along * across_mm + down * down_mm);
            }
        }
        return around(corners, kAir_mm);
    }
    Box operator()(const Picture& picture) const {
        const std::vector<Vec2> corners{picture.corner, picture.corner + picture.across,
                                        picture.corner + picture.down,
                                        picture.corner + picture.across + picture.down};
        return around(corners, kAir_mm);
    }
};

} // namespace

Box bounds_of(const Mark& mark, const TextMeasure& measure) {
    return std::visit(Bounds{measure}, mark);
}

} // namespace throwline::sheet
