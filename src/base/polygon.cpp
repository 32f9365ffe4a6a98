#include "base/polygon.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline {

namespace {

/// Corners nearer than this are one corner; far below anything that can be taped or drawn, far
/// above the rounding of coordinates in a room.
constexpr double kSameSpot_m = 1e-9;

/// Below this share of the lengths' product two directions count as parallel.
constexpr double kParallel = 1e-12;

/// How far beyond its end a segment still counts as met, as a share of its length: rounding only.
constexpr double kShareSlack = 1e-12;

struct Segment {
    Vec2 a;
    Vec2 b;
};

double distance_between_segments(const Segment& p, const Segment& q) {
    if (crossing_share(p.a, p.b, q.a, q.b) >= 0.0) {
        return 0.0;
    }
    return std::min({distance_to_segment(p.a, q.a, q.b), distance_to_segment(p.b, q.a, q.b),
                     distance_to_segment(q.a, p.a, p.b), distance_to_segment(q.b, p.a, p.b)});
}

/// The edges, those without length left out.
std::vector<Segment> edges_of(std::span<const Vec2> polygon) {
    Polygon corners;
    for (const Vec2& corner : polygon) {
        if (corners.empty() || (corner - corners.back()).norm() > kSameSpot_m) {
            corners.push_back(corner);
        }
    }
    while (corners.size() > 1 && (corners.front() - corners.back()).norm() <= kSameSpot_m) {
        corners.pop_back();
    }
    std::vector<Segment> edges;
    edges.reserve(corners.size());
    for (std::size_t i = 0; i < corners.size(); ++i) {
        edges.push_back({corners[i], corners[(i + 1) % corners.size()]});
    }
    return edges;
}

/// Whether the second edge runs back along the first, from whose end it starts.
bool folds_back(const Segment& first, const Segment& second) {
    const Vec2 along = first.b - first.a;
    const Vec2 onward = second.b - second.a;
    return along.dot(onward) < 0.0
           && std::min(distance_to_segment(second.b, first.a, first.b),
                       distance_to_segment(first.a, second.a, second.b))
                  <= kSameSpot_m;
}

bool is_odd_even_inside(std::span<const Vec2> polygon, const Vec2& point) {
    bool inside = false;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Vec2& p = polygon[i];
        const Vec2& q = polygon[(i + 1) % polygon.size()];
        const bool spans = (p.y() > point.y()) != (q.y() > point.y());
        if (spans && point.x() < (q.x() - p.x()) * (point.y() - p.y()) / (q.y() - p.y()) + p.x()) {
            inside = !inside;
        }
    }
    return inside;
}

} // namespace

double signed_area(std::span<const Vec2> polygon) {
    double doubled = 0.0;
    // From the first corner, so that a polygon far from the origin loses no digits.
    for (std::size_t i = 2; i < polygon.size(); ++i) {
        doubled += cross(polygon[i - 1] - polygon[0], polygon[i] - polygon[0]);
    }
    return doubled / 2.0;
}

double area(std::span<const Vec2> polygon) {
    return std::abs(signed_area(polygon));
}

Vec2 centroid(std::span<const Vec2> polygon) {
    if (polygon.empty()) {
        return Vec2::Zero();
    }
    Vec2 weighted = Vec2::Zero();
    Vec2 total = Vec2::Zero();
    double doubled_area = 0.0;
    double longest_m = 0.0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Vec2 p = polygon[i] - polygon[0];
        const Vec2 q = polygon[(i + 1) % polygon.size()] - polygon[0];
        weighted += cross(p, q) * (p + q);
        doubled_area += cross(p, q);
        total += p;
        longest_m = std::max(longest_m, p.norm());
    }
    if (std::abs(doubled_area) <= kParallel * longest_m * longest_m) {
        return polygon[0] + total / static_cast<double>(polygon.size());
    }
    return polygon[0] + weighted / (3.0 * doubled_area);
}

bool contains(std::span<const Vec2> polygon, const Vec2& point, double on_edge_m) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        if (distance_to_segment(point, polygon[i], polygon[(i + 1) % polygon.size()])
            <= on_edge_m) {
            return true;
        }
    }
    return is_odd_even_inside(polygon, point);
}

bool crosses_itself(std::span<const Vec2> polygon) {
    const std::vector<Segment> edges = edges_of(polygon);
    const std::size_t count = edges.size();
    for (std::size_t i = 0; i < count; ++i) {
        if (count > 1 && folds_back(edges[i], edges[(i + 1) % count])) {
            return true;
        }
        for (std::size_t j = i + 2; j < count; ++j) {
            const bool neighbours = i == 0 && j == count - 1;
            if (!neighbours && distance_between_segments(edges[i], edges[j]) <= kSameSpot_m) {
                return true;
            }
        }
    }
    return false;
}

double distance_to_segment(const Vec2& point, const Vec2& a, const Vec2& b) {
    const Vec2 along = b - a;
    const double squared = along.squaredNorm();
    const double share =
        squared > 0.0 ? std::clamp((point - a).dot(along) / squared, 0.0, 1.0) : 0.0;
    return (point - (a + share * along)).norm();
}

double crossing_share(const Vec2& a, const Vec2& b, const Vec2& c, const Vec2& d) {
    constexpr double kNone = -1.0;
    const Vec2 first = b - a;
    const Vec2 second = d - c;
    const double turn = cross(first, second);
    if (std::abs(turn) <= kParallel * first.norm() * second.norm()) {
        return kNone;
    }
    const double along_first = cross(c - a, second) / turn;
    const double along_second = cross(c - a, first) / turn;
    const auto met = [](double share) {
        return share >= -kShareSlack && share <= 1.0 + kShareSlack;
    };
    return met(along_first) && met(along_second) ? std::clamp(along_first, 0.0, 1.0) : kNone;
}

Polygon rectangle(const Vec2& centre, double width_m, double depth_m, double turn_rad) {
    const Vec2 right = rotated({width_m / 2.0, 0.0}, turn_rad);
    const Vec2 up = rotated({0.0, depth_m / 2.0}, turn_rad);
    return {centre - right - up, centre + right - up, centre + right + up, centre - right + up};
}

Polygon circle(const Vec2& centre, double radius_m, int sides) {
    const int count = std::max(sides, 3);
    const double half_side_rad = std::numbers::pi / count;
    const double corner_m = radius_m / std::cos(half_side_rad);
    Polygon corners;
    for (int i = 0; i < count; ++i) {
        corners.push_back(centre + corner_m * unit_at((2 * i + 1) * half_side_rad));
    }
    return corners;
}

} // namespace throwline
