#pragma once

#include "base/quantity.h"

#include <string>

/// Values as the workings of this room print them.
namespace throwline::optics {

/// "50 mm", "9.59 mm": three decimals at most.
std::string mm_text(Length length);
/// "3.000 m"
std::string distance_text(Length length);

} // namespace throwline::optics
