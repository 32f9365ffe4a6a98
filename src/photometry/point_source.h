#pragma once

#include "base/quantity.h"
#include "base/vec.h"
#include "base/working.h"
#include "photometry/intensity_distribution.h"

namespace throwline::photometry {

/// A lamp small enough against its throw to act from one point.
struct PointLamp {
    Vec3 place = Vec3::Zero();
    /// Where it points; any length but zero.
    Vec3 axis = -Vec3::UnitZ();
    IntensityDistribution distribution;
};

/// E = I cos(i) / d^2; `incidence` from the receiver's normal. 0 from behind (cos <= 0). distance >
/// 0. Inverse-square and cosine law, plain geometry.
double illuminance_lx(double intensity_cd, Length distance, Angle incidence);

/// At a point on a surface with a normal (unit vector towards the lit side). 0 at the lamp itself.
double illuminance_lx(const PointLamp& lamp, const Vec3& point, const Vec3& normal);

/// On a horizontal surface that looks up.
double horizontal_lx(const PointLamp& lamp, const Vec3& point);
/// On a vertical surface turned to the lamp on the plan; 0 straight below or above it.
double facing_lx(const PointLamp& lamp, const Vec3& point);

/// Reading of a hemispherical receptor over that of one square to the light: (1 + cos angle) / 2.
/// From memory: ISO 2720.
double hemispherical_response(Angle from_axis);

/// 1 foot-candle = 1 lm/ft^2 = 1 / 0.3048^2 lx exactly.
double foot_candles(double illuminance_lx);
double lux_from_foot_candles(double foot_candles);

Working illuminance_working(double intensity_cd, Length distance, Angle incidence);

} // namespace throwline::photometry
