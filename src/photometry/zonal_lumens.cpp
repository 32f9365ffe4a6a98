#include "photometry/zonal_lumens.h"

#include <cmath>
#include <numbers>

namespace throwline::photometry {

namespace {

/// 2 pi times the integral of (c0 + k a) sin a over one step of the table.
double step_flux_lm(const IntensityRow& from, const IntensityRow& to) {
    const double a = from.off_axis.rad();
    const double b = to.off_axis.rad();
    if (b <= a) {
        return 0.0;
    }
    const double slope = (to.intensity_cd - from.intensity_cd) / (b - a);
    const double start = from.intensity_cd - slope * a;
    const double moment = (std::sin(b) - b * std::cos(b)) - (std::sin(a) - a * std::cos(a));
    return 2.0 * std::numbers::pi * (start * (std::cos(a) - std::cos(b)) + slope * moment);
}

} // namespace

double zonal_constant_sr(Angle from, Angle to) {
    return 2.0 * std::numbers::pi * (std::cos(from.rad()) - std::cos(to.rad()));
}

double zonal_flux_lm(std::span<const IntensityRow> rows) {
    double flux = 0.0;
    for (std::size_t i = 1; i < rows.size(); ++i) {
        flux += step_flux_lm(rows[i - 1], rows[i]);
    }
    return flux;
}

} // namespace throwline::photometry
