#include "stage/light_at.h"

#include "photometry/soft_source.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>

namespace throwline::stage {

namespace {

/// In front of the face, so that the housing behind it is not in the way of its own light.
constexpr double kBeforeFace_m = 0.005;
/// Cells along each side of a soft face: 36 samples put a straight shadow edge within 1/6 of the
/// face.
constexpr int kSoftCells = 6;

bool sends_from_its_face(const PlacedLamp& lamp) {
    return lamp.instrument->soft && lamp.beam.beam.deg() < 180.0;
}

/// Points on the bright face that stand for all of it, in the plane of the face, symmetric about
/// its middle.
std::vector<Vec2> face_pattern(const PlacedLamp& lamp) {
    const double half_width_m = lamp.instrument->face_width.m() / 2.0;
    const double half_height_m = lamp.instrument->face_height.m() / 2.0;
    std::vector<Vec2> points;
    if (!lamp.instrument->soft) {
        // The middle, and a ring that halves the area of a disc.
        points.emplace_back(0.0, 0.0);
        for (int i = 0; i < 8; ++i) {
            const Vec2 ring = unit_at(std::numbers::pi * i / 4.0) * std::numbers::sqrt2 / 2.0;
            points.emplace_back(ring.x() * half_width_m, ring.y() * half_height_m);
        }
        return points;
    }
    for (int row = 0; row < kSoftCells; ++row) {
        for (int column = 0; column < kSoftCells; ++column) {
            const double x = (2.0 * column + 1.0) / kSoftCells - 1.0;
            const double y = (2.0 * row + 1.0) / kSoftCells - 1.0;
            if (!lamp.instrument->round_face || x * x + y * y <= 1.0) {
                points.emplace_back(x * half_width_m, y * half_height_m);
            }
        }
    }
    return points;
}

/// Barn doors and shutters: whether a direction in the lamp's own frame passes between them.
bool passes(const plan::BeamCut& cut, double half_field_rad, double right_rad, double up_rad) {
    return right_rad >= -half_field_rad * (1.0 - cut.left)
           && right_rad <= half_field_rad * (1.0 - cut.right)
           && up_rad <= half_field_rad * (1.0 - cut.top)
           && up_rad >= -half_field_rad * (1.0 - cut.bottom);
}

bool passes_cut(const PlacedLamp& lamp, const Vec3& from_lamp) {
    if (lamp.cut.is_open()) {
        return true;
    }
    const double ahead = from_lamp.dot(lamp.axis);
    return passes(lamp.cut, lamp.beam.field.rad() / 2.0,
                  std::atan2(from_lamp.dot(lamp.right), ahead),
                  std::atan2(from_lamp.dot(lamp.up), ahead));
}

void look_for_blockers(const Stage& stage, const PlacedLamp& lamp, const Vec3& point, int person,
                       LampLight& light) {
    const std::vector<Vec2> pattern = face_pattern(lamp);
    std::map<int, int> hidden_by;
    for (const Vec2& on_face : pattern) {
        const Vec3 from = lamp.face + lamp.right * on_face.x() + lamp.up * on_face.y()
                          + lamp.axis * kBeforeFace_m;
        if (const auto hit = stage.rays->first_between({point, from}, {lamp.owner, person})) {
            ++hidden_by[hit->owner];
        }
    }
    const double count = static_cast<double>(pattern.size());
    int hidden = 0;
    for (const auto& [owner, times] : hidden_by) {
        light.blockers.push_back({owner, times / count});
        hidden += times;
    }
    std::stable_sort(light.blockers.begin(), light.blockers.end(),
                     [](const Blocker& a, const Blocker& b) { return a.share > b.share; });
    light.seen_share = 1.0 - hidden / count;
}

/// How far a soft lamp falls below a bare diffuse face in a direction: an egg-crate in front of it.
double narrowing(const PlacedLamp& lamp, const LampLight& light) {
    const double diffuse_cd = lamp.beam.peak_cd * std::cos(light.off_axis.rad());
    return diffuse_cd > 0.0 ? std::min(1.0, light.intensity_cd / diffuse_cd) : 0.0;
}

} // namespace

std::vector<LampLight> light_at(const Stage& stage, const Vec3& point, int person) {
    std::vector<LampLight> all;
    all.reserve(stage.lamps.size());
    for (std::size_t i = 0; i < stage.lamps.size(); ++i) {
        const PlacedLamp& lamp = stage.lamps[i];
        LampLight& light = all.emplace_back();
        light.lamp = static_cast<int>(i);
        const Vec3 to_lamp = lamp.face - point;
        light.throw_m = to_lamp.norm();
        if (light.throw_m <= kRayOffset_m) {
            continue;
        }
        light.towards = to_lamp / light.throw_m;
        light.off_axis =
            Angle::radians(std::acos(std::clamp(-light.towards.dot(lamp.axis), -1.0, 1.0)));
        if (passes_cut(lamp, -light.towards)) {
            light.intensity_cd = photometry::intensity_cd(lamp.beam, light.off_axis);
        }
        look_for_blockers(stage, lamp, point, person, light);
    }
    return all;
}

double open_level_lx(const Stage& stage, const LampLight& light, const Vec3& point,
                     const Vec3& normal) {
    const PlacedLamp& lamp = stage.lamps[static_cast<std::size_t>(light.lamp)];
    if (light.intensity_cd <= 0.0) {
        return 0.0;
    }
    if (!sends_from_its_face(lamp)) {
        const double cosine = std::max(0.0, normal.dot(light.towards));
        return light.intensity_cd * cosine / (light.throw_m * light.throw_m);
    }
    const photometry::SoftPanel panel =
        photometry::soft_panel(*lamp.instrument, lamp.beam.peak_cd, lamp.face, lamp.axis);
    return photometry::soft_illuminance_lx(panel, point, normal) * narrowing(lamp, light);
}

double level_lx(const Stage& stage, const LampLight& light, const Vec3& point, const Vec3& normal) {
    return light.seen_share * open_level_lx(stage, light, point, normal);
}

} // namespace throwline::stage
