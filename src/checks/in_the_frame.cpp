#include "checks/camera_checks.h"
#include "checks/framing.h"
#include "checks/things_seen.h"
#include "checks/wording.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// Less than this of the frame (about 1000 pixels of a 1920 x 1080 picture) only just shows.
constexpr double kTouches = 0.0005;
/// Cast who are not subjects are worth a word from here on.
constexpr double kCastShare = 0.002;

/// What of an owner is in the frame.
struct Intruder {
    int owner = -1;
    double share = 0.0;
    Vec2 place = Vec2::Zero();
    Vec3 at = Vec3::Zero();
    /// Largest first.
    std::vector<stage::Part> parts;
};

bool is_practical(const plan::Plan& plan, const std::string& lamp) {
    const plan::Lamp* found = plan::find(plan, plan::Id<plan::Lamp>{lamp});
    return found != nullptr
           && (found->role == plan::LampRole::practical
               || std::holds_alternative<plan::PracticalMount>(found->mount));
}

bool is_subject(const plan::Shot& shot, const std::string& person) {
    return std::find(shot.subjects.begin(), shot.subjects.end(), plan::Id<plan::Person>{person})
           != shot.subjects.end();
}

/// Whether a thing should be looked for: it may not be in the picture, or is worth a word there.
bool is_unwanted(const stage::Owner& owner, const plan::Shot& shot, const plan::Plan& plan) {
    switch (owner.kind) {
    case stage::OwnerKind::room:
    case stage::OwnerKind::scenery:
        return false;
    case stage::OwnerKind::cast:
    case stage::OwnerKind::crew:
        return !is_subject(shot, owner.name);
    case stage::OwnerKind::camera:
        return owner.name != shot.camera.name;
    case stage::OwnerKind::lamp:
        return !is_practical(plan, owner.name);
    case stage::OwnerKind::boom:
        return true;
    }
    return false;
}

Intruder gathered(const ShotScene& scene, int owner, std::vector<SolidSeen> seen) {
    std::stable_sort(seen.begin(), seen.end(),
                     [](const SolidSeen& a, const SolidSeen& b) { return a.share > b.share; });
    Intruder intruder;
    intruder.owner = owner;
    for (const SolidSeen& part : seen) {
        intruder.share += part.share;
        intruder.place += part.share * part.place;
        intruder.at += part.share * part.at;
        const stage::Part kind = scene.stage.solids[static_cast<std::size_t>(part.solid)].part;
        if (std::find(intruder.parts.begin(), intruder.parts.end(), kind) == intruder.parts.end()) {
            intruder.parts.push_back(kind);
        }
    }
    intruder.place /= intruder.share;
    intruder.at /= intruder.share;
    return intruder;
}

/// Everything unwanted that the frame shows, in the order of the stage.
std::vector<Intruder> intruders_in(const ShotScene& scene, const stage::ShotView& view,
                                   const plan::Plan& plan) {
    std::vector<std::vector<SolidSeen>> seen(scene.stage.owners.size());
    for (std::size_t i = 0; i < scene.stage.solids.size(); ++i) {
        const auto owner = static_cast<std::size_t>(scene.stage.solids[i].owner_index);
        if (!is_unwanted(scene.stage.owners[owner], *scene.shot, plan)) {
            continue;
        }
        const SolidSeen part = solid_seen(scene, view, static_cast<int>(i));
        if (part.share > 0.0) {
            seen[owner].push_back(part);
        }
    }
    std::vector<Intruder> intruders;
    for (std::size_t owner = 0; owner < seen.size(); ++owner) {
        if (!seen[owner].empty()) {
            intruders.push_back(gathered(scene, static_cast<int>(owner), std::move(seen[owner])));
        }
    }
    return intruders;
}

/// People are named whole; of gear the parts that show are named, so that one knows what to move.
std::string name_of(const Intruder& intruder, const stage::Owner& owner) {
    if (owner.kind == stage::OwnerKind::cast || owner.kind == stage::OwnerKind::crew) {
        return said(owner);
    }
    std::vector<std::string> parts;
    for (const stage::Part part : intruder.parts) {
        parts.push_back(fmt::format("the {}", stage::name_of(part)));
    }
    return listed(parts) + " of " + said(owner);
}

std::optional<Severity> severity_of(const Intruder& intruder, stage::OwnerKind kind) {
    if (kind == stage::OwnerKind::cast) {
        return intruder.share >= kCastShare ? std::optional{Severity::note} : std::nullopt;
    }
    return intruder.share >= kTouches ? Severity::error : Severity::caution;
}

Working share_working(const Intruder& intruder) {
    return {"share of the frame = frame area of the thing's rays that meet nothing else first",
            {{"u", "place across, -1 left .. 1 right", fixed(intruder.place.x(), 2)},
             {"v", "place up, -1 bottom .. 1 top", fixed(intruder.place.y(), 2)}},
            share_text(intruder.share),
            "plain geometry"};
}

std::optional<Finding> judged(const ShotScene& scene, const Intruder& intruder) {
    const stage::Owner& owner = scene.stage.owners[static_cast<std::size_t>(intruder.owner)];
    const std::optional<Severity> severity = severity_of(intruder, owner.kind);
    if (!severity) {
        return std::nullopt;
    }
    Finding finding = finding_in(scene, "in-the-frame", *severity);
    finding.things = {owner.name, scene.shot->camera.name};
    finding.at = floor_of(intruder.at);
    finding.weight = intruder.share;
    const bool plural = intruder.parts.size() > 1 && owner.kind != stage::OwnerKind::cast
                        && owner.kind != stage::OwnerKind::crew;
    finding.message =
        fmt::format("{} {} in the frame {}: {} of it, {}{}.", capitalised(name_of(intruder, owner)),
                    plural ? "are" : "is", in_shot(*scene.shot, scene.beat->id),
                    share_text(intruder.share), place_in_frame(intruder.place),
                    owner.kind == stage::OwnerKind::cast ? ", though not a subject" : "");
    finding.working = share_working(intruder);
    return finding;
}

} // namespace

std::vector<Finding> in_the_frame(const CheckInput& input, const std::stop_token& stop) {
    return over_shots(
        input, stop,
        [&](const ShotScene& scene, const stage::ShotView& view, std::vector<Finding>& found) {
            for (const Intruder& intruder : intruders_in(scene, view, input.plan)) {
                if (std::optional<Finding> finding = judged(scene, intruder)) {
                    found.push_back(std::move(*finding));
                }
            }
        });
}

} // namespace throwline::checks
