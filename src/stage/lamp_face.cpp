#include "stage/lamp_face.h"

#include "photometry/intensity_distribution.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::stage {

namespace {

/// Points across a soft face, for one receiver and for maps.
constexpr int kFineAcross = 8;
constexpr int kCoarseAcross = 2;
/// Points on the circle around the middle of a hard face, which is one of seven equal areas.
constexpr int kAround = 6;
/// Middle of the ring that holds the outer six sevenths of a disc's area, in radii.
constexpr double kRingRadius = 0.7559;
/// A diffuse face has half its intensity 60 degrees off its axis.
constexpr Angle kDiffuseBeam = Angle::degrees(120.0);

/// Half axes of the face.
struct HalfAxes {
    Vec3 across = Vec3::Zero();
    Vec3 up = Vec3::Zero();
};

HalfAxes half_axes(const PlacedLamp& lamp, const Vec3& receiver) {
    const double across_m = lamp.instrument->face_width.m() / 2.0;
    const double up_m = lamp.instrument->face_height.m() / 2.0;
    if (!is_all_round(lamp)) {
        return {lamp.right * across_m, lamp.up * up_m};
    }
    const Vec3 towards = (receiver - lamp.face).stableNormalized();
    const Vec3 aside = std::abs(towards.z()) < 0.9 ? Vec3{towards.cross(Vec3::UnitZ())}
                                                   : Vec3{towards.cross(Vec3::UnitX())};
    const Vec3 across = aside.normalized();
    return {across * across_m, across.cross(towards) * up_m};
}

std::vector<Vec3> ring_points(const Vec3& middle, const HalfAxes& axes) {
    std::vector<Vec3> points{middle};
    for (int i = 0; i < kAround; ++i) {
        const double turn = 2.0 * std::numbers::pi * i / kAround;
        points.emplace_back(
            middle + kRingRadius * (std::cos(turn) * axes.across + std::sin(turn) * axes.up));
    }
    return points;
}

/// Cell middles of a grid; of a round face those within it.
std::vector<Vec3> grid_points(const Vec3& middle, const HalfAxes& axes, int across, bool round) {
    std::vector<Vec3> points;
    for (int row = 0; row < across; ++row) {
        for (int column = 0; column < across; ++column) {
            const double x = (2.0 * column + 1.0) / across - 1.0;
            const double y = (2.0 * row + 1.0) / across - 1.0;
            if (!round || x * x + y * y <= 1.0) {
                points.emplace_back(middle + x * axes.across + y * axes.up);
            }
        }
    }
    return points;
}

} // namespace

std::vector<Vec3> face_points(const PlacedLamp& lamp, const Vec3& receiver, bool fine) {
    const HalfAxes axes = half_axes(lamp, receiver);
    const bool round = lamp.instrument->round_face;
    if (lamp.instrument->soft) {
        return grid_points(lamp.face, axes, fine ? kFineAcross : kCoarseAcross, round);
    }
    if (!fine) {
        return {lamp.face};
    }
    return round ? ring_points(lamp.face, axes) : grid_points(lamp.face, axes, 3, false);
}

std::optional<photometry::SoftPanel> panel_of(const PlacedLamp& lamp) {
    if (!lamp.instrument->soft) {
        return std::nullopt;
    }
    photometry::SoftPanel panel =
        photometry::soft_panel(*lamp.instrument, lamp.beam.peak_cd, lamp.face, lamp.axis);
    panel.up = lamp.up;
    return panel;
}

bool is_narrowed(const PlacedLamp& lamp) {
    return lamp.beam.beam < kDiffuseBeam;
}

double narrowing_at(const PlacedLamp& lamp, Angle off_axis) {
    const double diffuse_cd = lamp.beam.peak_cd * std::cos(off_axis.rad());
    if (!is_narrowed(lamp) || diffuse_cd <= 0.0) {
        return 1.0;
    }
    return std::min(1.0, photometry::intensity_cd(lamp.beam, off_axis) / diffuse_cd);
}

bool passes_cut(const PlacedLamp& lamp, const Vec3& direction) {
    if (lamp.cut.is_open()) {
        return true;
    }
    const double half_field_rad = lamp.beam.field.rad() / 2.0;
    const double ahead = direction.dot(lamp.axis);
    const double across_rad = std::atan2(direction.dot(lamp.right), ahead);
    const double up_rad = std::atan2(direction.dot(lamp.up), ahead);
    const auto is_within = [&](double angle_rad, double cut) {
        return cut == 0.0 || angle_rad <= (1.0 - cut) * half_field_rad;
    };
    return is_within(up_rad, lamp.cut.top) && is_within(-up_rad, lamp.cut.bottom)
           && is_within(across_rad, lamp.cut.right) && is_within(-across_rad, lamp.cut.left);
}

} // namespace throwline::stage
