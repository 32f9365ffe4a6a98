#include "checks/framing.h"
#include "checks/light_checks.h"
#include "checks/light_text.h"
#include "checks/wording.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

/// How far a face moves about its mark: half a step each way (common practice, no source).
constexpr double kSway_m = 0.3;
/// A difference of one stop over that is seen as a face going dark and bright.
constexpr double kEvenStops = 1.0;
/// A face that goes from light to none has no stops; it sorts as ten of them.
constexpr double kDarkWeight = 10.0;

struct Levels {
    double least_lx = 0.0;
    double most_lx = 0.0;
    Vec3 darkest = Vec3::Zero();
};

/// On the mark and half a step towards each side of the camera's view of it.
Levels levels_about(const stage::Stage& stage, const stage::Figure& figure, const Vec3& lens) {
    const Vec3 facing = (lens - figure.face).normalized();
    const Vec2 towards = floor_of(facing).normalized();
    const Vec2 aside = turned_left(towards);
    Levels levels;
    bool first = true;
    for (const Vec2& step :
         {Vec2(0.0, 0.0), Vec2(1.0, 0.0), Vec2(-1.0, 0.0), Vec2(0.0, 1.0), Vec2(0.0, -1.0)}) {
        const Vec2 moved = (towards * step.x() + aside * step.y()) * kSway_m;
        const Vec3 point = figure.face + raised(moved, 0.0);
        const double level = facing_level_lx(stage, point, facing, figure.owner);
        if (first || level < levels.least_lx) {
            levels.least_lx = level;
            levels.darkest = point;
        }
        levels.most_lx = std::max(levels.most_lx, level);
        first = false;
    }
    return levels;
}

std::string change_text(const Levels& levels, UnitSystem units) {
    if (levels.least_lx <= 0.0) {
        return fmt::format("falls to nothing from {}", level_text(levels.most_lx, units));
    }
    return "changes by " + stops_text(std::log2(levels.most_lx / levels.least_lx));
}

Working even_working(const Levels& levels, UnitSystem units) {
    return {"stops = log2(most / least) over the mark and four places about it",
            {{"", "most", level_text(levels.most_lx, units)},
             {"", "least", level_text(levels.least_lx, units)},
             {"", "sway", shown(Length::metres(kSway_m), units)}},
            change_text(levels, units),
            "common practice, no source"};
}

bool is_even(const Levels& levels) {
    return levels.most_lx <= 0.0 || levels.most_lx < levels.least_lx * std::exp2(kEvenStops);
}

void judge(std::vector<Finding>& findings, const ShotScene& scene, const stage::Figure& figure,
           UnitSystem units) {
    const Levels levels = levels_about(scene.stage, figure, scene.view->pose.lens);
    if (is_even(levels)) {
        return;
    }
    const bool dark = levels.least_lx <= 0.0;
    Finding finding = finding_in(scene, "uneven-light", Severity::caution);
    finding.things = {figure.person.name};
    finding.at = floor_of(levels.darkest);
    finding.weight = dark ? kDarkWeight : std::log2(levels.most_lx / levels.least_lx);
    finding.message =
        fmt::format("The level on the face of {} {} within {} of the mark {}", figure.person.name,
                    change_text(levels, units), shown(Length::metres(kSway_m), units),
                    in_shot(*scene.shot, scene.beat->id));
    finding.message += dark
                           ? "."
                           : fmt::format(", between {} and {}.", level_text(levels.least_lx, units),
                                         level_text(levels.most_lx, units));
    finding.working = even_working(levels, units);
    findings.push_back(std::move(finding));
}

} // namespace

std::vector<Finding> uneven_light(const CheckInput& input, const std::stop_token& stop) {
    if (input.plan.lamps.empty()) {
        return {};
    }
    return over_shots(input, stop, [&](const ShotScene& scene, const stage::ShotView&, auto& out) {
        for (const stage::Figure* figure : subjects_on_floor(scene)) {
            judge(out, scene, *figure, input.plan.units);
        }
    });
}

} // namespace throwline::checks
