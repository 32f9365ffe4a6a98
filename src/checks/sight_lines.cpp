#include "checks/camera_checks.h"
#include "checks/framing.h"
#include "checks/sight.h"
#include "checks/wording.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// Less than this of a body or a face is no picture of the person (own choice).
constexpr double kErrorShare = 0.5;
/// Hiders of less than this are not named: the cell of a ray or two.
constexpr double kNamedShare = 0.005;
/// More names than this make no sentence.
constexpr std::size_t kMostNamed = 3;

std::optional<Severity> severity_of(const Sight& sight, double wanted_share) {
    const double face = sight.face ? sight.face->share : 1.0;
    const double least = std::min(sight.body.share, face);
    const EyesSeen& eyes = sight.eyes;
    if (least < kErrorShare || (eyes.asked > 0 && eyes.seen == 0)) {
        return Severity::error;
    }
    if (least < wanted_share || eyes.seen < eyes.asked) {
        return Severity::caution;
    }
    return sight.turned_away ? std::optional{Severity::note} : std::nullopt;
}

const stage::Owner& owner_of(const ShotScene& scene, int owner) {
    return scene.stage.owners[static_cast<std::size_t>(owner)];
}

std::string hiders_text(const SeenShare& seen, const ShotScene& scene) {
    std::vector<std::string> parts;
    for (const Hider& hider : seen.hiders) {
        if (parts.size() < kMostNamed && (hider.share >= kNamedShare || parts.empty())) {
            parts.push_back(said(owner_of(scene, hider.owner)) + " hides "
                            + share_text(hider.share));
        }
    }
    return parts.empty() ? std::string{} : fmt::format(": {}", listed(parts));
}

std::string eyes_text(const EyesSeen& eyes) {
    if (eyes.seen == eyes.asked) {
        return "";
    }
    return eyes.seen > 0 ? "; only one eye is seen"
                         : (eyes.asked > 1 ? "; neither eye is seen" : "; no eye is seen");
}

std::string message_of(const Sight& sight, const ShotScene& scene, const stage::Figure& figure) {
    const std::string where = in_shot(*scene.shot, scene.beat->id);
    if (sight.turned_away && sight.body.hiders.empty()) {
        return fmt::format("{} has the face turned away from {} {}.",
                           capitalised(said(figure.person)), said(scene.shot->camera), where);
    }
    std::string text = fmt::format(
        "{} sees {} of what it frames of {} {}{}", capitalised(said(scene.shot->camera)),
        share_text(sight.body.share), said(figure.person), where, hiders_text(sight.body, scene));
    if (sight.face && sight.face->share < 1.0) {
        text += "; of the face it sees " + share_text(sight.face->share);
    }
    return text + eyes_text(sight.eyes) + (sight.turned_away ? "; the face is turned away." : ".");
}

void add_thing(std::vector<std::string>& things, const std::string& name) {
    if (std::find(things.begin(), things.end(), name) == things.end()) {
        things.push_back(name);
    }
}

std::vector<std::string> things_of(const Sight& sight, const ShotScene& scene,
                                   const stage::Figure& figure) {
    std::vector<std::string> things;
    for (const Hider& hider : sight.body.hiders) {
        if (hider.share >= kNamedShare) {
            add_thing(things, owner_of(scene, hider.owner).name);
        }
    }
    if (sight.face) {
        for (const Hider& hider : sight.face->hiders) {
            add_thing(things, owner_of(scene, hider.owner).name);
        }
    }
    for (const int owner : sight.eyes.hiders) {
        add_thing(things, owner_of(scene, owner).name);
    }
    add_thing(things, figure.person.name);
    add_thing(things, scene.shot->camera.name);
    return things;
}

Working sight_working(const Sight& sight, double wanted_share) {
    Working working;
    working.formula = "seen = rays that meet the subject first / rays that would meet the subject "
                      "if nothing else were there, inside the frame";
    working.inputs = {{"", "rays on the body", std::to_string(sight.body.rays)},
                      {"", "wanted", share_text(wanted_share)}};
    if (sight.face) {
        working.inputs.push_back({"", "rays on the face", std::to_string(sight.face->rays)});
        working.inputs.push_back({"", "of the face", share_text(sight.face->share)});
    }
    working.inputs.push_back(
        {"", "eyes seen",
         std::to_string(sight.eyes.seen) + " of " + std::to_string(sight.eyes.asked)});
    working.result = share_text(sight.body.share);
    working.source = "plain geometry; the limits are common practice, no source";
    return working;
}

std::optional<Finding> judged(const ShotScene& scene, const stage::ShotView& view,
                              const stage::Figure& figure, double wanted_share) {
    const std::optional<Sight> sight = sight_of(scene, view, figure);
    const std::optional<Severity> severity =
        sight ? severity_of(*sight, wanted_share) : std::nullopt;
    if (!severity) {
        return std::nullopt;
    }
    Finding finding = finding_in(scene, "sight-lines", *severity);
    finding.things = things_of(*sight, scene, figure);
    finding.at = floor_of(figure.base);
    finding.weight = 1.0 - std::min(sight->body.share, sight->face ? sight->face->share : 1.0);
    finding.message = message_of(*sight, scene, figure);
    finding.working = sight_working(*sight, wanted_share);
    return finding;
}

} // namespace

std::vector<Finding> sight_lines(const CheckInput& input, const std::stop_token& stop) {
    return over_shots(
        input, stop,
        [&](const ShotScene& scene, const stage::ShotView& view, std::vector<Finding>& found) {
            for (const stage::Figure* figure : subjects_on_floor(scene)) {
                if (std::optional<Finding> finding =
                        judged(scene, view, *figure, input.plan.targets.visible_share)) {
                    found.push_back(std::move(*finding));
                }
            }
        });
}

} // namespace throwline::checks
