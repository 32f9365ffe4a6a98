#include "base/closest_point.h"

namespace throwline {

namespace {

/// Share along an edge from two signed products; 0 where the edge has no length.
double share_of(double from, double to) {
    return from + to > 0.0 ? from / (from + to) : 0.0;
}

} // namespace

Vec3 closest_on_triangle(const Vec3& point, const Vec3& a, const Vec3& b, const Vec3& c) {
    const Vec3 ab = b - a;
    const Vec3 ac = c - a;
    const double a1 = ab.dot(point - a);
    const double a2 = ac.dot(point - a);
    if (a1 <= 0.0 && a2 <= 0.0) {
        return a;
    }
    const double b1 = ab.dot(point - b);
    const double b2 = ac.dot(point - b);
    if (b1 >= 0.0 && b2 <= b1) {
        return b;
    }
    const double c1 = ab.dot(point - c);
    const double c2 = ac.dot(point - c);
    if (c2 >= 0.0 && c1 <= c2) {
        return c;
    }
    const double beyond_ab = a1 * b2 - b1 * a2;
    if (beyond_ab <= 0.0 && a1 >= 0.0 && b1 <= 0.0) {
        return a + ab * share_of(a1, -b1);
    }
    const double beyond_ac = c1 * a2 - a1 * c2;
    if (beyond_ac <= 0.0 && a2 >= 0.0 && c2 <= 0.0) {
        return a + ac * share_of(a2, -c2);
    }
    const double beyond_bc = b1 * c2 - c1 * b2;
    if (beyond_bc <= 0.0 && b2 - b1 >= 0.0 && c1 - c2 >= 0.0) {
        return b + (c - b) * share_of(b2 - b1, c1 - c2);
    }
    const double whole = beyond_ab + beyond_ac + beyond_bc;
    return whole > 0.0 ? Vec3{a + ab * (beyond_ac / whole) + ac * (beyond_ab / whole)} : a;
}

} // namespace throwline
