#include "sheet/section_cut.h"

#include "base/length_text.h"
#include "base/words.h"
#include "checks/framing.h"
#include "sheet/unknown_name.h"

#include <algorithm>
#include <limits>

namespace throwline::sheet {

namespace {

/// Ends nearer than this give no direction.
constexpr double kSamePlace_m = 0.01;

const checks::ShotScene* scene_of(const checks::Analysis& analysis, const SheetOptions& options,
                                  const plan::Id<plan::Shot>& shot) {
    const auto found = std::find_if(
        analysis.shots.begin(), analysis.shots.end(), [&](const checks::ShotScene& scene) {
            return scene.shot->id == shot
                   && (options.beat.empty() || scene.beat->id == options.beat);
        });
    return found == analysis.shots.end() ? nullptr : &*found;
}

/// From the lens to the first subject; where there is none, along the axis.
Vec2 direction_of(const checks::ShotScene& scene) {
    const Vec2 axis = unit_at(scene.view->pose.pan.rad());
    const auto subjects = checks::subjects_on_floor(scene);
    if (subjects.empty()) {
        return axis;
    }
    const Vec2 way = floor_of(subjects.front()->eyes) - floor_of(scene.view->pose.lens);
    return way.norm() < kSamePlace_m ? axis : Vec2{way.normalized()};
}

Result<SectionCut> along_shot(const checks::ShotScene& scene) {
    if (!scene.view) {
        return failure(fmt::format("{} looks at nothing, so there is no line to cut along",
                                   with_kind("shot", scene.shot->id.name)));
    }
    SectionCut cut;
    cut.origin = floor_of(scene.view->pose.lens);
    cut.along = direction_of(scene);
    cut.shot = &scene;
    cut.stage = &scene.stage;
    cut.name = fmt::format("Section along {}", with_kind("shot", scene.shot->id.name));
    return cut;
}

Result<SectionCut> along_named(const SheetInput& input, const SheetOptions& options) {
    const plan::Id<plan::Shot>& shot = options.section.shot;
    const plan::Plan& plan = *input.analysis.plan;
    if (plan::find(plan, shot) == nullptr) {
        return no_such("shot", shot.name,
                       names_of(plan.shots, [](const auto& other) { return other.id.name; }));
    }
    const checks::ShotScene* scene = scene_of(input.analysis, options, shot);
    if (scene == nullptr) {
        return failure(fmt::format("{} is not in {}", with_kind("shot", shot.name),
                                   with_kind("beat", options.beat.name)));
    }
    return along_shot(*scene);
}

Result<SectionCut> between_ends(const std::pair<Vec2, Vec2>& ends, UnitSystem units) {
    const Vec2 way = ends.second - ends.first;
    if (way.norm() < kSamePlace_m) {
        return failure("the two ends of the section's line are one place");
    }
    const auto words = [&](const Vec2& place) {
        return fmt::format("{}, {}", shown(Length::metres(place.x()), units),
                           shown(Length::metres(place.y()), units));
    };
    SectionCut cut;
    cut.origin = ends.first;
    cut.along = way.normalized();
    cut.name = fmt::format("Section from {} to {}", words(ends.first), words(ends.second));
    return cut;
}

SectionCut across_middle(const plan::Room& room) {
    Extent extent;
    for (const Vec2& corner : room.outline) {
        extent.include(corner);
    }
    SectionCut cut;
    cut.origin = (extent.low + extent.high) / 2.0;
    cut.along = extent.size().x() >= extent.size().y() ? Vec2::UnitX() : Vec2::UnitY();
    cut.name = "Section through the middle of the room";
    return cut;
}

Result<SectionCut> chosen(const SheetInput& input, const SheetOptions& options,
                          const Selection& selection) {
    if (options.section.ends) {
        return between_ends(*options.section.ends, input.analysis.plan->units);
    }
    if (!options.section.shot.empty()) {
        return along_named(input, options);
    }
    const auto shot = std::find_if(selection.shots.begin(), selection.shots.end(),
                                   [](const checks::ShotScene* scene) { return scene->view; });
    return shot == selection.shots.end() ? across_middle(input.analysis.plan->room)
                                         : along_shot(**shot);
}

} // namespace

std::vector<CutStretch> stretches_inside(const SectionCut& cut, const Polygon& outline) {
    std::vector<double> crossings;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2& a = outline[i];
        const Vec2& b = outline[(i + 1) % outline.size()];
        const double ahead_a = cut.ahead_m(a);
        const double ahead_b = cut.ahead_m(b);
        if ((ahead_a <= 0.0) != (ahead_b <= 0.0)) {
            const Vec2 on_line = a + (b - a) * (ahead_a / (ahead_a - ahead_b));
            crossings.push_back(cut.along_m(on_line));
        }
    }
    std::sort(crossings.begin(), crossings.end());
    std::vector<CutStretch> stretches;
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
        stretches.push_back({crossings[i], crossings[i + 1]});
    }
    return stretches;
}

std::vector<CutStretch> seen_parts(const SectionCut& cut, const CutStretch& stretch) {
    std::vector<CutStretch> parts;
    for (const CutStretch& inside : cut.inside) {
        const CutStretch part{std::max(stretch.from_m, inside.from_m),
                              std::min(stretch.to_m, inside.to_m)};
        if (part.to_m > part.from_m) {
            parts.push_back(part);
        }
    }
    return parts;
}

Result<SectionCut> section_cut(const SheetInput& input, const SheetOptions& options,
                               stage::Stage& bare) {
    const plan::Plan& plan = *input.analysis.plan;
    if (plan.room.outline.size() < 3) {
        return failure("the plan has no room to cut");
    }
    const Result<Selection> selection = selected(input.analysis, options);
    if (!selection) {
        return tl::unexpected{selection.error()};
    }
    Result<SectionCut> cut = chosen(input, options, *selection);
    if (!cut) {
        return cut;
    }
    cut->ahead = turned_left(cut->along);
    cut->depth_m = options.section.depth ? options.section.depth->m()
                                         : std::numeric_limits<double>::infinity();
    if (cut->stage == nullptr) {
        cut->stage = &stage_shown(input, *selection, bare);
    }
    cut->inside = stretches_inside(*cut, plan.room.outline);
    if (cut->inside.empty()) {
        return failure("the section's line misses the room");
    }
    return cut;
}

} // namespace throwline::sheet
