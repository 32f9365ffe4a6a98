#include "checks/framing.h"
#include "checks/light_checks.h"
#include "checks/light_text.h"
#include "checks/wording.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// So far under the stop that a face counts as unlit: three stops are an eighth of the light.
constexpr double kUnlitStops = -3.0;

Working level_working(const MarkLight& mark, const ShotScene& scene, const CheckInput& input) {
    const UnitSystem units = input.plan.units;
    const plan::Camera* camera = plan::find(input.plan, scene.shot->camera);
    Working working{
        "level on the face, turned to the camera = sum over the lamps of I cos i / d² x "
        "share seen (soft faces: Lambert's polygon formula); needed = C N² / (S t)",
        lamp_terms(mark, scene.stage, units),
        level_text(mark.facing_lx, units) + " on the face, " + level_text(mark.horizontal_lx, units)
            + " horizontally",
        "inverse square and cosine laws; ISO 2720:1974 incident form, from memory"};
    working.inputs.push_back({"C", "meter constant", fixed(input.plan.targets.meter_constant, 0)});
    working.inputs.push_back({"N", "stop", stop_text(scene.view->stop)});
    working.inputs.push_back({"S", "speed", "ISO " + fixed(camera->iso, 0)});
    working.inputs.push_back({"t", "exposure time", fixed(camera->exposure_s, 4) + " s"});
    working.inputs.push_back({"", "needed", level_text(mark.needed_lx, units)});
    return working;
}

std::string verdict(const MarkLight& mark, const ShotScene& scene, UnitSystem units) {
    const std::string where = in_shot(*scene.shot, scene.beat->id);
    if (!mark.stops_over) {
        return fmt::format("No lamp reaches the face of {} {}.", mark.person.name, where);
    }
    return fmt::format("The face of {} gets {} {}, {} {} the {} that {} asks for.",
                       mark.person.name, level_text(mark.facing_lx, units), where,
                       stops_text(std::abs(*mark.stops_over)),
                       *mark.stops_over < 0.0 ? "under" : "over", level_text(mark.needed_lx, units),
                       stop_text(scene.view->stop));
}

void judge(std::vector<Finding>& findings, const MarkLight& mark, const ShotScene& scene,
           const CheckInput& input) {
    const double allowed = input.plan.targets.exposure_tolerance_stops;
    if (mark.stops_over && std::abs(*mark.stops_over) <= allowed) {
        return;
    }
    const bool unlit = !mark.stops_over || *mark.stops_over <= kUnlitStops;
    Finding finding = finding_in(scene, "light-level", unlit ? Severity::error : Severity::caution);
    finding.things = {mark.person.name};
    finding.at = floor_of(mark.face);
    finding.weight = mark.stops_over ? std::abs(*mark.stops_over) : 10.0;
    finding.message = verdict(mark, scene, input.plan.units);
    finding.working = level_working(mark, scene, input);
    findings.push_back(std::move(finding));
}

} // namespace

std::vector<Finding> level_at_marks(const CheckInput& input, const std::stop_token& stop) {
    if (input.plan.lamps.empty()) {
        return {};
    }
    return over_shots(input, stop, [&](const ShotScene& scene, const stage::ShotView&, auto& out) {
        for (const MarkLight& mark : light_at_marks(input, scene)) {
            judge(out, mark, scene, input);
        }
    });
}

} // namespace throwline::checks
