#pragma once

#include "base/polygon.h"
#include "base/quantity.h"
#include "base/vec.h"
#include "base/working.h"

#include <optional>

namespace throwline::photometry {

/// Ellipse in which a tilted cone meets a level plane below its point. Distances run along the plan
/// direction of the axis from the foot of the lamp; `near_edge` is negative where the patch reaches
/// behind the foot.
struct ConeFootprint {
    Length near_edge;
    Length far_edge;
    Length centre;
    Length semi_major;
    Length semi_minor;
    /// Where the axis meets the plane: not the centre of the ellipse.
    Length axis_hit;

    Length length() const { return semi_major * 2.0; }
    Length width() const { return semi_minor * 2.0; }
};

/// `height` of the cone's point above the plane (> 0), `tilt` of its axis from straight down
/// (0..pi), `half_angle` (0..pi/2). Empty when tilt + half_angle >= 90 deg: the patch is open and
/// ends only at a wall. Plain geometry (conic section).
std::optional<ConeFootprint> cone_footprint(Length height, Angle tilt, Angle half_angle);

/// A beam as a cone in the room.
struct BeamCone {
    Vec3 apex = Vec3::Zero();
    /// Any length but zero.
    Vec3 axis = -Vec3::UnitZ();
    /// 0..pi/2
    Angle half_angle;
};

/// Outline of the lit patch on the level plane at `plane_z_m`, below or above the apex,
/// anticlockwise. An open patch, and one that reaches farther, ends `reach` from the foot of the
/// apex. Empty when the cone does not meet the plane within reach. For drawing: corners lie on the
/// true edge.
Polygon footprint_outline(const BeamCone& beam, double plane_z_m, Length reach, int sides = 64);

/// Diameter on a square-on plane: 2 d tan(angle / 2). full_angle < 180 deg.
Length spot_diameter(Length distance, Angle full_angle);

Working spot_diameter_working(Length distance, Angle full_angle);

} // namespace throwline::photometry
