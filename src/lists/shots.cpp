#include "base/length_text.h"
#include "checks/wording.h"
#include "lists/cells.h"
#include "lists/each_list.h"
#include "lists/place_text.h"
#include "lists/shot_lines.h"

#include <fmt/format.h>

namespace throwline::lists {

namespace {

std::vector<Column> columns() {
    return {{"shot", "Shot"},
            {"beats", "Beats"},
            {"camera", "Camera"},
            {"subjects", "Subjects"},
            {"size_wanted", "Size wanted"},
            {"size_got", "Size got"},
            {"composition", "Composition"},
            {"lens", "Lens"},
            {"focal_mm", "Focal length", Align::right},
            {"stop_t", "Stop", Align::right},
            {"lens_height_m", "Lens height", Align::right},
            {"distance_m", "Distance", Align::right},
            {"move_m", "Move", Align::right},
            {"move_to", "Moves to"},
            {"notes", "Notes"}};
}

/// The size in each beat, once where it is the same in all.
std::string sizes_got(const ShotLine& line) {
    std::vector<std::string> by_beat;
    bool same = true;
    std::string first;
    for (const checks::ShotScene* scene : line.scenes) {
        const std::string size = size_got_text(*scene);
        if (size.empty()) {
            continue;
        }
        first = by_beat.empty() ? size : first;
        same = same && size == first;
        by_beat.push_back(fmt::format("{}: {}", checks::said(scene->beat->id), size));
    }
    std::string text;
    for (const std::string& part : by_beat) {
        text += (text.empty() ? "" : "; ") + part;
    }
    return same ? first : text;
}

/// The first beat in which the shot can be taken.
const checks::ShotScene* first_taken(const ShotLine& line) {
    for (const checks::ShotScene* scene : line.scenes) {
        if (scene->view) {
            return scene;
        }
    }
    return nullptr;
}

Row row_of(const ShotLine& line, const plan::Plan& plan) {
    const plan::Shot& shot = *line.shot;
    const plan::Camera* camera = plan::find(plan, shot.camera);
    const checks::ShotScene* scene = first_taken(line);
    const stage::ShotView* view = scene != nullptr ? &*scene->view : nullptr;
    const bool moves = !shot.moves.empty();
    Row row;
    row.cells = {
        words(shot.id.name),
        words(beats_text(shot)),
        words(shot.camera.name),
        words(subjects_text(shot)),
        words(shot.size ? optics::name_of(*shot.size) : std::string{}),
        words(sizes_got(line)),
        words(shot.composition),
        words(camera != nullptr ? camera->lens : std::string{}),
        view != nullptr ? Cell{checks::focal_text(view->focal), view->focal.mm()} : nothing(),
        view != nullptr ? Cell{checks::stop_text(view->stop), view->stop} : nothing(),
        view != nullptr ? length(Length::metres(view->pose.lens.z()), plan.units) : nothing(),
        scene != nullptr ? length(subject_distance(*scene), plan.units) : nothing(),
        moves ? length(Length::metres(move_length_m(shot)), plan.units) : nothing(),
        words(moves ? place_text(plan, shot.moves.back()) : std::string{}),
        words(joined(shot.notes))};
    return row;
}

} // namespace

Table shots(const ListInput& input) {
    const plan::Plan& plan = *input.analysis.plan;
    Table table{"shots", "Shot list", columns(), {{}}, {}};
    const std::vector<ShotLine> lines = shot_lines(input.analysis);
    for (const ShotLine& line : lines) {
        table.sections.front().rows.push_back(row_of(line, plan));
    }
    table.sections.front().remarks = unresolved_remarks(lines);
    return table;
}

} // namespace throwline::lists
