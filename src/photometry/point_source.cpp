#include "photometry/point_source.h"

#include "base/length_text.h"
#include "photometry/words.h"

#include <algorithm>
#include <cmath>

namespace throwline::photometry {

namespace {

constexpr double kFoot_m = 0.3048;

} // namespace

double illuminance_lx(double intensity_cd, Length distance, Angle incidence) {
    const double cos_incidence = std::max(0.0, std::cos(incidence.rad()));
    return intensity_cd * cos_incidence / (distance.m() * distance.m());
}

double illuminance_lx(const PointLamp& lamp, const Vec3& point, const Vec3& normal) {
    const Vec3 to_point = point - lamp.place;
    const double distance_m = to_point.norm();
    if (distance_m == 0.0) {
        return 0.0;
    }
    const double cos_incidence = std::max(0.0, -normal.dot(to_point) / distance_m);
    return lamp.distribution.toward_cd(lamp.axis, to_point) * cos_incidence
           / (distance_m * distance_m);
}

double horizontal_lx(const PointLamp& lamp, const Vec3& point) {
    return illuminance_lx(lamp, point, Vec3::UnitZ());
}

double facing_lx(const PointLamp& lamp, const Vec3& point) {
    Vec3 normal = lamp.place - point;
    normal.z() = 0.0;
    if (normal.norm() == 0.0) {
        return 0.0;
    }
    return illuminance_lx(lamp, point, normal.normalized());
}

double hemispherical_response(Angle from_axis) {
    return (1.0 + std::cos(from_axis.rad())) / 2.0;
}

double foot_candles(double illuminance_lx) {
    return illuminance_lx * kFoot_m * kFoot_m;
}

double lux_from_foot_candles(double foot_candles) {
    return foot_candles / (kFoot_m * kFoot_m);
}

Working illuminance_working(double intensity_cd, Length distance, Angle incidence) {
    return {"E = I cos i / d^2",
            {{"I", "intensity towards the point", candela_text(intensity_cd)},
             {"d", "distance", distance_text(distance)},
             {"i", "angle from the receiver's normal", degrees_text(incidence)}},
            lux_text(illuminance_lx(intensity_cd, distance, incidence)),
            "plain geometry: inverse-square and cosine law"};
}

} // namespace throwline::photometry
