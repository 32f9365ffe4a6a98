#include "sheet/shot_sheet.h"

#include "checks/cautions.h"
#include "checks/framing.h"
#include "sheet/frame_picture.h"
#include "sheet/panel_writer.h"
#include "sheet/shot_coverage.h"
#include "sheet/shot_words.h"
#include "sheet/symbols.h"

#include <algorithm>
#include <fmt/format.h>
#include <memory>

namespace throwline::sheet {

namespace {

/// Plan shown around the camera, its moves and its subjects.
constexpr double kAround_m = 0.6;
/// What is in the frame is shown as far as this behind the farthest subject.
constexpr double kBehind_m = 2.0;
/// From the names of entries to their words.
constexpr double kTab_mm = 19.0;
constexpr double kKeptForFindings_mm = 16.0;

void include_around(Extent& extent, const Vec2& point, double around_m) {
    extent.include(point - Vec2::Constant(around_m));
    extent.include(point + Vec2::Constant(around_m));
}

double farthest_m(const checks::ShotFigures& figures) {
    double far_m = figures.view.focus_distance.m();
    for (const checks::SubjectFigures& subject : figures.subjects) {
        far_m = std::max(far_m, subject.depth_m);
    }
    return far_m;
}

/// Where the set that the frame shows stands, not far behind the subjects.
void include_seen(Extent& extent, const checks::ShotScene& scene,
                  const checks::ShotFigures& figures) {
    const double most_m = farthest_m(figures) + kBehind_m;
    const stage::FrameHits& hits = scene.hits;
    for (int row = 0; row < hits.rows; ++row) {
        for (int column = 0; column < hits.columns; ++column) {
            const auto& hit =
                hits.cells[static_cast<std::size_t>(row) * static_cast<std::size_t>(hits.columns)
                           + static_cast<std::size_t>(column)];
            const double u = (2.0 * column + 1.0) / hits.columns - 1.0;
            const double v = 1.0 - (2.0 * row + 1.0) / hits.rows;
            if (hit && hit->distance_m < most_m) {
                extent.include(
                    floor_of(scene.view->pose.lens
                             + scene.view->frame.ray_direction({u, v}) * hit->distance_m));
            }
        }
    }
}

/// Never more than the room with its walls.
Extent within_room(const Extent& extent, const plan::Room& room) {
    Extent whole;
    for (const Vec2& corner : outer_outline(room)) {
        whole.include(corner);
    }
    const Vec2 low = extent.low.cwiseMax(whole.low);
    const Vec2 high = extent.high.cwiseMin(whole.high);
    return (low.array() < high.array()).all() ? Extent{low, high, false} : extent;
}

Extent extent_of_shot(const plan::Plan& plan, const ShotShown& shown) {
    const checks::ShotScene& scene = *shown.scene;
    Extent extent;
    include_around(extent, shown.shot->at, kAround_m);
    for (const Vec2& place : shown.shot->moves) {
        include_around(extent, place, kAround_m);
    }
    for (const stage::PlacedCamera& camera : scene.stage.cameras) {
        if (camera.camera == shown.shot->camera) {
            for (const Vec2& corner : camera.operator_outline) {
                extent.include(corner);
            }
        }
    }
    for (const stage::Figure* figure : checks::subjects_on_floor(scene)) {
        include_around(extent, floor_of(figure->base), kAround_m);
    }
    include_seen(extent, scene, *shown.figures);
    return within_room(extent, plan.room);
}

Selection only(const SheetInput& input, const checks::ShotScene& scene) {
    Selection selection;
    selection.shots = {&scene};
    for (const checks::BeatScene& beat : input.analysis.beats) {
        if (beat.beat->id == scene.beat->id) {
            selection.beats = {&beat};
        }
    }
    return selection;
}

void draw_shot(Board& board, const SheetInput& input, const ShotShown& shown,
               const SheetOptions& options) {
    const plan::Plan& plan = *input.analysis.plan;
    const Selection selection = only(input, *shown.scene);
    if (options.ground) {
        draw_ground(board, plan);
    }
    draw_room(board, plan);
    draw_scenery(board, plan, input.catalogue);
    for (LabelRequest& label : board.labels) {
        label.may_drop = true;
    }
    if (options.coverage) {
        draw_shot_coverage(board, plan, *shown.scene, *shown.figures);
    }
    draw_people(board, plan, selection);
    for (const plan::Camera& camera : plan.cameras) {
        if (camera.id == shown.shot->camera) {
            plan::Plan alone;
            alone.units = plan.units;
            alone.cameras = {camera};
            draw_cameras(board, alone, selection);
        }
    }
    draw_booms(board, plan, selection);
}

/// Narrower than this, picture, words and findings stand one above the other.
constexpr double kTwoColumnsFrom_mm = 150.0;

void draw_frame(PanelWriter& panel, Marks& marks, const Box& box, const ShotShown& shown) {
    panel.heading(fmt::format("Shot {}", shown.shot->id.name));
    const auto pixels = frame_picture(*shown.scene, kFramePicture_px);
    if (pixels == nullptr) {
        return;
    }
    const Box picture =
        picture_box({box.left, box.top, panel.width_mm(), 0.5 * box.height}, *pixels);
    if (const auto room = panel.room(picture.height + 1.5)) {
        draw_frame_picture(marks, {room->left, room->top, picture.width, picture.height}, pixels,
                           true);
        panel.words("action 93 % dashed, title 90 % dotted, no set hatched");
        panel.gap();
    }
}

void set_words(PanelWriter& panel, const SheetInput& input, const ShotShown& shown) {
    for (const auto& [name, words] : words_about(input, shown)) {
        panel.entry(name, words, kTab_mm);
    }
}

/// The frame's picture and the shot in words; side by side, with the findings under the picture,
/// where there is room for that. Returns what is left for the findings.
Box draw_words(Marks& marks, const Box& box, const SheetInput& input, const ShotShown& shown) {
    if (box.width < kTwoColumnsFrom_mm) {
        PanelWriter panel{marks, box, input.measure, kKeptForFindings_mm};
        draw_frame(panel, marks, box, shown);
        set_words(panel, input, shown);
        return panel.rest();
    }
    const double half_mm = box.width / 2.0;
    const Box right{box.left + half_mm, box.top, half_mm, box.height};
    PanelWriter words{marks, right, input.measure};
    set_words(words, input, shown);
    const Box left{box.left, box.top, half_mm, box.height};
    PanelWriter panel{marks, left, input.measure, kKeptForFindings_mm};
    draw_frame(panel, marks, left, shown);
    return panel.rest();
}

std::vector<const checks::Finding*> findings_of(const SheetInput& input, const plan::Shot& shot,
                                                const SheetOptions& options) {
    std::vector<const checks::Finding*> findings = selected_findings(input.analysis, options);
    std::erase_if(findings,
                  [&](const checks::Finding* finding) { return finding->shot != shot.id; });
    return findings;
}

Result<Drawing> shot_sheet(const SheetInput& input, const SheetOptions& options,
                           const ShotShown& shown) {
    ScaledSheet sheet;
    sheet.extent = extent_of_shot(*input.analysis.plan, shown);
    sheet.is_cutout = true;
    sheet.with_legend = false;
    sheet.draw = [&](Board& board) { draw_shot(board, input, shown, options); };
    sheet.before_findings = [&](Marks& marks, const Box& box) {
        return draw_words(marks, box, input, shown);
    };
    sheet.findings = findings_of(input, *shown.shot, options);
    sheet.cautions = checks::cautions_for(*input.analysis.plan);
    return composed(input, options, sheet);
}

} // namespace

Result<std::vector<SheetJob>> shot_jobs(const SheetInput& input, const SheetOptions& options) {
    const Result<Selection> selection = selected(input.analysis, options);
    if (!selection) {
        return tl::unexpected{selection.error()};
    }
    std::vector<SheetJob> jobs;
    if (input.analysis.plan->room.outline.size() < 3) {
        return jobs;
    }
    for (ShotShown& shown : shots_shown(input, *selection)) {
        if (!shown.figures) {
            continue;
        }
        const std::string name = fmt::format("Shot {}", shown.shot->id.name);
        const auto kept = std::make_shared<const ShotShown>(std::move(shown));
        jobs.push_back({name, [input, kept](const SheetOptions& drawn) {
                            return shot_sheet(input, drawn, *kept);
                        }});
    }
    return jobs;
}

} // namespace throwline::sheet
