#include "photometry/cone_floor.h"

#include "base/length_text.h"
#include "photometry/words.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::photometry {

namespace {

constexpr double kRight_rad = std::numbers::pi / 2.0;
// Within a microradian of open, the far edge is kilometres away: treat it as open.
constexpr double kOpenSlack_rad = 1e-6;

/// The cone seen from the foot of its apex, turned so that the axis runs along +x and the plane
/// lies `height_m` below.
struct LevelCone {
    double height_m = 0.0;
    double tilt_rad = 0.0;
    double half_rad = 0.0;

    double cos_half() const { return std::cos(half_rad); }
    /// Component along the axis of the sight from the apex to a point of the plane.
    double along(const Vec2& point) const {
        return point.x() * std::sin(tilt_rad) + height_m * std::cos(tilt_rad);
    }
};

struct PlacedCone {
    LevelCone cone;
    Vec2 foot = Vec2::Zero();
    double pan_rad = 0.0;
};

std::optional<PlacedCone> placed_over(const BeamCone& beam, double plane_z_m) {
    const double height_m = beam.apex.z() - plane_z_m;
    const double axis_norm = beam.axis.norm();
    if (height_m == 0.0 || axis_norm == 0.0) {
        return std::nullopt;
    }
    // A plane above the lamp is the mirror image of one below it.
    const double down = (height_m > 0.0 ? -beam.axis.z() : beam.axis.z()) / axis_norm;
    return PlacedCone{
        {std::abs(height_m), std::acos(std::clamp(down, -1.0, 1.0)), beam.half_angle.rad()},
        floor_of(beam.apex),
        angle_of(floor_of(beam.axis))};
}

/// Distance from a point inside the circle around the foot to the circle.
double to_circle(const Vec2& inside, const Vec2& direction, double radius_m) {
    const double b = inside.dot(direction);
    return -b + std::sqrt(std::max(0.0, b * b + radius_m * radius_m - inside.squaredNorm()));
}

/// Distance from a point inside the patch to its edge, at most `most_m`.
double to_edge(const LevelCone& cone, const Vec2& inside, const Vec2& direction, double most_m) {
    // (along)^2 = cos^2(half) |sight|^2 on the edge; a t^2 + 2 b t + c with c > 0 inside.
    const double cos2 = cone.cos_half() * cone.cos_half();
    const double slope = direction.x() * std::sin(cone.tilt_rad);
    const double along = cone.along(inside);
    const double a = slope * slope - cos2;
    const double b = along * slope - cos2 * inside.dot(direction);
    const double c = along * along - cos2 * (inside.squaredNorm() + cone.height_m * cone.height_m);
    const double root2 = b * b - a * c;
    if (root2 < 0.0) {
        return most_m;
    }
    // The form that neither loses digits nor divides by a vanishing a; with c > 0 the smallest
    // positive root is c / (sqrt - b).
    const double divisor = std::sqrt(root2) - b;
    const double t = divisor > 0.0 ? c / divisor : most_m;
    return std::min(t, most_m);
}

Polygon closed_outline(const ConeFootprint& patch, int sides) {
    Polygon outline;
    for (int i = 0; i < sides; ++i) {
        const double turn_rad = 2.0 * std::numbers::pi * i / sides;
        outline.emplace_back(patch.centre.m() + patch.semi_major.m() * std::cos(turn_rad),
                             patch.semi_minor.m() * std::sin(turn_rad));
    }
    return outline;
}

Polygon clipped_outline(const LevelCone& cone, double reach_m, int sides) {
    const double near_m = cone.height_m * std::tan(cone.tilt_rad - cone.half_rad);
    if (near_m >= reach_m) {
        return {};
    }
    const Vec2 inside((std::max(near_m, -reach_m) + reach_m) / 2.0, 0.0);
    Polygon outline;
    for (int i = 0; i < sides; ++i) {
        const Vec2 direction = unit_at(2.0 * std::numbers::pi * i / sides);
        const double most_m = to_circle(inside, direction, reach_m);
        outline.push_back(inside + direction * to_edge(cone, inside, direction, most_m));
    }
    return outline;
}

} // namespace

std::optional<ConeFootprint> cone_footprint(Length height, Angle tilt, Angle half_angle) {
    const double phi = tilt.rad();
    const double alpha = half_angle.rad();
    if (height.m() <= 0.0 || phi + alpha >= kRight_rad - kOpenSlack_rad) {
        return std::nullopt;
    }
    const double divisor = std::pow(std::cos(phi), 2) - std::pow(std::sin(alpha), 2);
    return ConeFootprint{height * std::tan(phi - alpha),
                         height * std::tan(phi + alpha),
                         height * (std::sin(phi) * std::cos(phi) / divisor),
                         height * (std::sin(alpha) * std::cos(alpha) / divisor),
                         height * (std::sin(alpha) / std::sqrt(divisor)),
                         height * std::tan(phi)};
}

Polygon footprint_outline(const BeamCone& beam, double plane_z_m, Length reach, int sides) {
    const std::optional<PlacedCone> placed = placed_over(beam, plane_z_m);
    if (!placed || reach.m() <= 0.0
        || placed->cone.tilt_rad - placed->cone.half_rad >= kRight_rad - kOpenSlack_rad) {
        return {};
    }
    const LevelCone& cone = placed->cone;
    const std::optional<ConeFootprint> patch =
        cone_footprint(Length::metres(cone.height_m), Angle::radians(cone.tilt_rad),
                       Angle::radians(cone.half_rad));
    const bool whole = patch && patch->far_edge <= reach && -patch->near_edge <= reach;
    Polygon outline =
        whole ? closed_outline(*patch, sides) : clipped_outline(cone, reach.m(), sides);
    for (Vec2& corner : outline) {
        corner = placed->foot + rotated(corner, placed->pan_rad);
    }
    return outline;
}

Length spot_diameter(Length distance, Angle full_angle) {
    return distance * (2.0 * std::tan(full_angle.rad() / 2.0));
}

Working spot_diameter_working(Length distance, Angle full_angle) {
    return {"diameter = 2 d tan(angle / 2)",
            {{"d", "distance along the axis", distance_text(distance)},
             {"angle", "full angle", degrees_text(full_angle)}},
            distance_text(spot_diameter(distance, full_angle)),
            "plain geometry"};
}

} // namespace throwline::photometry
