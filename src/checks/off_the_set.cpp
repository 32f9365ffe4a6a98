#include "checks/camera_checks.h"
#include "checks/framing.h"
#include "checks/run_on.h"
#include "checks/undressed.h"
#include "checks/wording.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// Shares of the frame (own choice): more than a strip that a small pan hides, and more than what a
/// cell or two at the very edge may be.
constexpr double kErrorShare = 0.02;
constexpr double kCautionShare = 0.002;
/// Sides with less are not told apart.
constexpr double kNamedShare = 0.001;

struct SideGap {
    FrameSide side = FrameSide::middle;
    double share = 0.0;
    std::optional<MoreSet> more;
};

std::string place_words(FrameSide side) {
    switch (side) {
    case FrameSide::left:
        return "at the left";
    case FrameSide::right:
        return "at the right";
    case FrameSide::top:
        return "at the top";
    case FrameSide::bottom:
        return "at the bottom";
    case FrameSide::middle:
        return "between parts of the set";
    }
    return "";
}

std::vector<SideGap> gaps_of(const ShotScene& scene, const stage::ShotView& view,
                             const Undressed& undressed) {
    std::vector<SideGap> gaps;
    for (const FrameSide side : kFrameSides) {
        const double share = undressed.shares[static_cast<std::size_t>(side)];
        if (share >= kNamedShare) {
            gaps.push_back({side, share, more_set_for(scene, view, undressed, side)});
        }
    }
    return gaps;
}

std::string gap_text(const SideGap& gap, const ShotScene& scene, UnitSystem units) {
    std::string text = share_text(gap.share) + " " + place_words(gap.side);
    if (gap.more) {
        const bool up = gap.side == FrameSide::top;
        text += fmt::format(" ({} would have to be {} {})",
                            said(scene.stage.owners[static_cast<std::size_t>(gap.more->owner)]),
                            shown(gap.more->extent, units), up ? "higher" : "longer there");
    }
    return text;
}

std::string message_of(const std::vector<SideGap>& gaps, const Undressed& undressed,
                       const ShotScene& scene, UnitSystem units) {
    std::vector<std::string> parts;
    for (const SideGap& gap : gaps) {
        parts.push_back(gap_text(gap, scene, units));
    }
    std::string seen;
    if (!undressed.owners.empty()) {
        seen = fmt::format(
            ", mostly on {}",
            said(scene.stage.owners[static_cast<std::size_t>(undressed.owners.front())]));
    }
    return fmt::format("{} of the frame {} falls off the set{}: {}.", share_text(undressed.share),
                       in_shot(*scene.shot, scene.beat->id), seen, listed(parts));
}

std::vector<std::string> things_of(const std::vector<SideGap>& gaps, const Undressed& undressed,
                                   const ShotScene& scene) {
    std::vector<int> owners;
    for (const SideGap& gap : gaps) {
        if (gap.more) {
            owners.push_back(gap.more->owner);
        }
    }
    owners.insert(owners.end(), undressed.owners.begin(), undressed.owners.end());
    std::vector<std::string> things;
    for (const int owner : owners) {
        const std::string& name = scene.stage.owners[static_cast<std::size_t>(owner)].name;
        if (std::find(things.begin(), things.end(), name) == things.end()) {
            things.push_back(name);
        }
    }
    things.push_back(scene.shot->camera.name);
    return things;
}

Vec2 place_of(const std::vector<SideGap>& gaps, const stage::ShotView& view) {
    const SideGap* largest = nullptr;
    for (const SideGap& gap : gaps) {
        if (gap.more && (largest == nullptr || gap.share > largest->share)) {
            largest = &gap;
        }
    }
    return floor_of(largest != nullptr ? largest->more->edge : view.pose.lens);
}

Working off_working(const std::vector<SideGap>& gaps, const Undressed& undressed,
                    const ShotScene& scene, UnitSystem units) {
    Working working;
    working.formula = "share = rays over the frame that first meet something undressed, or leave "
                      "the room / all rays; more set = along the line of its face from its edge to "
                      "the edge of the frame";
    working.inputs.push_back({"", "rays over the frame", std::to_string(undressed.cells.size())});
    for (const SideGap& gap : gaps) {
        working.inputs.push_back({"", place_words(gap.side), share_text(gap.share)});
        if (gap.more) {
            working.inputs.push_back(
                {"",
                 "more of " + said(scene.stage.owners[static_cast<std::size_t>(gap.more->owner)]),
                 shown(gap.more->extent, units)});
        }
    }
    working.result = share_text(undressed.share);
    working.source = "plain geometry; the limits are common practice, no source";
    return working;
}

/// Where no edge of the set shows at any side: the run of flats that would have to go on.
void advise_to_run_on(Finding& finding, const MoreSet& more, const ShotScene& scene,
                      UnitSystem units) {
    const stage::Owner& owner = scene.stage.owners[static_cast<std::size_t>(more.owner)];
    finding.things.insert(finding.things.begin(), owner.name);
    finding.at = floor_of(more.edge);
    finding.message.pop_back();
    finding.message += fmt::format("; {} would have to be {} longer to stand behind all of it.",
                                   said(owner), shown(more.extent, units));
    finding.working.inputs.push_back({"", "more of " + said(owner), shown(more.extent, units)});
}

std::optional<Finding> judged(const ShotScene& scene, const stage::ShotView& view,
                              const plan::Plan& plan) {
    const UnitSystem units = plan.units;
    const Undressed undressed = undressed_in(scene);
    if (undressed.share < kCautionShare) {
        return std::nullopt;
    }
    const std::vector<SideGap> gaps = gaps_of(scene, view, undressed);
    Finding finding = finding_in(
        scene, "off-the-set", undressed.share > kErrorShare ? Severity::error : Severity::caution);
    finding.things = things_of(gaps, undressed, scene);
    finding.at = place_of(gaps, view);
    finding.weight = undressed.share;
    finding.message = message_of(gaps, undressed, scene, units);
    finding.working = off_working(gaps, undressed, scene, units);
    const bool advised = std::any_of(gaps.begin(), gaps.end(),
                                     [](const SideGap& gap) { return gap.more.has_value(); });
    if (!advised && undressed.share > kErrorShare) {
        if (const auto more = run_that_would_back(plan, scene.stage, view)) {
            advise_to_run_on(finding, *more, scene, units);
        }
    }
    return finding;
}

} // namespace

std::vector<Finding> off_the_set(const CheckInput& input, const std::stop_token& stop) {
    return over_shots(
        input, stop,
        [&](const ShotScene& scene, const stage::ShotView& view, std::vector<Finding>& found) {
            if (std::optional<Finding> finding = judged(scene, view, input.plan)) {
                found.push_back(std::move(*finding));
            }
        });
}

} // namespace throwline::checks
