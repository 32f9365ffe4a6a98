#pragma once

#include "stage/rays.h"

/// The slow twin of RayScene: a loop over all triangles in double precision.
namespace throwline::stage {

class BruteForce {
  public:
    explicit BruteForce(std::span<const Solid> solids) : solids_{solids} {}

    std::optional<Hit> nearest_hit(const Vec3& from, const Vec3& direction, double reach_m,
                                   LetThrough through = {}) const;
    std::optional<Hit> first_between(const Segment& segment, LetThrough through = {}) const;

  private:
    std::optional<Hit> first(const Vec3& from, const Vec3& direction, double start_m, double end_m,
                             LetThrough through) const;
    std::span<const Solid> solids_;
};

} // namespace throwline::stage
