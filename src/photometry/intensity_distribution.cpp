#include "photometry/intensity_distribution.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::photometry {

IntensityDistribution::IntensityDistribution(const BeamModel& model) {
    if (model.beam.rad() > 0.0) {
        peak_cd_ = model.peak_cd;
        half_beam_rad_ = model.beam.rad() / 2.0;
        exponent_ = edge_exponent(model);
    }
}

double IntensityDistribution::at_angle_cd(double off_axis_rad) const {
    return peak_cd_ * std::exp2(-std::pow(off_axis_rad / half_beam_rad_, exponent_));
}

double IntensityDistribution::toward_cd(const Vec3& axis, const Vec3& direction) const {
    const double lengths = axis.norm() * direction.norm();
    if (lengths == 0.0) {
        return 0.0;
    }
    return at_angle_cd(std::acos(std::clamp(axis.dot(direction) / lengths, -1.0, 1.0)));
}

double IntensityDistribution::half_angle_rad(double share) const {
    if (share <= 0.0) {
        return std::numbers::pi;
    }
    if (share >= 1.0) {
        return 0.0;
    }
    return std::min(std::numbers::pi,
                    half_beam_rad_ * std::pow(-std::log2(share), 1.0 / exponent_));
}

} // namespace throwline::photometry
