#pragma once

#include "base/polygon.h"
#include "stage/solid.h"

#include <span>

/// Shapes as triangles, outward faces, closed unless said otherwise. All lengths in metres.
namespace throwline::stage {

/// One outline of a loft: an ellipse around `centre` with two half axes square to each other.
/// `across` x `along` must point the way the loft grows, so that faces look outwards.
struct Ring {
    Vec3 centre = Vec3::Zero();
    Vec3 across = Vec3::UnitX();
    Vec3 along = Vec3::UnitY();
};

/// Sides of round things: the chord lies at most 2 % of the radius inside the circle.
inline constexpr int kRoundSides = 16;

/// A skin over ellipses one above the other (at least two), both ends closed. A ring whose half
/// axes are zero is a point. The first corner of each ring lies at +along.
Mesh loft(std::span<const Ring> rings, int sides = kRoundSides);

/// A box around `centre`; the half axes must be right-handed.
Mesh box(const Vec3& centre, const Vec3& half_x, const Vec3& half_y, const Vec3& half_z);
/// An upright box over a rectangle: width along its own x, depth along its own y.
Mesh upright_box(const Vec2& centre, double width_m, double depth_m, double turn_rad,
                 double bottom_z_m, double top_z_m);
/// An upright prism over a simple polygon, either way round; empty when it has no area.
Mesh prism(std::span<const Vec2> outline, double bottom_z_m, double top_z_m);
/// Upright, standing on `base`.
Mesh cylinder(const Vec3& base, double radius_m, double height_m, int sides = kRoundSides);
/// `half_axes` must be right-handed and square to each other; the third is the pole.
Mesh ellipsoid(const Vec3& centre, const Vec3& half_x, const Vec3& half_y, const Vec3& half_z,
               int bands = 8, int sides = kRoundSides);
/// A rod with round ends whose middles are `from` and `to`.
Mesh capsule(const Vec3& from, const Vec3& to, double radius_m, int sides = 10);
/// A rod with flat ends; radii may differ.
Mesh rod(const Vec3& from, const Vec3& to, double from_radius_m, double to_radius_m, int sides = 8);

/// Open: a four-cornered sheet, corners anticlockwise seen from its front.
Mesh sheet(const Vec3& a, const Vec3& b, const Vec3& c, const Vec3& d);
/// Open: a level sheet over a simple polygon, its front up or down.
Mesh level_sheet(std::span<const Vec2> outline, double z_m, bool front_up);

/// Volume inside a closed mesh; negative when its faces look inwards. m³
double volume_m3(const Mesh& mesh);
/// Whether every edge is shared by exactly two triangles that run along it opposite ways.
bool is_closed(const Mesh& mesh);

} // namespace throwline::stage
