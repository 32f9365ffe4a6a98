#include "stage/brute_force.h"

#include <Eigen/Geometry>

namespace throwline::stage {

namespace {

/// Distance along a ray to a triangle (Moeller and Trumbore, 1997).
std::optional<double> distance_to(const Vec3& from, const Vec3& direction, const Vec3& a,
                                  const Vec3& b, const Vec3& c) {
    const Vec3 ab = b - a;
    const Vec3 ac = c - a;
    const Vec3 p = direction.cross(ac);
    const double determinant = ab.dot(p);
    if (determinant == 0.0) {
        return std::nullopt;
    }
    const Vec3 s = from - a;
    const double u = s.dot(p) / determinant;
    const Vec3 q = s.cross(ab);
    const double v = direction.dot(q) / determinant;
    if (u < 0.0 || v < 0.0 || u + v > 1.0) {
        return std::nullopt;
    }
    return ac.dot(q) / determinant;
}

} // namespace

std::optional<Hit> BruteForce::first(const Vec3& from, const Vec3& direction, double start_m,
                                     double end_m, LetThrough through) const {
    std::optional<Hit> nearest;
    for (std::size_t i = 0; i < solids_.size(); ++i) {
        const Solid& solid = solids_[i];
        if (solid.owner_index == through.first || solid.owner_index == through.second) {
            continue;
        }
        for (const auto& [ia, ib, ic] : solid.mesh.triangles) {
            const Vec3& a = solid.mesh.vertices[ia];
            const Vec3& b = solid.mesh.vertices[ib];
            const Vec3& c = solid.mesh.vertices[ic];
            const std::optional<double> at = distance_to(from, direction, a, b, c);
            if (at && *at >= start_m && *at <= end_m && (!nearest || *at < nearest->distance_m)) {
                const bool front = (b - a).cross(c - a).dot(direction) < 0.0;
                nearest = Hit{*at, static_cast<int>(i), solid.owner_index, front};
            }
        }
    }
    return nearest;
}

std::optional<Hit> BruteForce::nearest_hit(const Vec3& from, const Vec3& direction, double reach_m,
                                           LetThrough through) const {
    return first(from, direction, kRayOffset_m, reach_m, through);
}

std::optional<Hit> BruteForce::first_between(const Segment& segment, LetThrough through) const {
    const Vec3 whole = segment.to - segment.from;
    const double length_m = whole.norm();
    if (length_m <= 2.0 * kRayOffset_m) {
        return std::nullopt;
    }
    return first(segment.from, whole / length_m, kRayOffset_m, length_m - kRayOffset_m, through);
}

} // namespace throwline::stage
