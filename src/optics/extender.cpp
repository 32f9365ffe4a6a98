#include "optics/extender.h"

#include <cmath>

namespace throwline::optics {

ExtendedLens extended(Length focal, double stop, double factor) {
    return {focal * factor, stop * factor, 2.0 * std::log2(factor)};
}

} // namespace throwline::optics
