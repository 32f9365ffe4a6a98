#pragma once

#include "base/polygon.h"
#include "base/quantity.h"
#include "base/vec.h"

#include <optional>

namespace throwline::sun {

/// An upright opening in a wall, at the inner face of the wall.
struct WindowOpening {
    Vec2 from = Vec2::Zero();
    Vec2 to = Vec2::Zero();
    /// Unit vector out of the room, square to the wall.
    Vec2 outward = Vec2::UnitY();
    Length sill;
    Length head;
    /// Thickness of the wall that the light passes; 0 when only the pane counts.
    Length reveal;
};

/// The part of the opening that the sun passes, in shares of its width (0 at `from`) and in
/// heights.
struct LitOpening {
    double share_from = 0.0;
    double share_to = 0.0;
    Length low;
    Length high;
};
/// Empty when the sun is behind the wall, not above the horizon, or cut off by the reveal. Plain
/// geometry.
std::optional<LitOpening> lit_opening(const WindowOpening& window, const Vec3& toward_sun);

/// The patch on the level plane at `plane_z_m`, anticlockwise, not yet cut at the room's walls;
/// parts of the opening below the plane send nothing to it. Empty as lit_opening(). Each point (x,
/// y, z) of the opening lands at (x, y) - (s_x, s_y) (z - plane) / s_z. Plain geometry.
Polygon sun_patch(const WindowOpening& window, const Vec3& toward_sun, double plane_z_m = 0.0);

/// Whether the straight line from a point in the room to the sun passes the opening.
bool sees_sun_through(const WindowOpening& window, const Vec3& toward_sun, const Vec3& point);

/// How far into the room, square to the wall, and how far sideways (along from -> to) a window edge
/// at a height above the floor throws its line.
struct SunReach {
    Length depth;
    Length shift;
};
std::optional<SunReach> sun_reach(const WindowOpening& window, const Vec3& toward_sun,
                                  Length edge_height);
/// Profile angle: tan = tan(elevation) / cos(azimuth - wall azimuth). Empty as lit_opening().
std::optional<Angle> profile_angle(const WindowOpening& window, const Vec3& toward_sun);
/// Between the sun and the normal of the pane. Empty when the sun is behind the wall.
std::optional<Angle> pane_incidence(const WindowOpening& window, const Vec3& toward_sun);

} // namespace throwline::sun
