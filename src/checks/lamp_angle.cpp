#include "checks/framing.h"
#include "checks/light_checks.h"
#include "checks/light_text.h"
#include "checks/wording.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// The lamp of a role that does most at the mark: by the level square to it, since a back light
/// gives nothing on the plane of the face.
const LampAtMark* strongest(const MarkLight& mark, const stage::Stage& stage, plan::LampRole role) {
    const LampAtMark* best = nullptr;
    double most = 0.0;
    for (const LampAtMark& at : mark.lamps) {
        const bool fits = stage.lamps[static_cast<std::size_t>(at.lamp)].role == role;
        const double square = at.light.level_square_lx();
        if (fits && at.in_beam && at.direction && square > most) {
            most = square;
            best = &at;
        }
    }
    return best;
}

/// "34° to camera right": azimuth from the direction to the camera, positive at camera right.
std::string side_text(Angle azimuth) {
    const std::string turn = degrees_text(Angle::radians(std::abs(azimuth.rad())), 0);
    return turn + (azimuth.rad() >= 0.0 ? " to camera right" : " to camera left");
}

Finding unusual(const ShotScene& scene, const MarkLight& mark, const LampAtMark& at,
                photometry::PlacementWarning warning) {
    const stage::PlacedLamp& lamp = scene.stage.lamps[static_cast<std::size_t>(at.lamp)];
    Finding finding = finding_in(scene, "lamp-angle", Severity::note);
    finding.things = {lamp.lamp.name, mark.person.name};
    finding.at = floor_of(lamp.point);
    finding.weight = 0.1;
    finding.message = capitalised(
        fmt::format("{} on {} {}: {} ({}, {} up).", said(lamp.lamp), mark.person.name,
                    in_shot(*scene.shot, scene.beat->id), photometry::sentence_of(warning),
                    side_text(at.direction->azimuth), degrees_text(at.direction->elevation, 0)));
    finding.working =
        photometry::lamp_direction_working(mark.face, scene.view->pose.lens, lamp.face);
    return finding;
}

void judge(std::vector<Finding>& findings, const ShotScene& scene, const MarkLight& mark) {
    const LampAtMark* key = strongest(mark, scene.stage, plan::LampRole::key);
    const std::optional<photometry::LampDirection> key_direction =
        key == nullptr ? std::nullopt : key->direction;
    for (const plan::LampRole role :
         {plan::LampRole::key, plan::LampRole::fill, plan::LampRole::back}) {
        const LampAtMark* at = strongest(mark, scene.stage, role);
        if (at == nullptr) {
            continue;
        }
        for (const photometry::PlacementWarning warning :
             photometry::placement_warnings(role, *at->direction, key_direction)) {
            findings.push_back(unusual(scene, mark, *at, warning));
        }
    }
}

} // namespace

std::vector<Finding> lamp_angle(const CheckInput& input, const std::stop_token& stop) {
    return over_shots(input, stop, [&](const ShotScene& scene, const stage::ShotView&, auto& out) {
        for (const MarkLight& mark : light_at_marks(input, scene)) {
            judge(out, scene, mark);
        }
    });
}

} // namespace throwline::checks
