#include "checks/framing.h"
#include "checks/light_checks.h"
#include "checks/light_text.h"
#include "checks/wording.h"
#include "photometry/ratio.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// How far from the wanted ratio a face may be, in stops (common practice, no source).
constexpr double kAllowedStops = 1.0;

double level_by_role(const MarkLight& mark, const stage::Stage& stage, plan::LampRole role) {
    double level = 0.0;
    for (const LampAtMark& at : mark.lamps) {
        if (stage.lamps[static_cast<std::size_t>(at.lamp)].role == role) {
            level += at.facing_lx;
        }
    }
    return level;
}

Finding off_ratio(const CheckInput& input, const ShotScene& scene, const MarkLight& mark) {
    const double wanted = input.plan.targets.lighting_ratio;
    Finding finding = finding_in(scene, "lighting-ratio", Severity::caution);
    finding.things = {mark.person.name};
    finding.at = floor_of(mark.face);
    finding.weight = mark.ratio ? std::abs(std::log2(*mark.ratio / wanted)) : 5.0;
    const std::string got = mark.ratio ? fixed(*mark.ratio, 1) + ":1" : "without fill";
    finding.message =
        fmt::format("The lighting ratio on the face of {} {} is {}; the plan asks for {}:1.",
                    mark.person.name, in_shot(*scene.shot, scene.beat->id), got, fixed(wanted, 1));
    finding.working = photometry::lighting_ratio_working(
        {level_by_role(mark, scene.stage, plan::LampRole::key),
         level_by_role(mark, scene.stage, plan::LampRole::fill)});
    return finding;
}

} // namespace

std::vector<Finding> lighting_ratio(const CheckInput& input, const std::stop_token& stop) {
    const double wanted = input.plan.targets.lighting_ratio;
    if (wanted <= 0.0) {
        return {};
    }
    return over_shots(input, stop, [&](const ShotScene& scene, const stage::ShotView&, auto& out) {
        for (const MarkLight& mark : light_at_marks(input, scene)) {
            const bool near =
                mark.ratio && std::abs(std::log2(*mark.ratio / wanted)) <= kAllowedStops;
            if (mark.facing_lx > 0.0 && !near) {
                out.push_back(off_ratio(input, scene, mark));
            }
        }
    });
}

} // namespace throwline::checks
