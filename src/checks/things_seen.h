#pragma once

#include "checks/check.h"

#include <vector>

namespace throwline::checks {

/// A solid that a lens sees a part of.
struct SolidSeen {
    int solid = -1;
    /// Of the whole frame.
    double share = 0.0;
    /// Middle of what is seen, in frame coordinates and in the room.
    Vec2 place = Vec2::Zero();
    Vec3 at = Vec3::Zero();
};

/// What the frame holds of one solid, however thin: rays over the place of the solid alone, and
/// where these miss, rays to points spread over its triangles. Share 0 when nothing is seen.
SolidSeen solid_seen(const ShotScene& scene, const stage::ShotView& view, int solid);

} // namespace throwline::checks
