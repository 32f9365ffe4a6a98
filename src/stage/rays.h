#pragma once

#include "stage/solid.h"

#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace throwline::stage {

/// Rays begin and end this far short of their ends, so that what they start from or aim at is not
/// itself in the way. Well under the thickness of anything on a plan.
inline constexpr double kRayOffset_m = 0.001;

struct Hit {
    double distance_m = 0.0;
    /// Index of the solid, and of its owner.
    int solid = -1;
    int owner = -1;
    /// Whether the outward face was met.
    bool front = true;
    /// Index of the triangle in the solid's mesh.
    int triangle = -1;
};

struct Segment {
    Vec3 from = Vec3::Zero();
    Vec3 to = Vec3::Zero();
};

/// Up to two owners whose solids let the ray through: a lamp's own housing, the person on the mark.
struct LetThrough {
    int first = -1;
    int second = -1;
};

/// The solids of a stage, ready for questions. Immutable once made; questions may come from any
/// thread. Watertight queries (robust), so that no ray slips between two triangles that share an
/// edge.
class RayScene {
  public:
    explicit RayScene(std::span<const Solid> solids);
    ~RayScene();
    RayScene(RayScene&&) noexcept;
    RayScene& operator=(RayScene&&) noexcept;
    RayScene(const RayScene&) = delete;
    RayScene& operator=(const RayScene&) = delete;

    /// The first thing met along a unit direction within `reach_m`.
    std::optional<Hit> nearest_hit(const Vec3& from, const Vec3& direction, double reach_m,
                                   LetThrough through = {}) const;
    /// The first thing between two points, both ends short by kRayOffset_m.
    std::optional<Hit> first_between(const Segment& segment, LetThrough through = {}) const;
    bool is_blocked(const Segment& segment, LetThrough through = {}) const;

    /// The same for many at once, in packets of 16; coherent order is fastest.
    /// Answers come in the order of the questions.
    std::vector<std::optional<Hit>> nearest_hits(const Vec3& from, std::span<const Vec3> directions,
                                                 double reach_m, LetThrough through = {}) const;
    std::vector<std::optional<Hit>> firsts_between(std::span<const Segment> segments,
                                                   LetThrough through = {}) const;
    std::vector<bool> blocked(std::span<const Segment> segments, LetThrough through = {}) const;

  private:
    class Impl;
    std::unique_ptr<Impl> impl_;
};

} // namespace throwline::stage
