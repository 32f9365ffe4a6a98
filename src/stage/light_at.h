#pragma once

#include "stage/stage.h"

#include <vector>

namespace throwline::stage {

/// Something between a lamp and a point, with the share of the lamp's bright face that it hides.
struct Blocker {
    /// Index into Stage::owners.
    int owner = -1;
    double share = 0.0;
};

/// What one lamp sends towards one point.
struct LampLight {
    /// Index into Stage::lamps.
    int lamp = -1;
    double throw_m = 0.0;
    /// Between the lamp's axis and the point.
    Angle off_axis;
    /// Unit vector from the point to the middle of the bright face.
    Vec3 towards = Vec3::UnitZ();
    /// Towards the point, after focus, filters, dimmer and beam cuts, with nothing in the way.
    double intensity_cd = 0.0;
    /// Share of the bright face that the point sees, 0..1.
    double seen_share = 1.0;
    /// What hides the rest, the largest share first.
    std::vector<Blocker> blockers;
};

/// Every lamp of the stage, in the plan's order, as a point sees it. `person` is the owner index of
/// somebody who does not count as being in the way (whoever the meter stands in for); -1 for none.
std::vector<LampLight> light_at(const Stage& stage, const Vec3& point, int person = -1);

/// Level that one lamp gives on a plane with a unit normal, with nothing in the way: inverse square
/// and cosine for a hard lamp, Lambert's polygon formula over the face for a soft one.
double open_level_lx(const Stage& stage, const LampLight& light, const Vec3& point,
                     const Vec3& normal);
/// The same as it is: times the share of the face that is seen.
double level_lx(const Stage& stage, const LampLight& light, const Vec3& point, const Vec3& normal);

} // namespace throwline::stage
