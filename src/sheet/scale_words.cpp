#include "sheet/scale_words.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::sheet {

namespace {

/// Nearer than this nobody can tell with a scale rule.
constexpr double kExact = 1e-4;
/// A drawing this far off is still called by the scale, as a share. The inch scales lie close
/// together, and a ratio says little to who draws in them.
constexpr double kNearMetric = 0.1;
constexpr double kNearInches = 0.25;

/// Two figures: 63, 630, 6.3.
std::string own_ratio(double ratio) {
    const double step = std::pow(10.0, std::floor(std::log10(ratio)) - 1.0);
    return fmt::format("1:{:g}", std::round(ratio / step) * step);
}

} // namespace

std::string scale_words(double ratio, UnitSystem system, const catalogue::Catalogue& catalogue) {
    const catalogue::DrawingScale* nearest = nullptr;
    double least = system == UnitSystem::metric ? kNearMetric : kNearInches;
    for (const catalogue::DrawingScale& scale : catalogue.scales) {
        const double off = std::abs(std::log(scale.ratio / ratio));
        if (scale.system == system && off < least) {
            least = off;
            nearest = &scale;
        }
    }
    if (nearest == nullptr) {
        return "about " + own_ratio(ratio);
    }
    return least < kExact ? nearest->name : "about " + nearest->name;
}

} // namespace throwline::sheet
