#pragma once

#include "optics/angle_of_view.h"
#include "optics/camera_pose.h"
#include "stage/stage.h"

namespace throwline::stage {

/// What one shot takes in at one beat, everything resolved.
struct ShotView {
    plan::Id<plan::Shot> shot;
    plan::Id<plan::Beat> beat;
    const catalogue::SensorMode* sensor = nullptr;
    const catalogue::Lens* lens = nullptr;
    optics::CameraPose pose;
    /// With the extender where it is in.
    Length focal;
    double stop = 2.8;
    Length focus_distance;
    optics::AngleOfView angle;
    optics::Frame frame;
    /// What the focal length would have to be for the wanted size, whatever the lens can do;
    /// nothing when no size is wanted.
    std::optional<Length> wanted_focal;
    /// Whether `focal` was chosen here (the plan gives none).
    bool focal_chosen = false;
    /// Owner index of the camera, whose own body is not in its way.
    int owner = -1;
};

/// Resolves aim, focal length, stop and focus of a shot on its stage, by the rules of framed()
/// (framing.h). Without a stop: the lens's widest at that focal length, evenly between its ends,
/// times the extender. Angles are those of a pinhole focused at infinity. Nothing when the camera,
/// its sensor or its lens cannot be found, or no subject is on the floor and no aim is given.
std::optional<ShotView> view_of(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                                const Stage& stage, const plan::Shot& shot);

/// Distance from the lens to a point along the optical axis: what focus and frame size go by.
double depth_m(const optics::CameraPose& pose, const Vec3& point);

/// The first thing in each cell of a grid over the frame, row by row from the top left.
struct FrameHits {
    int columns = 0;
    int rows = 0;
    std::vector<std::optional<Hit>> cells;
};
FrameHits hits_over_frame(const Stage& stage, const ShotView& view, int columns, int rows);

} // namespace throwline::stage
