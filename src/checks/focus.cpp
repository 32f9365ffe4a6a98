#include "optics/focus.h"
#include "checks/camera_checks.h"
#include "checks/framing.h"
#include "checks/wording.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// The smallest opening that lenses usually have (common practice, no source).
constexpr double kSmallestStop = 22.0;
/// Limits are compared with this slack, well under what a focus mark on the floor can hold.
constexpr double kSlack_m = 0.005;

struct Subject {
    const stage::Figure* figure = nullptr;
    /// Of the nearer eye, along the optical axis.
    double depth_m = 0.0;
};

std::vector<Subject> subjects_in_front(const ShotScene& scene, const stage::ShotView& view) {
    std::vector<Subject> subjects;
    for (const stage::Figure* figure : subjects_on_floor(scene)) {
        const double depth_m =
            std::min(view.frame.depth(figure->left_eye), view.frame.depth(figure->right_eye));
        if (depth_m > optics::kNearPlane_m) {
            subjects.push_back({figure, depth_m});
        }
    }
    return subjects;
}

/// Only T-numbers are known; an f-number is a little smaller, so the true depth is a little less.
optics::FocusSetting setting_of(const stage::ShotView& view) {
    return {view.focal, view.stop, view.sensor->circle_of_confusion};
}

/// Distance beyond the nearer limit of sharpness; nothing when the subject is sharp.
struct Softness {
    Subject subject;
    double beyond_m = 0.0;
    bool too_near = false;
};

std::vector<Softness> soft_subjects(const std::vector<Subject>& subjects,
                                    const optics::DepthOfField& depth) {
    std::vector<Softness> soft;
    for (const Subject& subject : subjects) {
        const double near_by_m = depth.near_limit.m() - subject.depth_m;
        const double far_by_m = depth.far_limit ? subject.depth_m - depth.far_limit->m() : 0.0;
        if (std::max(near_by_m, far_by_m) > kSlack_m) {
            soft.push_back({subject, std::max(near_by_m, far_by_m), near_by_m > far_by_m});
        }
    }
    return soft;
}

/// The blur shrinks as the f-number grows, so the stop that makes it equal to the circle of
/// confusion follows from the blur at the present one.
double stop_that_would_do(const stage::ShotView& view, const std::vector<Softness>& soft) {
    const optics::FocusSetting setting = setting_of(view);
    double stop = view.stop;
    for (const Softness& softness : soft) {
        const std::optional<Length> blur = optics::blur_diameter(
            setting, view.focus_distance, Length::metres(softness.subject.depth_m));
        if (blur) {
            stop = std::max(stop, view.stop * (*blur / setting.circle_of_confusion));
        }
    }
    return stop;
}

/// A focus between the nearest and the farthest subject that holds all of them, if one does. Equal
/// blur at both is at 2 a b / (a + b) (thin lens, plain algebra).
std::optional<Length> split_focus(const stage::ShotView& view,
                                  const std::vector<Subject>& subjects) {
    const auto nearer = [](const Subject& a, const Subject& b) { return a.depth_m < b.depth_m; };
    const auto [least, most] = std::minmax_element(subjects.begin(), subjects.end(), nearer);
    const Length focus =
        Length::metres(2.0 * least->depth_m * most->depth_m / (least->depth_m + most->depth_m));
    const optics::FocusSetting setting = setting_of(view);
    const bool holds = focus >= view.lens->close_focus
                       && optics::is_sharp(setting, focus, Length::metres(least->depth_m))
                       && optics::is_sharp(setting, focus, Length::metres(most->depth_m));
    return holds ? std::optional{focus} : std::nullopt;
}

std::string remedy(const stage::ShotView& view, const std::vector<Subject>& subjects,
                   const std::vector<Softness>& soft, UnitSystem units) {
    if (const std::optional<Length> focus = split_focus(view, subjects)) {
        return fmt::format("focused at {} it holds {}", shown(*focus, units),
                           subjects.size() > 1 ? "all of them" : said(subjects[0].figure->person));
    }
    // Rounded up, so that the stop that is named does do.
    const double stop = std::ceil(stop_that_would_do(view, soft) * 10.0) / 10.0;
    if (stop > kSmallestStop) {
        return fmt::format("it would take {}, smaller than lenses usually stop down to",
                           stop_text(stop));
    }
    return stop_text(stop) + " would do";
}

std::string soft_text(const Softness& softness, UnitSystem units) {
    return fmt::format("{} {} {}", said(softness.subject.figure->person),
                       shown(Length::metres(softness.beyond_m), units),
                       softness.too_near ? "too near" : "too far");
}

Working depth_working(const stage::ShotView& view, const optics::DepthOfField& depth,
                      const std::vector<Subject>& subjects, UnitSystem units) {
    Working working = optics::near_limit_working(setting_of(view), view.focus_distance);
    working.formula += "; far = u (H - f) / (H - u)";
    for (const Subject& subject : subjects) {
        working.inputs.push_back({"", "nearer eye of " + said(subject.figure->person),
                                  shown(Length::metres(subject.depth_m), units)});
    }
    working.inputs.push_back({"", "taken for the f-number", stop_text(view.stop)});
    working.result = "sharp from " + shown(depth.near_limit, units)
                     + (depth.far_limit ? " to " + shown(*depth.far_limit, units) : " on");
    return working;
}

std::optional<Finding> softness_finding(const ShotScene& scene, const stage::ShotView& view,
                                        const std::vector<Subject>& subjects, UnitSystem units) {
    const std::optional<optics::DepthOfField> depth =
        optics::depth_of_field(setting_of(view), view.focus_distance);
    if (!depth) {
        return std::nullopt;
    }
    const std::vector<Softness> soft = soft_subjects(subjects, *depth);
    if (soft.empty()) {
        return std::nullopt;
    }
    Finding finding = finding_in(scene, "focus", Severity::error);
    std::vector<std::string> texts;
    for (const Softness& softness : soft) {
        finding.things.push_back(softness.subject.figure->person.name);
        texts.push_back(soft_text(softness, units));
        finding.weight = std::max(finding.weight, softness.beyond_m);
    }
    finding.things.push_back(scene.shot->camera.name);
    finding.at = floor_of(soft.front().subject.figure->base);
    const std::string sharp = depth->far_limit
                                  ? fmt::format("from {} to {}", shown(depth->near_limit, units),
                                                shown(*depth->far_limit, units))
                                  : fmt::format("from {} on", shown(depth->near_limit, units));
    finding.message =
        fmt::format("{} at {} and {}, focused at {}, is sharp {}, so {} out of focus: {}; {}.",
                    capitalised(said(scene.shot->id)), focal_text(view.focal), stop_text(view.stop),
                    shown(view.focus_distance, units), sharp,
                    soft.size() == 1 ? "one subject is" : "some subjects are", listed(texts),
                    remedy(view, subjects, soft, units));
    finding.working = depth_working(view, *depth, subjects, units);
    return finding;
}

/// The lens cannot be focused so near: on a subject, or where the plan asks for it.
std::optional<Finding> close_focus_finding(const ShotScene& scene, const stage::ShotView& view,
                                           UnitSystem units) {
    const Length limit = view.lens->close_focus;
    if (view.focus_distance.m() + kSlack_m >= limit.m()) {
        return std::nullopt;
    }
    Finding finding = finding_in(scene, "focus", Severity::error);
    finding.things = {scene.shot->camera.name};
    finding.at = floor_of(view.pose.lens);
    finding.weight = 1.0 + (limit - view.focus_distance).m();
    finding.message = fmt::format(
        "{} is to focus at {}, but {} focuses no nearer than {}: move back {}.",
        capitalised(said(scene.shot->id)), shown(view.focus_distance, units), view.lens->name,
        shown(limit, units), shown(limit - view.focus_distance, units));
    finding.working = {"focus distance < closest focus of the lens",
                       {{"", "focus distance from the lens", shown(view.focus_distance, units)},
                        {"", "closest focus", shown(limit, units)}},
                       shown(limit - view.focus_distance, units) + " too near",
                       "the lens's own figure, taken from its front"};
    return finding;
}

} // namespace

std::vector<Finding> focus(const CheckInput& input, const std::stop_token& stop) {
    return over_shots(
        input, stop,
        [&](const ShotScene& scene, const stage::ShotView& view, std::vector<Finding>& found) {
            const UnitSystem units = input.plan.units;
            std::optional<Finding> finding = close_focus_finding(scene, view, units);
            if (!finding) {
                finding = softness_finding(scene, view, subjects_in_front(scene, view), units);
            }
            if (finding) {
                found.push_back(std::move(*finding));
            }
        });
}

} // namespace throwline::checks
