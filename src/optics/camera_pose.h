#pragma once

#include "base/quantity.h"
#include "base/vec.h"
#include "optics/angle_of_view.h"

#include <array>
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

/// Points nearer than this in front of the lens are not projected: division by the depth would be
/// noise.
inline constexpr double kNearPlane_m = 0.01;

/// The pyramid that a camera takes in, and where points fall in its picture (pinhole; plain
/// geometry). Frame coordinates: u right, v up, each -1..1 across the frame. A plain value; cheap
/// to copy and safe to use from any thread.
class Frame {
  public:
    /// At the origin, level along +x, 90 degrees both ways.
    Frame() : Frame(CameraPose{}, 1.0, 1.0) {}
    /// `tan_half_h`, `tan_half_v`: tangents of half the horizontal and vertical angle of view, > 0.
    Frame(const CameraPose& pose, double tan_half_h, double tan_half_v);
    Frame(const CameraPose& pose, const AngleOfView& view);

    const CameraPose& pose() const { return pose_; }
    const CameraAxes& axes() const { return axes_; }
    double tan_half_h() const { return tan_half_h_; }
    double tan_half_v() const { return tan_half_v_; }

    /// Distance along the optical axis, metres; negative behind the lens.
    double depth(const Vec3& point) const;
    /// Where a point falls, also outside -1..1; empty when it is nearer than kNearPlane_m.
    std::optional<Vec2> project(const Vec3& point) const;
    /// Whether a point lies in front of the lens and inside the frame (edges included).
    bool contains(const Vec3& point) const;
    /// Unit vector from the lens through a frame point.
    Vec3 ray_direction(const Vec2& frame_point) const;
    /// ray_direction() scaled so that it advances one metre along the optical axis.
    Vec3 ray_per_depth(const Vec2& frame_point) const;
    /// Directions through the corners: upper left, upper right, lower right, lower left.
    std::array<Vec3, 4> corner_directions() const;

  private:
    CameraPose pose_;
    CameraAxes axes_;
    double tan_half_h_;
    double tan_half_v_;
};

/// Width over height of the picture.
double aspect_of(const Frame& frame);

} // namespace throwline::optics
