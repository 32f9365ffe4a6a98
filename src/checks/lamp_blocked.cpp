#include "checks/light_checks.h"
#include "checks/light_text.h"
#include "checks/wording.h"

#include <fmt/format.h>
#include <set>

namespace throwline::checks {

namespace {

/// A little off a soft face's edge is not seen on anybody; a tenth is.
constexpr double kNoticedShare = 0.1;
constexpr double kHalfGone = 0.5;

struct Search {
    const CheckInput& input;
    std::vector<Finding> findings;
    /// lamp | person | beat, so that a beat's blocked beam is told once and not for every shot of
    /// it.
    std::set<std::string> said;
};

bool lights_people(plan::LampRole role) {
    return role == plan::LampRole::key || role == plan::LampRole::fill
           || role == plan::LampRole::back;
}

Working blocked_working(const stage::Stage& stage, const stage::PlacedLamp& lamp,
                        const stage::LampLight& light, UnitSystem units) {
    const double open = light.open_level_square_lx();
    return {"share seen = rays from the face to the bright face that nothing stops / all rays",
            {{"", "throw", shown(Length::metres(light.throw_m), units)},
             {"", "off axis", degrees_text(light.off_axis, 0)},
             {"", "half of the beam", degrees_text(lamp.beam.beam / 2.0, 0)},
             {"", "square to the lamp, open", level_text(open, units)},
             {"", "hidden by", blockers_text(stage, light)}},
            share_text(light.seen_share) + " seen, " + level_text(light.level_square_lx(), units),
            "plain geometry"};
}

void judge(Search& search, const stage::Stage& stage, const stage::Figure& figure,
           const stage::LampLight& light, const plan::Id<plan::Shot>& shot) {
    const stage::PlacedLamp& lamp = stage.lamps[static_cast<std::size_t>(light.lamp)];
    const double hidden =
        light.passed_share > 0.0 ? 1.0 - light.seen_share / light.passed_share : 0.0;
    const bool meant = light.intensity_cd > 0.0 && light.off_axis <= lamp.beam.beam / 2.0;
    if (!lights_people(lamp.role) || !meant || hidden < kNoticedShare
        || !search.said.insert(lamp.lamp.name + "|" + figure.person.name + "|" + stage.beat.name)
                .second) {
        return;
    }
    const bool key = lamp.role == plan::LampRole::key;
    Finding& finding = search.findings.emplace_back();
    finding.check = "beam-blocked";
    finding.severity = key && hidden >= kHalfGone ? Severity::error : Severity::caution;
    finding.shot = shot;
    finding.beat = stage.beat;
    finding.things = {lamp.lamp.name, figure.person.name};
    for (const stage::LightBlocker& blocker : light.blockers) {
        finding.things.push_back(stage.owners[static_cast<std::size_t>(blocker.owner)].name);
    }
    finding.at = floor_of(figure.face);
    finding.weight = hidden;
    finding.message = capitalised(fmt::format(
        "{} of {} is hidden from the face of {} in {}: {}.", share_text(hidden), said(lamp.lamp),
        figure.person.name, said(stage.beat), blockers_text(stage, light)));
    finding.working = blocked_working(stage, lamp, light, search.input.plan.units);
}

void look(Search& search, const stage::Stage& stage, const plan::Id<plan::Shot>& shot) {
    for (const stage::Figure& figure : stage.figures) {
        if (figure.kind != plan::PersonKind::cast) {
            continue;
        }
        for (const stage::LampLight& light : stage::light_at(stage, figure.face, figure.owner)) {
            judge(search, stage, figure, light, shot);
        }
    }
}

} // namespace

std::vector<Finding> lamp_blocked(const CheckInput& input, const std::stop_token& stop) {
    Search search{input, {}, {}};
    for (const BeatScene& beat : input.beats) {
        if (!stop.stop_requested()) {
            look(search, beat.stage, {});
        }
    }
    for (const ShotScene& shot : input.shots) {
        if (!stop.stop_requested()) {
            look(search, shot.stage, shot.shot->id);
        }
    }
    return std::move(search.findings);
}

} // namespace throwline::checks
