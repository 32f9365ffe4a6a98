#pragma once

#include "base/vec.h"

namespace throwline {

/// The point of a triangle that is nearest to another point. A triangle without area is taken as
/// the segment or point that it is. By regions of the corners, edges and face (Ericson, "Real-Time
/// Collision Detection", 5.1.5, from memory).
Vec3 closest_on_triangle(const Vec3& point, const Vec3& a, const Vec3& b, const Vec3& c);

} // namespace throwline
