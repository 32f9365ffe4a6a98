#pragma once

#include "base/vec.h"
#include "optics/angle_of_view.h"
#include "optics/camera_pose.h"

#include <array>
#include <optional>

namespace throwline::optics {

/// Points nearer than this in front of the lens are not projected: division by the depth would be
/// noise.
inline constexpr double kNearPlane_m = 0.01;

/// The pyramid that a camera takes in, and where points fall in its picture (pinhole; plain
/// geometry). Frame coordinates: u right, v up, each -1..1 across the frame. A plain value; cheap
/// to copy and safe to use from any thread.
class Frame {
  public:
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
