#include "base/vec.h"

#include <cmath>
#include <numbers>

namespace throwline {

Vec2 unit_at(double angle_rad) {
    return {std::cos(angle_rad), std::sin(angle_rad)};
}

double angle_of(const Vec2& direction) {
    return std::atan2(direction.y(), direction.x());
}

double cross(const Vec2& a, const Vec2& b) {
    return a.x() * b.y() - a.y() * b.x();
}

Vec2 turned_left(const Vec2& v) {
    return {-v.y(), v.x()};
}

Vec2 rotated(const Vec2& v, double angle_rad) {
    const double c = std::cos(angle_rad);
    const double s = std::sin(angle_rad);
    return {c * v.x() - s * v.y(), s * v.x() + c * v.y()};
}

double wrapped(double angle_rad) {
    const double turned = std::remainder(angle_rad, 2.0 * std::numbers::pi);
    return turned <= -std::numbers::pi ? std::numbers::pi : turned;
}

} // namespace throwline
