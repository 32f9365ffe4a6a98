#include "stage/light_at.h"

#include "photometry/intensity_distribution.h"
#include "stage/lamp_face.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace throwline::stage {

namespace {

/// Nearer than this the receiver is in the lamp, and no level means anything.
constexpr double kInsideLamp_m = 0.01;

const PlacedLamp& lamp_at(const Stage& stage, int lamp) {
    return stage.lamps[static_cast<std::size_t>(lamp)];
}

Angle off_axis_of(const PlacedLamp& lamp, const Vec3& receiver) {
    const Vec3 towards = receiver - lamp.face;
    return Angle::radians(std::atan2(lamp.axis.cross(towards).norm(), lamp.axis.dot(towards)));
}

/// What of the face is left by the barn doors, and what stands before it.
void look_at_face(LampLight& light, const Stage& stage, const PlacedLamp& lamp,
                  int receiver_owner) {
    const std::vector<Vec3> points = face_points(lamp, light.receiver, true);
    std::vector<Segment> passed;
    for (const Vec3& point : points) {
        if (passes_cut(lamp, light.receiver - point)) {
            passed.push_back({light.receiver, point});
        }
    }
    const auto hits = stage.rays->firsts_between(passed, {lamp.owner, receiver_owner});
    std::map<int, int> hidden_by;
    for (const std::optional<Hit>& hit : hits) {
        if (hit) {
            ++hidden_by[hit->owner];
        }
    }
    const auto whole = static_cast<double>(points.size());
    light.passed_share = static_cast<double>(passed.size()) / whole;
    int hidden = 0;
    for (const auto& [owner, count] : hidden_by) {
        light.blockers.push_back({owner, count / whole});
        hidden += count;
    }
    light.seen_share = (static_cast<double>(passed.size()) - hidden) / whole;
    std::stable_sort(
        light.blockers.begin(), light.blockers.end(),
        [](const LightBlocker& a, const LightBlocker& b) { return a.share > b.share; });
}

double whole_level_lx(const LampLight& light, const Vec3& normal) {
    if (light.panel) {
        return light.narrowing
               * photometry::soft_illuminance_lx(*light.panel, light.receiver, normal);
    }
    const double cosine = light.to_lamp.dot(normal);
    if (cosine <= 0.0 || light.throw_m < kInsideLamp_m) {
        return 0.0;
    }
    return light.intensity_cd * cosine / (light.throw_m * light.throw_m);
}

/// All but what is in the way.
LampLight unblocked(const Stage& stage, int index, const Vec3& receiver) {
    const PlacedLamp& lamp = lamp_at(stage, index);
    LampLight light;
    light.lamp = index;
    light.receiver = receiver;
    const Vec3 towards = lamp.face - receiver;
    light.throw_m = towards.norm();
    if (light.throw_m > 0.0) {
        light.to_lamp = towards / light.throw_m;
    }
    light.off_axis = off_axis_of(lamp, receiver);
    light.panel = panel_of(lamp);
    light.narrowing = light.panel ? narrowing_at(lamp, light.off_axis) : 1.0;
    light.intensity_cd = photometry::intensity_cd(lamp.beam, light.off_axis);
    return light;
}

/// A lamp made ready for the many points of a map: nothing is worked out twice, and what lies
/// outside the cone of its light costs next to nothing.
class MapLamp {
  public:
    explicit MapLamp(const PlacedLamp& lamp)
        : lamp_{lamp}, distribution_{lamp.beam}, panel_{panel_of(lamp)},
          least_cosine_{std::cos(distribution_.half_angle_rad(kDarkShare))},
          reach_m_{Vec2{lamp.instrument->face_width.m(), lamp.instrument->face_height.m()}.norm()
                   / 2.0} {
        if (panel_) {
            corners_ = photometry::face_corners(*panel_, kMapSides);
        }
        if (!is_all_round(lamp)) {
            face_ = face_points(lamp, Vec3::Zero(), false);
        }
    }

    /// Where rays to the lamp end: on faces that look one way always in the same points.
    const std::vector<Vec3>& face_towards(const Vec3& receiver) {
        if (is_all_round(lamp_)) {
            face_ = face_points(lamp_, receiver, false);
        }
        return face_;
    }

    double level_lx(const Vec3& receiver, const Vec3& normal, double darkest_lx) const {
        const Vec3 away = receiver - lamp_.face;
        const double throw_m = away.norm();
        const double ahead = away.dot(lamp_.axis);
        if (throw_m < kInsideLamp_m || ahead < least_cosine_ * throw_m
            || is_too_far(throw_m, darkest_lx)) {
            return 0.0;
        }
        if (panel_) {
            const bool is_behind = ahead <= 0.0 || away.dot(normal) >= reach_m_;
            return is_behind ? 0.0 : soft_level_lx(receiver, normal);
        }
        const double cosine = -away.dot(normal) / throw_m;
        return cosine > 0.0
                   ? distribution_.toward_cd(lamp_.axis, away) * cosine / (throw_m * throw_m)
                   : 0.0;
    }

  private:
    /// Shares of the peak that no map shows.
    static constexpr double kDarkShare = 1e-6;
    /// Corners of a round face of the same area: within a thousandth of more of them.
    static constexpr int kMapSides = 16;

    /// Whether even straight ahead less than that arrives. From four times its reach on a face
    /// gives hardly more than its peak over the square of the distance to its middle.
    bool is_too_far(double throw_m, double darkest_lx) const {
        constexpr double kNearer = 1.2;
        return throw_m > 4.0 * reach_m_
               && kNearer * distribution_.peak_cd() < darkest_lx * throw_m * throw_m;
    }

    double soft_level_lx(const Vec3& receiver, const Vec3& normal) const {
        const double narrowing =
            is_narrowed(lamp_) ? narrowing_at(lamp_, off_axis_of(lamp_, receiver)) : 1.0;
        return narrowing
               * photometry::polygon_illuminance_lx(panel_->luminance_cd_m2, corners_, receiver,
                                                    normal);
    }

    const PlacedLamp& lamp_;
    photometry::IntensityDistribution distribution_;
    std::optional<photometry::SoftPanel> panel_;
    std::vector<Vec3> corners_;
    double least_cosine_;
    /// From the middle of the face to its farthest corner.
    double reach_m_;
    std::vector<Vec3> face_;
};

/// Rays from one receiver of a map to the parts of the face that light it.
struct MapPoint {
    std::size_t index = 0;
    std::size_t first_ray = 0;
    std::size_t ray_count = 0;
    double level_per_ray_lx = 0.0;
};

} // namespace

double LampLight::open_level_lx(const Vec3& normal) const {
    return passed_share * whole_level_lx(*this, normal);
}

double LampLight::level_lx(const Vec3& normal) const {
    return seen_share * whole_level_lx(*this, normal);
}

LampLight light_from(const Stage& stage, int lamp, const Vec3& receiver, int receiver_owner) {
    LampLight light = unblocked(stage, lamp, receiver);
    look_at_face(light, stage, lamp_at(stage, lamp), receiver_owner);
    return light;
}

std::vector<LampLight> light_at(const Stage& stage, const Vec3& receiver, int receiver_owner) {
    std::vector<LampLight> lights;
    for (std::size_t i = 0; i < stage.lamps.size(); ++i) {
        lights.push_back(light_from(stage, static_cast<int>(i), receiver, receiver_owner));
    }
    return lights;
}

double sum_open_level_lx(std::span<const LampLight> lights, const Vec3& normal) {
    double sum_lx = 0.0;
    for (const LampLight& light : lights) {
        sum_lx += light.open_level_lx(normal);
    }
    return sum_lx;
}

double sum_level_lx(std::span<const LampLight> lights, const Vec3& normal) {
    double sum_lx = 0.0;
    for (const LampLight& light : lights) {
        sum_lx += light.level_lx(normal);
    }
    return sum_lx;
}

std::vector<double> levels_from(const Stage& stage, int index, std::span<const Vec3> points,
                                std::span<const Vec3> normals, double darkest_lx) {
    const PlacedLamp& lamp = lamp_at(stage, index);
    MapLamp map_lamp{lamp};
    std::vector<double> levels(points.size(), 0.0);
    std::vector<MapPoint> lit;
    std::vector<Segment> rays;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double level_lx =
            map_lamp.level_lx(points[i], normals[normals.size() == 1 ? 0 : i], darkest_lx);
        if (level_lx < darkest_lx) {
            continue;
        }
        const std::vector<Vec3>& face = map_lamp.face_towards(points[i]);
        MapPoint point{i, rays.size(), 0, level_lx / static_cast<double>(face.size())};
        for (const Vec3& on_face : face) {
            if (passes_cut(lamp, points[i] - on_face)) {
                rays.push_back({points[i], on_face});
            }
        }
        point.ray_count = rays.size() - point.first_ray;
        lit.push_back(point);
    }
    const std::vector<bool> blocked = stage.rays->blocked(rays, {lamp.owner, -1});
    for (const MapPoint& point : lit) {
        for (std::size_t ray = 0; ray < point.ray_count; ++ray) {
            levels[point.index] += blocked[point.first_ray + ray] ? 0.0 : point.level_per_ray_lx;
        }
    }
    return levels;
}

} // namespace throwline::stage
