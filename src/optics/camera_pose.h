#pragma once

#include "base/quantity.h"
#include "base/vec.h"

#include <optional>

namespace throwline::optics {

/// Where a camera looks from and to. x right, y up the page, z up; right-handed.
struct CameraPose {
    /// The entrance pupil, from which the picture is seen.
    Vec3 lens = Vec3::Zero();
    /// Direction of the optical axis on the plan, anticlockwise from +x.
    Angle pan;
    /// Of the optical axis above the horizontal.
    Angle tilt;
    /// Of the camera about its axis, clockwise as seen from behind it.
    Angle roll;
};

/// Unit vectors of the picture in room axes; right x down = forward.
struct CameraAxes {
    Vec3 right;
    Vec3 down;
    Vec3 forward;
};

/// Plain geometry. forward = (cos pan cos tilt, sin pan cos tilt, sin tilt); right is level before
/// the roll turns right and down about forward.
CameraAxes axes_of(const CameraPose& pose);

/// The level pose that puts `target` in the middle of the picture; pan is 0 when it is straight
/// above or below. Empty when both points are the same.
std::optional<CameraPose> look_at(const Vec3& lens, const Vec3& target);

} // namespace throwline::optics
