#include "sheet/lit_reading.h"

#include "checks/light_text.h"
#include "checks/wording.h"
#include "sheet/lit_levels.h"
#include "stage/light_at.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::sheet {

namespace {

/// A film or a sensor tells nothing apart this far under.
constexpr double kNoLightStops = -10.0;
/// Meters read in tenths; closer than half of one is what was asked for.
constexpr double kTenths = 10.0;

} // namespace

FrameSurface surface_at(const stage::Stage& stage, const stage::ShotView& view, const Vec2& at) {
    return surface_along(stage, view, view.frame.ray_direction(at));
}

double level_on_lx(const stage::Stage& stage, const FrameSurface& surface) {
    double level_lx = 0.0;
    if (surface.owner < 0) {
        return level_lx;
    }
    const Vec3 point = lifted(surface);
    for (std::size_t i = 0; i < stage.lamps.size(); ++i) {
        if (stage.lamps[i].beam.peak_cd > 0.0) {
            level_lx +=
                stage::levels_from(stage, static_cast<int>(i), {&point, 1}, {&surface.normal, 1})
                    .front();
        }
    }
    return level_lx;
}

std::string exposed_words(double needed_lx, UnitSystem units) {
    return fmt::format("exposed for {}", checks::level_text(needed_lx, units));
}

std::string level_words(double level_lx, double needed_lx, UnitSystem units) {
    const double over = level_lx > 0.0 ? std::log2(level_lx / needed_lx) : kNoLightStops;
    if (over <= kNoLightStops) {
        return "no light";
    }
    const double tenths = std::round(over * kTenths) / kTenths;
    if (tenths == 0.0) {
        return fmt::format("{}, as the stop asks", checks::level_text(level_lx, units));
    }
    return fmt::format("{}, {} {}", checks::level_text(level_lx, units), checks::stops_text(tenths),
                       tenths < 0.0 ? "under" : "over");
}

} // namespace throwline::sheet
