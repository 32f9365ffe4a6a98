#include "optics/camera_pose.h"

#include <cmath>

namespace throwline::optics {

namespace {

// Points on the very edge come out of the projection a few rounding steps to either side of it.
constexpr double kEdgeSlack = 1e-12;

} // namespace

CameraAxes axes_of(const CameraPose& pose) {
    const double cos_pan = std::cos(pose.pan.rad());
    const double sin_pan = std::sin(pose.pan.rad());
    const double cos_tilt = std::cos(pose.tilt.rad());
    const Vec3 forward(cos_pan * cos_tilt, sin_pan * cos_tilt, std::sin(pose.tilt.rad()));
    const Vec3 level_right(sin_pan, -cos_pan, 0.0);
    // forward x level_right, written out so that Eigen's geometry headers are not needed.
    const Vec3 level_down(-forward.z() * level_right.y(), forward.z() * level_right.x(), -cos_tilt);
    const double cos_roll = std::cos(pose.roll.rad());
    const double sin_roll = std::sin(pose.roll.rad());
    return {cos_roll * level_right + sin_roll * level_down,
            cos_roll * level_down - sin_roll * level_right, forward};
}

std::optional<CameraPose> look_at(const Vec3& lens, const Vec3& target) {
    const Vec3 sight = target - lens;
    if (sight.norm() == 0.0) {
        return std::nullopt;
    }
    const double run_m = std::hypot(sight.x(), sight.y());
    return CameraPose{lens, Angle::radians(std::atan2(sight.y(), sight.x())),
                      Angle::radians(std::atan2(sight.z(), run_m)), Angle{}};
}

Frame::Frame(const CameraPose& pose, double tan_half_h, double tan_half_v)
    : pose_{pose}, axes_{axes_of(pose)}, tan_half_h_{tan_half_h}, tan_half_v_{tan_half_v} {}

Frame::Frame(const CameraPose& pose, const AngleOfView& view)
    : Frame(pose, std::tan(view.horizontal.rad() / 2.0), std::tan(view.vertical.rad() / 2.0)) {}

double Frame::depth(const Vec3& point) const {
    return axes_.forward.dot(point - pose_.lens);
}

std::optional<Vec2> Frame::project(const Vec3& point) const {
    const Vec3 sight = point - pose_.lens;
    const double depth_m = axes_.forward.dot(sight);
    if (depth_m < kNearPlane_m) {
        return std::nullopt;
    }
    return Vec2{axes_.right.dot(sight) / (depth_m * tan_half_h_),
                -axes_.down.dot(sight) / (depth_m * tan_half_v_)};
}

bool Frame::contains(const Vec3& point) const {
    const std::optional<Vec2> seen = project(point);
    return seen && std::abs(seen->x()) <= 1.0 + kEdgeSlack
           && std::abs(seen->y()) <= 1.0 + kEdgeSlack;
}

Vec3 Frame::ray_direction(const Vec2& frame_point) const {
    return ray_per_depth(frame_point).normalized();
}

Vec3 Frame::ray_per_depth(const Vec2& frame_point) const {
    return axes_.forward + frame_point.x() * tan_half_h_ * axes_.right
           - frame_point.y() * tan_half_v_ * axes_.down;
}

std::array<Vec3, 4> Frame::corner_directions() const {
    return {ray_direction({-1.0, 1.0}), ray_direction({1.0, 1.0}), ray_direction({1.0, -1.0}),
            ray_direction({-1.0, -1.0})};
}

double aspect_of(const Frame& frame) {
    return frame.tan_half_h() / frame.tan_half_v();
}

} // namespace throwline::optics
