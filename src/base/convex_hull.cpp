#include "base/convex_hull.h"

#include <algorithm>

namespace throwline {

namespace {

bool left_to_right(const Vec2& a, const Vec2& b) {
    return a.x() < b.x() || (a.x() == b.x() && a.y() < b.y());
}

/// Appends the chain over sorted points that always turns left.
template <class Iterator>
void append_chain(Polygon& hull, const Iterator& begin, const Iterator& end) {
    const std::size_t first = hull.size();
    for (Iterator it = begin; it != end; ++it) {
        while (hull.size() >= first + 2
               && cross(hull.back() - hull[hull.size() - 2], *it - hull.back()) <= 0.0) {
            hull.pop_back();
        }
        hull.push_back(*it);
    }
    hull.pop_back(); // the end of this chain begins the next
}

} // namespace

Polygon convex_hull(std::vector<Vec2> points) {
    std::sort(points.begin(), points.end(), left_to_right);
    points.erase(std::unique(points.begin(), points.end()), points.end());
    if (points.size() < 3) {
        return points;
    }
    Polygon hull;
    append_chain(hull, points.begin(), points.end());
    append_chain(hull, points.rbegin(), points.rend());
    return hull;
}

} // namespace throwline
