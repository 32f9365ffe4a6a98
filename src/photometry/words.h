#pragma once

#include "base/quantity.h"
#include "base/vec.h"

#include <string>

/// Values as the workings of this room print them.
namespace throwline::photometry {

/// "3.000 m"
std::string distance_text(Length length);
/// "(1.00, 2.00, 3.00) m"
std::string point_text(const Vec3& point);
/// Whole from 100 on, one decimal below: "471 lx", "58.8 lx".
std::string lux_text(double illuminance_lx);
/// "20000 cd"
std::string candela_text(double intensity_cd);

} // namespace throwline::photometry
