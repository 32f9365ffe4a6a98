#pragma once

#include "base/quantity.h"

namespace throwline::optics {

/// A lens as it acts behind an extender.
struct ExtendedLens {
    Length focal;
    double stop = 0.0;
    /// Light lost to the extender, in stops.
    double lost_stops = 0.0;
};

/// Focal length and stop number both grow by `factor` (> 0); the light falls by 2 log2(factor)
/// stops. Plain geometry: the same entrance pupil spread over factor^2 the area.
ExtendedLens extended(Length focal, double stop, double factor);

} // namespace throwline::optics
