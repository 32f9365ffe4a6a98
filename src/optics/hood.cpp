#include "optics/hood.h"

#include <algorithm>
#include <cmath>

namespace throwline::optics {

HoodShade hood_shade(const Hood& hood) {
    // atan2 gives 90 degrees for a hood without length, as it should.
    const double spare_m = std::max(0.0, (hood.opening_radius - hood.glass_radius).m());
    const double reach_m = (hood.opening_radius + hood.glass_radius).m();
    const Angle begins = hood.length.m() > 0.0
                             ? Angle::radians(std::atan2(spare_m, hood.length.m()))
                             : Angle::degrees(90.0);
    return {begins, Angle::radians(std::atan2(reach_m, hood.length.m()))};
}

double veiled_contrast(double light_cd_m2, double dark_cd_m2, double veil_cd_m2) {
    return (light_cd_m2 + veil_cd_m2) / (dark_cd_m2 + veil_cd_m2);
}

} // namespace throwline::optics
