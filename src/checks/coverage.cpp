#include "optics/coverage.h"
#include "checks/camera_checks.h"
#include "checks/framing.h"
#include "checks/lens_reach.h"
#include "checks/subject_frame.h"
#include "checks/wording.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// A head may touch the edge by this much of the half frame: half a percent of the picture, less
/// than a hand-held frame moves.
constexpr double kGraze = 0.01;
/// Image circles are rounded in the tables.
constexpr double kCircleSlack = 1.005;

/// How far something reaches beyond one edge of the frame.
struct Overshoot {
    std::string edge;
    double distance_m = 0.0;
    bool all_of_it = false;
};

/// What of the head must be inside: all of it, unless the size asks for a cut crown.
std::vector<Vec3> kept_points(const ShotScene& scene, const stage::ShotView& view,
                              const stage::Figure& figure) {
    std::optional<ShotSize> size = scene.shot->size;
    if (!size) {
        if (const std::optional<SubjectFrame> frame = subject_frame(view, figure)) {
            size = frame->size;
        }
    }
    if (size == optics::ShotSize::extreme_close_up) {
        return {figure.left_eye, figure.right_eye};
    }
    if (size == optics::ShotSize::big_close_up) {
        return {figure.left_eye, figure.right_eye, figure.chin};
    }
    return corners_of(scene.stage, figure.owner, stage::Part::head);
}

/// The edge beyond which the points reach farthest, measured at the depth of the face.
std::optional<Overshoot> overshoot_of(const FrameBounds& bounds, const stage::ShotView& view,
                                      double depth_m) {
    const double half_width_m = view.frame.tan_half_h() * depth_m;
    const double half_height_m = view.frame.tan_half_v() * depth_m;
    struct Edge {
        const char* name;
        double farthest;
        double nearest;
        double half_m;
    };
    std::optional<Overshoot> worst;
    for (const Edge& edge : {Edge{"left", -bounds.least.x(), -bounds.most.x(), half_width_m},
                             Edge{"right", bounds.most.x(), bounds.least.x(), half_width_m},
                             Edge{"top", bounds.most.y(), bounds.least.y(), half_height_m},
                             Edge{"bottom", -bounds.least.y(), -bounds.most.y(), half_height_m}}) {
        const double distance_m = (edge.farthest - 1.0) * edge.half_m;
        if (edge.farthest > 1.0 + kGraze && (!worst || distance_m > worst->distance_m)) {
            worst = Overshoot{edge.name, distance_m, edge.nearest >= 1.0};
        }
    }
    return worst;
}

Working seen_working(const stage::ShotView& view, Length depth) {
    Working working = optics::coverage_working(optics::effective_sensor(*view.sensor, *view.lens),
                                               view.focal, depth);
    working.inputs.push_back(
        {"", "angle of view",
         degrees_text(view.angle.horizontal) + " x " + degrees_text(view.angle.vertical)});
    return working;
}

std::string cut_message(const ShotScene& scene, const stage::ShotView& view,
                        const stage::Figure& figure, const Overshoot& over, UnitSystem units) {
    const double depth_m = view.frame.depth(figure.face);
    const std::string frame =
        fmt::format("which takes in {} there",
                    size_text(Length::metres(2.0 * view.frame.tan_half_h() * depth_m),
                              Length::metres(2.0 * view.frame.tan_half_v() * depth_m), units));
    const std::string amount = shown(Length::metres(over.distance_m), units);
    if (over.all_of_it) {
        return fmt::format("The head of {} is outside the frame {}, {} beyond its {} edge, {}.",
                           said(figure.person), in_shot(*scene.shot, scene.beat->id), amount,
                           over.edge, frame);
    }
    return fmt::format("The head of {} is cut {} by {} at the {} edge of the frame, {}.",
                       said(figure.person), in_shot(*scene.shot, scene.beat->id), amount, over.edge,
                       frame);
}

Finding behind_finding(const ShotScene& scene, const stage::Figure& figure,
                       const stage::ShotView& view, UnitSystem units) {
    Finding finding = finding_in(scene, "coverage", Severity::error);
    finding.things = {figure.person.name, scene.shot->camera.name};
    finding.at = floor_of(figure.base);
    finding.weight = 1.0;
    finding.message = fmt::format("{} is behind the lens {}.", capitalised(said(figure.person)),
                                  in_shot(*scene.shot, scene.beat->id));
    finding.working = {"distance along the optical axis",
                       {},
                       shown(Length::metres(view.frame.depth(figure.face)), units),
                       "plain geometry"};
    return finding;
}

std::optional<Finding> head_finding(const ShotScene& scene, const stage::ShotView& view,
                                    const stage::Figure& figure, UnitSystem units) {
    const double depth_m = view.frame.depth(figure.face);
    const std::optional<FrameBounds> bounds =
        bounds_of(view.frame, kept_points(scene, view, figure));
    if (depth_m < optics::kNearPlane_m || !bounds) {
        return behind_finding(scene, figure, view, units);
    }
    const std::optional<Overshoot> over = overshoot_of(*bounds, view, depth_m);
    if (!over) {
        return std::nullopt;
    }
    Finding finding = finding_in(scene, "coverage", Severity::error);
    finding.things = {figure.person.name, scene.shot->camera.name};
    finding.at = floor_of(figure.base);
    finding.weight = over->all_of_it ? 1.0 : 0.5;
    finding.message = cut_message(scene, view, figure, *over, units);
    finding.working = seen_working(view, Length::metres(depth_m));
    return finding;
}

/// A lens whose picture is smaller than the sensor: dark corners whatever the shot.
std::optional<Finding> image_circle_finding(const ShotScene& scene, const stage::ShotView& view) {
    const double factor = scene.shot->extender ? view.lens->extender : 1.0;
    const Length circle = view.lens->image_circle * factor;
    const Length diagonal = view.sensor->diagonal();
    if (circle.m() <= 0.0 || diagonal <= circle * kCircleSlack) {
        return std::nullopt;
    }
    Finding finding = finding_in(scene, "coverage", Severity::caution);
    finding.things = {scene.shot->camera.name};
    finding.at = floor_of(view.pose.lens);
    finding.weight = std::min(1.0, diagonal / circle - 1.0);
    finding.message = fmt::format(
        "The corners of {} are dark: {} covers a circle of {} and the sensor measures {} across.",
        said(scene.shot->id), view.lens->name, focal_text(circle), focal_text(diagonal));
    finding.working = {"dark corners when the diagonal of the sensor > image circle x extender",
                       {{"", "diagonal of the sensor", focal_text(diagonal)},
                        {"", "image circle", focal_text(view.lens->image_circle)},
                        {"", "extender", scene.shot->extender ? shortest(factor) : "out"}},
                       fixed(diagonal / circle, 2) + " times the circle",
                       "plain geometry"};
    return finding;
}

/// Subjects whom no beat of the shot has on the floor; told once a shot, at its first beat.
void report_absent(const ShotScene& scene, const CheckInput& input,
                   std::vector<Finding>& findings) {
    for (const plan::Id<plan::Person>& subject : scene.shot->subjects) {
        const auto has_subject = [&](const ShotScene& other) {
            return other.shot == scene.shot && other.stage.figure(subject) != nullptr;
        };
        if (std::any_of(input.shots.begin(), input.shots.end(), has_subject)) {
            continue;
        }
        Finding finding = finding_in(scene, "coverage", Severity::error);
        finding.things = {subject.name};
        finding.weight = 1.0;
        finding.at = scene.shot->at;
        finding.message =
            fmt::format("{} is a subject of {} but is on the floor in none of its beats.",
                        capitalised(said(subject)), said(scene.shot->id));
        finding.working = {
            "marks of the subject in the beats of the shot", {}, "none", "plain count"};
        findings.push_back(std::move(finding));
    }
}

void append(std::vector<Finding>& findings, std::optional<Finding> finding) {
    if (finding) {
        findings.push_back(std::move(*finding));
    }
}

} // namespace

std::vector<Finding> coverage(const CheckInput& input, const std::stop_token& stop) {
    std::vector<Finding> findings = over_shots(
        input, stop,
        [&](const ShotScene& scene, const stage::ShotView& view, std::vector<Finding>& found) {
            for (const stage::Figure* figure : subjects_on_floor(scene)) {
                append(found, head_finding(scene, view, *figure, input.plan.units));
            }
            append(found, lens_range_finding(scene, view, input));
            if (scene.beat->id == scene.shot->beats.front()) {
                append(found, image_circle_finding(scene, view));
            }
        });
    for (const ShotScene& scene : input.shots) {
        if (!stop.stop_requested() && scene.beat->id == scene.shot->beats.front()) {
            report_absent(scene, input, findings);
        }
    }
    return findings;
}

} // namespace throwline::checks
