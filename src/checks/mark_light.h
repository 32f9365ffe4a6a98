#pragma once

#include "checks/check.h"
#include "photometry/cone_floor.h"
#include "photometry/positions.h"
#include "stage/light_at.h"

#include <optional>

namespace throwline::checks {

/// What one lamp does at one mark, seen from one shot's camera.
struct LampAtMark {
    /// Index into Stage::lamps.
    int lamp = -1;
    stage::LampLight light;
    /// Whether the face lies within the beam (to 50 % of the peak) and the field (to 10 %).
    bool in_beam = false;
    bool in_field = false;
    /// From the eyes; nothing when the camera stands straight above them.
    std::optional<photometry::LampDirection> direction;
    /// On a level plane, and on the plane of the face turned to the camera, as it is.
    double horizontal_lx = 0.0;
    double facing_lx = 0.0;
    /// The same with nothing in the way.
    double open_facing_lx = 0.0;
    /// Where the beam cone meets the floor and the height of the face; nothing when it is open,
    /// points up, or starts below.
    std::optional<photometry::ConeFootprint> beam_on_floor;
    std::optional<photometry::ConeFootprint> field_on_floor;
    std::optional<photometry::ConeFootprint> beam_at_face;
    std::optional<photometry::ConeFootprint> field_at_face;
};

/// The light on one subject of one shot.
struct MarkLight {
    plan::Id<plan::Shot> shot;
    plan::Id<plan::Beat> beat;
    plan::Id<plan::Person> person;
    Vec3 face = Vec3::Zero();
    std::vector<LampAtMark> lamps;
    double horizontal_lx = 0.0;
    double facing_lx = 0.0;
    /// (key + fill) : fill by the lamps' roles; nothing without fill.
    std::optional<double> ratio;
    /// What the shot's stop asks for on the face, and how many stops the level lies above it;
    /// nothing without light.
    double needed_lx = 0.0;
    std::optional<double> stops_over;
};

/// The level on a face that a shot's stop asks for, by its camera's speed and exposure time and the
/// plan's meter constant (exposure.h). The shot's camera must be one of the plan's.
double needed_level_lx(const plan::Plan& plan, const plan::Shot& shot, const stage::ShotView& view);

/// For every subject of a shot who is on the floor, in the order of the shot. Empty when the shot
/// cannot be resolved.
std::vector<MarkLight> light_at_marks(const CheckInput& input, const ShotScene& scene);

/// Level at a point on a plane turned to the camera, from all lamps.
double facing_level_lx(const stage::Stage& stage, const Vec3& point, const Vec3& normal,
                       int person);

} // namespace throwline::checks
