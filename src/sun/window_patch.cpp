#include "sun/window_patch.h"

#include <algorithm>
#include <cmath>

namespace throwline::sun {

namespace {

/// The sun's direction in the window's own axes.
struct SunAtWindow {
    double width_m = 0.0;
    /// Unit vector from `from` to `to`.
    Vec2 along = Vec2::UnitX();
    /// Components of the direction to the sun.
    double sideways = 0.0;
    double outward = 0.0;
    double up = 0.0;
};

std::optional<SunAtWindow> sun_at(const WindowOpening& window, const Vec3& toward_sun) {
    const Vec2 span = window.to - window.from;
    const double width_m = span.norm();
    const double outward = window.outward.dot(floor_of(toward_sun));
    if (width_m == 0.0 || outward <= 0.0 || toward_sun.z() <= 0.0) {
        return std::nullopt;
    }
    const Vec2 along = span / width_m;
    return SunAtWindow{width_m, along, along.dot(floor_of(toward_sun)), outward, toward_sun.z()};
}

} // namespace

std::optional<LitOpening> lit_opening(const WindowOpening& window, const Vec3& toward_sun) {
    const std::optional<SunAtWindow> sun = sun_at(window, toward_sun);
    if (!sun) {
        return std::nullopt;
    }
    // A ray through (x, z) at the inner face passed the outer one at (x + drift, z + rise).
    const double drift_m = window.reveal.m() * sun->sideways / sun->outward;
    const double rise_m = window.reveal.m() * sun->up / sun->outward;
    const double left_m = std::max(0.0, -drift_m);
    const double right_m = std::min(sun->width_m, sun->width_m - drift_m);
    const double high_m = window.head.m() - rise_m;
    if (left_m >= right_m || window.sill.m() >= high_m) {
        return std::nullopt;
    }
    return LitOpening{left_m / sun->width_m, right_m / sun->width_m, window.sill,
                      Length::metres(high_m)};
}

Polygon sun_patch(const WindowOpening& window, const Vec3& toward_sun, double plane_z_m) {
    const std::optional<LitOpening> lit = lit_opening(window, toward_sun);
    if (!lit || lit->high.m() <= plane_z_m) {
        return {};
    }
    const Vec2 span = window.to - window.from;
    const Vec2 per_height = -floor_of(toward_sun) / toward_sun.z();
    const Vec2 low = per_height * (std::max(lit->low.m(), plane_z_m) - plane_z_m);
    const Vec2 high = per_height * (lit->high.m() - plane_z_m);
    const Vec2 first = window.from + span * lit->share_from;
    const Vec2 second = window.from + span * lit->share_to;
    Polygon patch{first + low, second + low, second + high, first + high};
    if (signed_area(patch) < 0.0) {
        std::reverse(patch.begin(), patch.end());
    }
    return patch;
}

bool sees_sun_through(const WindowOpening& window, const Vec3& toward_sun, const Vec3& point) {
    const std::optional<SunAtWindow> sun = sun_at(window, toward_sun);
    const std::optional<LitOpening> lit = lit_opening(window, toward_sun);
    if (!sun || !lit) {
        return false;
    }
    const Vec2 from_start = floor_of(point) - window.from;
    const double inside_m = -window.outward.dot(from_start);
    if (inside_m < 0.0) {
        return false;
    }
    const double steps = inside_m / sun->outward;
    const double share = (sun->along.dot(from_start) + steps * sun->sideways) / sun->width_m;
    const double height_m = point.z() + steps * sun->up;
    return share >= lit->share_from && share <= lit->share_to && height_m >= lit->low.m()
           && height_m <= lit->high.m();
}

std::optional<SunReach> sun_reach(const WindowOpening& window, const Vec3& toward_sun,
                                  Length edge_height) {
    const std::optional<SunAtWindow> sun = sun_at(window, toward_sun);
    if (!sun) {
        return std::nullopt;
    }
    return SunReach{edge_height * (sun->outward / sun->up),
                    -(edge_height * (sun->sideways / sun->up))};
}

std::optional<Angle> profile_angle(const WindowOpening& window, const Vec3& toward_sun) {
    const std::optional<SunAtWindow> sun = sun_at(window, toward_sun);
    if (!sun) {
        return std::nullopt;
    }
    return Angle::radians(std::atan2(sun->up, sun->outward));
}

std::optional<Angle> pane_incidence(const WindowOpening& window, const Vec3& toward_sun) {
    const std::optional<SunAtWindow> sun = sun_at(window, toward_sun);
    if (!sun) {
        return std::nullopt;
    }
    return Angle::radians(std::acos(std::clamp(sun->outward / toward_sun.norm(), -1.0, 1.0)));
}

} // namespace throwline::sun
