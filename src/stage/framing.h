#pragma once

#include "optics/camera_pose.h"
#include "optics/picture_area.h"
#include "stage/stage.h"

#include <optional>
#include <span>

/// Where a camera points and how long its lens is set, worked out together: the tilt that gives the
/// headroom depends on the angle of view.
namespace throwline::stage {

/// What a camera can do.
struct LensReach {
    optics::PictureArea area;
    Length focal_min;
    Length focal_max;
};
/// Behind the extender where it is in.
LensReach reach_of(const catalogue::SensorMode& sensor, const catalogue::Lens& lens, bool extender);

struct Framing {
    optics::CameraPose pose;
    Length focal;
    std::optional<Length> wanted_focal;
    bool focal_chosen = false;
};

/// The subjects of a shot who are on the floor, in its order.
std::vector<const Figure*> subjects_of(const Stage& stage, const plan::Shot& shot);

/// Frames a shot from a lens point. `aim` is the resolved aim, empty for the shot's own: middle
/// bearing of the subjects' heads; frame edge and headroom of the wanted size (common practice, no
/// source), or the first subject's chest where no size is wanted. The wanted size is that of the
/// first subject; the highest crown gets the headroom. The focal length, where the shot gives none,
/// is the one for the size, shortened until all heads fit in the width, within the lens; the
/// shortest where no size is wanted. Nothing when there is neither aim nor subject, or they are
/// where the lens is.
std::optional<Framing> framed(const plan::Shot& shot, const LensReach& reach, const Vec3& lens,
                              std::span<const Figure* const> subjects,
                              const std::optional<Vec3>& aim);

} // namespace throwline::stage
