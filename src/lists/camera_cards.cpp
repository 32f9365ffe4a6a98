#include "base/length_text.h"
#include "checks/wording.h"
#include "lists/cells.h"
#include "lists/each_list.h"
#include "lists/place_text.h"
#include "lists/shot_lines.h"
#include "optics/focus.h"

#include <fmt/format.h>

namespace throwline::lists {

namespace {

std::vector<Column> columns() {
    return {{"shot", "Shot"},
            {"beat", "Beat"},
            {"subjects", "Subjects"},
            {"size", "Size"},
            {"place", "Place"},
            {"grid_place", "Under the grid"},
            {"lens_height_m", "Lens height", Align::right},
            {"focal_mm", "Focal length", Align::right},
            {"stop_t", "Stop", Align::right},
            {"focus_m", "Focus", Align::right},
            {"near_m", "Sharp from", Align::right},
            {"far_m", "Sharp to", Align::right},
            {"tilt_deg", "Tilt", Align::right},
            {"move_m", "Move", Align::right},
            {"move_to", "Moves to"},
            {"composition", "Composition"},
            {"notes", "Notes"}};
}

std::string heading_of(const plan::Camera& camera) {
    return joined(
        {checks::capitalised(checks::said(camera.id)), camera.sensor, camera.lens, camera.support});
}

Cell far_cell(const optics::DepthOfField& sharp, UnitSystem units) {
    return sharp.far_limit ? length(*sharp.far_limit, units) : words("as far as it goes");
}

/// Focal length, stop, focus, near, far, tilt; empty cells for a shot that finds nobody.
std::vector<Cell> lens_cells(const checks::ShotScene& scene, UnitSystem units) {
    if (!scene.view) {
        return std::vector<Cell>(6);
    }
    const stage::ShotView& view = *scene.view;
    const auto sharp = checks::sharp_range(view);
    return {{checks::focal_text(view.focal), view.focal.mm()},
            {checks::stop_text(view.stop), view.stop},
            length(view.focus_distance, units),
            sharp ? length(sharp->near_limit, units) : nothing(),
            sharp ? far_cell(*sharp, units) : nothing(),
            {degrees_text(view.pose.tilt), view.pose.tilt.deg()}};
}

Length lens_height(const checks::ShotScene& scene, const plan::Camera& camera) {
    return scene.view ? Length::metres(scene.view->pose.lens.z())
                      : scene.shot->height.value_or(camera.eye_height);
}

Row row_of(const checks::ShotScene& scene, const plan::Camera& camera, const plan::Plan& plan) {
    const plan::Shot& shot = *scene.shot;
    const std::string size = shot.size ? optics::name_of(*shot.size) : size_got_text(scene);
    const bool moves = !shot.moves.empty();
    Row row;
    row.cells = {words(shot.id.name),
                 words(scene.beat->id.name),
                 words(subjects_text(shot)),
                 words(size),
                 words(place_text(plan, shot.at)),
                 words(grid_place_text(plan, shot.at)),
                 length(lens_height(scene, camera), plan.units)};
    for (Cell& cell : lens_cells(scene, plan.units)) {
        row.cells.push_back(std::move(cell));
    }
    row.cells.push_back(moves ? length(Length::metres(move_length_m(shot)), plan.units)
                              : nothing());
    row.cells.push_back(words(moves ? place_text(plan, shot.moves.back()) : std::string{}));
    row.cells.push_back(words(shot.composition));
    row.cells.push_back(words(joined(shot.notes)));
    return row;
}

} // namespace

Table camera_cards(const ListInput& input) {
    const plan::Plan& plan = *input.analysis.plan;
    Table table{"camera-cards", "Camera cards", columns(), {}, {}};
    const std::vector<ShotLine> lines = shot_lines(input.analysis);
    for (const plan::Camera& camera : plan.cameras) {
        Section& section = table.sections.emplace_back();
        section.heading = heading_of(camera);
        std::vector<ShotLine> own;
        for (const ShotLine& line : lines) {
            if (line.shot->camera == camera.id) {
                own.push_back(line);
            }
        }
        for (const ShotLine& line : own) {
            for (const checks::ShotScene* scene : line.scenes) {
                section.rows.push_back(row_of(*scene, camera, plan));
            }
        }
        section.remarks = unresolved_remarks(own);
        if (own.empty()) {
            section.remarks.emplace_back("It takes no shot.");
        }
    }
    table.cautions = cautions_about({checks::Danger::ways_and_cables, checks::Danger::sun});
    return table;
}

} // namespace throwline::lists
