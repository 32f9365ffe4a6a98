#include "checks/light_text.h"

#include "checks/wording.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

constexpr double kLuxPerFootCandle = 1.0 / (0.3048 * 0.3048);

} // namespace

std::string level_text(double illuminance_lx, UnitSystem units) {
    const bool imperial = units == UnitSystem::imperial;
    const double shown_level = imperial ? illuminance_lx / kLuxPerFootCandle : illuminance_lx;
    return fixed(shown_level, shown_level < 10.0 ? 1 : 0) + (imperial ? " fc" : " lx");
}

std::string intensity_text(double intensity_cd) {
    return fixed(intensity_cd, 0) + " cd";
}

std::vector<WorkingTerm> lamp_terms(const MarkLight& mark, const stage::Stage& stage,
                                    UnitSystem units) {
    std::vector<const LampAtMark*> order;
    for (const LampAtMark& at : mark.lamps) {
        if (at.facing_lx > 0.01 * mark.facing_lx) {
            order.push_back(&at);
        }
    }
    std::stable_sort(order.begin(), order.end(), [](const LampAtMark* a, const LampAtMark* b) {
        return a->facing_lx > b->facing_lx;
    });
    std::vector<WorkingTerm> terms;
    for (const LampAtMark* at : order) {
        const stage::PlacedLamp& lamp = stage.lamps[static_cast<std::size_t>(at->lamp)];
        terms.push_back(
            {said(lamp.lamp),
             fmt::format("{}, throw {}, {} off axis, {}, {} of its face seen",
                         photometry::name_of(lamp.role),
                         shown(Length::metres(at->light.throw_m), units),
                         degrees_text(at->light.off_axis, 0),
                         intensity_text(at->light.intensity_cd), share_text(at->light.seen_share)),
             level_text(at->facing_lx, units)});
    }
    return terms;
}

std::string blockers_text(const stage::Stage& stage, const stage::LampLight& light) {
    std::vector<std::string> parts;
    for (const stage::LightBlocker& blocker : light.blockers) {
        const stage::Owner& owner = stage.owners[static_cast<std::size_t>(blocker.owner)];
        parts.push_back(fmt::format("{} {}", said(owner), share_text(blocker.share)));
    }
    return listed(parts);
}

} // namespace throwline::checks
