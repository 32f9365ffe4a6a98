#pragma once

#include "checks/check.h"

#include <optional>
#include <string>

namespace throwline::checks {

/// Focal lengths of a shot's lens as the shot uses it, with the extender where it is in.
struct FocalRange {
    Length widest;
    Length longest;
};
FocalRange focal_range(const stage::ShotView& view, const plan::Shot& shot);

/// What a lens that is not wide or long enough for the wanted size would need instead.
struct LensShortfall {
    Length needed;
    /// The end of the range that comes nearest.
    Length nearest;
    /// From the subject, with that focal length.
    Length distance;
    /// Of the camera on the floor; away from the subject when `back`.
    Length move;
    bool back = false;
};

/// Nothing when no size is wanted, the lens can give the needed focal length, or the nearest end of
/// its range still gives a shot that is called by the wanted size.
std::optional<LensShortfall> lens_shortfall(const ShotScene& scene, const stage::ShotView& view);

/// The floor behind a camera: how far it can go straight back with support and operator, and what
/// stands there. Nothing is said about what only hangs above lens height.
struct FreeBehind {
    Length free;
    /// Owner index on the stage; -1 when nothing stands behind.
    int obstacle = -1;
};
FreeBehind free_behind(const ShotScene& scene, const stage::ShotView& view,
                       const CheckInput& input);

/// The finding when the lens cannot give the wanted size from where the camera stands.
std::optional<Finding> lens_range_finding(const ShotScene& scene, const stage::ShotView& view,
                                          const CheckInput& input);

} // namespace throwline::checks
