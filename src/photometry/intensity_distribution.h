#pragma once

#include "base/vec.h"
#include "photometry/beam_model.h"

namespace throwline::photometry {

/// Intensity by direction, made ready for many look-ups. Round about its axis today; callers pass
/// whole directions, so that a measured distribution with planes can stand behind the same calls. A
/// plain value, safe to use from any thread.
class IntensityDistribution {
  public:
    IntensityDistribution() = default;
    /// A beam without an angle sends nothing.
    explicit IntensityDistribution(const BeamModel& model);

    /// Towards an angle off the axis, 0..pi.
    double at_angle_cd(double off_axis_rad) const;
    /// Towards `direction` of a lamp that points along `axis`; neither need be a unit vector. 0
    /// when either is zero.
    double toward_cd(const Vec3& axis, const Vec3& direction) const;
    double peak_cd() const { return peak_cd_; }
    /// Angle off the axis beyond which less than `share` (0..1) of the peak is sent, at most pi.
    double half_angle_rad(double share) const;

  private:
    double peak_cd_ = 0.0;
    double half_beam_rad_ = 1.0;
    double exponent_ = 2.0;
};

} // namespace throwline::photometry
