#pragma once

#include "base/quantity.h"
#include "base/working.h"

#include <string>

namespace throwline::sun {

enum class Sky { clear, partly_cloudy, overcast };
std::string name_of(Sky sky);

/// Rough level of the direct sun; real values may be half or twice. Skylight comes on top and is
/// not modelled.
struct DirectBeam {
    /// Square to the sun.
    double normal_lx = 0.0;
    /// On level ground.
    double horizontal_lx = 0.0;
};

/// 127 500 lx (1 + 0.034 cos(2 pi (day - 2) / 365)) exp(-c / sin h), c = 0.21 clear, 0.80 partly
/// cloudy, no beam when overcast or with the sun not above the horizon. IESNA daylight equations,
/// as quoted by users. day_of_year 1..366.
DirectBeam direct_beam(int day_of_year, Angle elevation, Sky sky);

Working direct_beam_working(int day_of_year, Angle elevation, Sky sky);

} // namespace throwline::sun
