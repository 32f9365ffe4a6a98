#pragma once

#include "base/quantity.h"

#include <span>

namespace throwline::photometry {

/// One row of an intensity table, round about the axis.
struct IntensityRow {
    Angle off_axis;
    double intensity_cd = 0.0;
};

/// Solid angle between two cones about one axis: 2 pi (cos from - cos to). IES zonal-constant
/// practice, from memory.
double zonal_constant_sr(Angle from, Angle to);

/// Flux of a table with increasing angles, exact for intensity that runs straight between its rows.
double zonal_flux_lm(std::span<const IntensityRow> rows);

} // namespace throwline::photometry
