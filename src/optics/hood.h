#pragma once

#include "base/quantity.h"

namespace throwline::optics {

/// A round hood in front of the front glass.
struct Hood {
    Length opening_radius;
    Length length;
    Length glass_radius;
};

/// Angles off the optical axis between which light on the front glass is cut.
struct HoodShade {
    /// Below this the whole glass is lit.
    Angle begins;
    /// Above this no light reaches the glass.
    Angle complete;
};

/// atan((R - r) / L) and atan((R + r) / L); without length nothing is shaded (both 90 deg). A hood
/// narrower than the glass shades from 0 on. Plain geometry.
HoodShade hood_shade(const Hood& hood);

/// Contrast of two luminances after a veil is added to both: (light + veil) / (dark + veil). dark +
/// veil > 0. Plain algebra.
double veiled_contrast(double light_cd_m2, double dark_cd_m2, double veil_cd_m2);

} // namespace throwline::optics
