#pragma once

#include <Eigen/Core>

namespace throwline {

/// A point or direction on the plan, metres: x right, y up the page.
using Vec2 = Eigen::Vector2d;
/// A point or direction in the room, metres: x right, y up the page, z up; right-handed.
using Vec3 = Eigen::Vector3d;

inline Vec2 floor_of(const Vec3& point) {
    return {point.x(), point.y()};
}
inline Vec3 raised(const Vec2& point, double z_m) {
    return {point.x(), point.y(), z_m};
}
/// The unit vector at an angle anticlockwise from +x.
Vec2 unit_at(double angle_rad);
/// Angle anticlockwise from +x, (-pi, pi]; 0 for the zero vector.
double angle_of(const Vec2& direction);
/// z of the cross product: positive when b lies anticlockwise of a.
double cross(const Vec2& a, const Vec2& b);
/// The vector turned a quarter anticlockwise.
Vec2 turned_left(const Vec2& v);
/// The vector turned anticlockwise by an angle.
Vec2 rotated(const Vec2& v, double angle_rad);
/// An angle brought into (-pi, pi].
double wrapped(double angle_rad);

} // namespace throwline
