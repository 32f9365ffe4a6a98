#include "checks/shot_figures.h"

#include "checks/framing.h"

namespace throwline::checks {

namespace {

optics::FocusSetting focus_setting(const stage::ShotView& view) {
    return {view.focal, view.stop, view.sensor->circle_of_confusion};
}

SubjectFigures subject_figures(const ShotScene& scene, const stage::ShotView& view,
                               const stage::Figure& figure) {
    SubjectFigures made;
    made.person = figure.person;
    made.depth_m = view.frame.depth(figure.face);
    const Length depth = Length::metres(made.depth_m);
    if (made.depth_m > 0.0) {
        made.coverage = optics::coverage(optics::effective_sensor(*view.sensor), view.focal, depth);
        made.sharp = optics::is_sharp(focus_setting(view), view.focus_distance, depth);
    }
    made.frame = subject_frame(view, figure);
    made.sight = sight_of(scene, view, figure);
    return made;
}

} // namespace

std::optional<optics::DepthOfField> sharp_range(const stage::ShotView& view) {
    return optics::depth_of_field(focus_setting(view), view.focus_distance);
}

std::optional<ShotFigures> figures_of(const ShotScene& scene) {
    if (!scene.view) {
        return std::nullopt;
    }
    ShotFigures figures;
    figures.shot = scene.shot->id;
    figures.beat = scene.beat->id;
    figures.camera = scene.shot->camera;
    figures.view = *scene.view;
    figures.sharp = sharp_range(*scene.view);
    figures.close_focus = scene.view->lens->close_focus;
    figures.wanted = scene.shot->size;
    for (const stage::Figure* figure : subjects_on_floor(scene)) {
        figures.subjects.push_back(subject_figures(scene, *scene.view, *figure));
    }
    return figures;
}

} // namespace throwline::checks
