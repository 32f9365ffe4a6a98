#include "photometry/ratio.h"

#include "base/length_text.h"
#include "photometry/words.h"

#include <cmath>

namespace throwline::photometry {

std::optional<double> lighting_ratio(const KeyAndFill& levels) {
    if (levels.fill_lx <= 0.0) {
        return std::nullopt;
    }
    return (levels.key_lx + levels.fill_lx) / levels.fill_lx;
}

std::optional<double> key_to_fill(const KeyAndFill& levels) {
    if (levels.fill_lx <= 0.0) {
        return std::nullopt;
    }
    return levels.key_lx / levels.fill_lx;
}

double ratio_stops(double ratio) {
    return std::log2(ratio);
}

Working lighting_ratio_working(const KeyAndFill& levels) {
    const std::optional<double> ratio = lighting_ratio(levels);
    return {"lighting ratio = (key + fill) : fill",
            {{"key", "key alone", lux_text(levels.key_lx)},
             {"fill", "fill alone", lux_text(levels.fill_lx)}},
            ratio ? fixed(*ratio, 1) + ":1" : "none: no fill",
            "common practice, no source"};
}

} // namespace throwline::photometry
