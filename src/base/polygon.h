#pragma once

#include "base/vec.h"

#include <array>
#include <span>
#include <vector>

namespace throwline {

/// Corners of a simple polygon in walking order; the last joins the first, which is not repeated.
using Polygon = std::vector<Vec2>;

/// Positive when the corners run anticlockwise. m²
double signed_area(std::span<const Vec2> polygon);
double area(std::span<const Vec2> polygon);
/// Centre of the area; of a polygon without area the mean of its corners, and of nothing (0, 0).
Vec2 centroid(std::span<const Vec2> polygon);
/// Whether a point lies inside or within `on_edge_m` of the edge.
bool contains(std::span<const Vec2> polygon, const Vec2& point, double on_edge_m = 0.001);
/// Whether two edges that are not neighbours meet, or neighbours fold back on each other. Corners
/// that follow each other on the same spot count as one.
bool crosses_itself(std::span<const Vec2> polygon);
/// Distance from a point to a segment.
double distance_to_segment(const Vec2& point, const Vec2& a, const Vec2& b);
/// Where two segments cross, as the share along the first (0..1); negative when they do not.
/// Touching at an end is crossing; parallel segments never cross.
double crossing_share(const Vec2& a, const Vec2& b, const Vec2& c, const Vec2& d);

/// A rectangle of width (along its own x) by depth, centred on `centre`, turned anticlockwise. The
/// corners run anticlockwise from the lower left one (before turning).
Polygon rectangle(const Vec2& centre, double width_m, double depth_m, double turn_rad);
/// A regular polygon that encloses the circle, so that nothing round is drawn too small.
/// Anticlockwise; its sides touch the circle, one of them due right of the centre. At least 3
/// sides.
Polygon circle(const Vec2& centre, double radius_m, int sides = 32);

// What follows never fails: a polygon that crosses itself is taken as the area it encloses, and one
// with fewer than three corners or a coordinate that is not finite as empty. Safe from any thread.

/// Area that two polygons share, m². (GEOS)
double overlap_area(std::span<const Vec2> a, std::span<const Vec2> b);
/// The parts of `subject` outside `cover`. (GEOS) Outlines come back
/// anticlockwise, holes as polygons of their own, clockwise, so that signed areas add up. Slivers
/// below 1 mm² are left out. The order is fixed by the coordinates.
std::vector<Polygon> parts_outside(std::span<const Vec2> subject, std::span<const Vec2> cover);
/// The parts that both share, in the same form. (GEOS)
std::vector<Polygon> parts_shared(std::span<const Vec2> a, std::span<const Vec2> b);
/// Smallest distance between two polygons, 0 where they touch or overlap, infinite if one is
/// empty. (GEOS)
double distance_between(std::span<const Vec2> a, std::span<const Vec2> b);

/// Triangles (indices into `polygon`, anticlockwise) that cover a simple polygon exactly; empty if
/// it has no area. A polygon that crosses itself still gives an answer, but covers what it covers.
std::vector<std::array<int, 3>> triangulated(std::span<const Vec2> polygon);

} // namespace throwline
