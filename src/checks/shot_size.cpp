#include "optics/shot_size.h"
#include "checks/camera_checks.h"
#include "checks/framing.h"
#include "checks/lens_reach.h"
#include "checks/subject_frame.h"
#include "checks/wording.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// Off by so many steps of the ladder, a shot is another shot than the one planned.
constexpr int kErrorSteps = 2;
/// A focal length within this share of the needed one is as good as it: the aim is what is off.
constexpr double kSameFocal = 0.03;

bool focal_is_right(const stage::ShotView& view) {
    return view.wanted_focal && std::abs(*view.wanted_focal / view.focal - 1.0) < kSameFocal;
}

std::string aim_advice(const SizedSubject& subject, optics::ShotSize wanted, UnitSystem units) {
    const stage::Figure& figure = *subject.figure;
    const double wanted_m =
        figure.crown.z()
        - (1.0 - optics::wanted_frame(wanted).bottom_cut_share) * figure.stature.m();
    const double lower_m = subject.frame.bottom_z_m - wanted_m;
    return fmt::format("aim {} {}", shown(Length::metres(std::abs(lower_m)), units),
                       lower_m > 0.0 ? "lower" : "higher");
}

std::string focal_advice(const ShotScene& scene, const stage::ShotView& view,
                         const SizedSubject& subject, UnitSystem units) {
    const Length needed = *view.wanted_focal;
    const FocalRange range = focal_range(view, *scene.shot);
    const Length distance = Length::metres(subject.frame.depth_m * (view.focal / needed));
    const std::string step =
        fmt::format("{} from {}", shown(distance, units), said(subject.figure->person));
    if (needed < range.widest || needed > range.longest) {
        return fmt::format("{} would do, which the lens does not have, or {}", focal_text(needed),
                           step);
    }
    return fmt::format("{} would do, or {}", focal_text(needed), step);
}

std::string advice(const ShotScene& scene, const stage::ShotView& view, const SizedSubject& subject,
                   optics::ShotSize wanted, UnitSystem units) {
    if (!view.wanted_focal) {
        return "no focal length is known that would do";
    }
    return focal_is_right(view) ? aim_advice(subject, wanted, units)
                                : focal_advice(scene, view, subject, units);
}

Working size_working(const SizedSubject& subject, optics::ShotSize wanted, UnitSystem units) {
    Working working = optics::shot_size_working(subject.frame.person);
    working.inputs.push_back(
        {"", "lower edge of the frame", shown(Length::metres(subject.frame.bottom_z_m), units)});
    working.inputs.push_back(
        {"", "upper edge of the frame", shown(Length::metres(subject.frame.top_z_m), units)});
    working.inputs.push_back({"", "stature", shown(subject.figure->stature, units)});
    working.inputs.push_back({"", "wanted", optics::name_of(wanted)});
    return working;
}

std::optional<Finding> judged(const ShotScene& scene, const stage::ShotView& view,
                              UnitSystem units) {
    if (!scene.shot->size) {
        return std::nullopt;
    }
    const optics::ShotSize wanted = *scene.shot->size;
    const std::optional<SizedSubject> subject = best_sized_subject(scene, wanted);
    if (!subject || subject->frame.size == wanted) {
        return std::nullopt;
    }
    const int steps = optics::steps_between(subject->frame.size, wanted);
    Finding finding =
        finding_in(scene, "shot-size", steps >= kErrorSteps ? Severity::error : Severity::caution);
    finding.things = {scene.shot->camera.name, subject->figure->person.name};
    finding.at = floor_of(view.pose.lens);
    finding.weight = steps / static_cast<double>(optics::kShotSizes.size());
    const Length height = Length::metres(subject->frame.top_z_m - subject->frame.bottom_z_m);
    finding.message = fmt::format(
        "{} gives a {} of {} where a {} is wanted: at {} the frame is {} high there; {}.",
        capitalised(said(scene.shot->id)), optics::name_of(subject->frame.size),
        said(subject->figure->person), optics::name_of(wanted), focal_text(view.focal),
        shown(height, units), advice(scene, view, *subject, wanted, units));
    finding.working = size_working(*subject, wanted, units);
    return finding;
}

} // namespace

std::vector<Finding> shot_size(const CheckInput& input, const std::stop_token& stop) {
    return over_shots(
        input, stop,
        [&](const ShotScene& scene, const stage::ShotView& view, std::vector<Finding>& found) {
            if (std::optional<Finding> finding = judged(scene, view, input.plan.units)) {
                found.push_back(std::move(*finding));
            }
        });
}

} // namespace throwline::checks
