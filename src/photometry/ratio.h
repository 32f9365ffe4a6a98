#pragma once

#include "base/working.h"

#include <optional>

namespace throwline::photometry {

/// Levels on the face from key and fill alone, each measured by itself.
struct KeyAndFill {
    double key_lx = 0.0;
    double fill_lx = 0.0;
};

/// (key + fill) : fill, the sum on the bright side over the shadow side. Empty without fill.
std::optional<double> lighting_ratio(const KeyAndFill& levels);
/// key : fill, as some write it. Empty without fill.
std::optional<double> key_to_fill(const KeyAndFill& levels);
/// A ratio (> 0) in stops: log2.
double ratio_stops(double ratio);

Working lighting_ratio_working(const KeyAndFill& levels);

} // namespace throwline::photometry
