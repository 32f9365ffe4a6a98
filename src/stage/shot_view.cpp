#include "stage/shot_view.h"

#include "optics/extender.h"
#include "stage/framing.h"
#include "stage/moment.h"

#include <algorithm>

namespace throwline::stage {

namespace {

/// Farther than any room.
constexpr double kSight_m = 1000.0;
/// Nothing focuses nearer than this; also the answer for a subject behind the lens.
constexpr double kNearestFocus_m = 0.01;

/// Widest stop of the lens at a focal length behind its extender: evenly between both ends.
double widest_stop(const catalogue::Lens& lens, Length focal, bool extender) {
    const double factor = extender ? lens.extender : 1.0;
    const Length alone = std::clamp(focal / factor, lens.focal_min, lens.focal_max);
    const double share =
        lens.is_zoom() ? (alone - lens.focal_min) / (lens.focal_max - lens.focal_min) : 0.0;
    const double stop = lens.stop_wide + share * (lens.stop_long - lens.stop_wide);
    return optics::extended(alone, stop, factor).stop;
}

/// Depth of the first subject's nearer eye, else of the aim.
Length usual_focus(const optics::CameraPose& pose, std::span<const Figure* const> subjects,
                   const std::optional<Vec3>& aim) {
    double depth = kNearestFocus_m;
    if (!subjects.empty()) {
        const Figure& first = *subjects.front();
        depth = std::min(depth_m(pose, first.left_eye), depth_m(pose, first.right_eye));
    } else if (aim) {
        depth = depth_m(pose, *aim);
    }
    return Length::metres(std::max(depth, kNearestFocus_m));
}

} // namespace

std::optional<ShotView> view_of(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                                const Stage& stage, const plan::Shot& shot) {
    const plan::Camera* camera = plan::find(plan, shot.camera);
    if (camera == nullptr) {
        return std::nullopt;
    }
    const Moment moment{plan, catalogue, stage.beat, shot.id};
    const std::optional<Vec3> lens_place = lens_point(moment, *camera);
    ShotView view;
    view.sensor = catalogue.sensor(camera->sensor);
    view.lens = catalogue.lens(camera->lens);
    if (!lens_place || view.sensor == nullptr || view.lens == nullptr) {
        return std::nullopt;
    }
    const std::optional<Vec3> aim = aim_point(moment, shot.aim);
    const std::vector<const Figure*> subjects = subjects_of(stage, shot);
    const LensReach reach = reach_of(*view.sensor, *view.lens, shot.extender);
    const std::optional<Framing> framing = framed(shot, reach, *lens_place, subjects, aim);
    if (!framing) {
        return std::nullopt;
    }
    view.shot = shot.id;
    view.beat = stage.beat;
    view.pose = framing->pose;
    view.focal = framing->focal;
    view.wanted_focal = framing->wanted_focal;
    view.focal_chosen = framing->focal_chosen;
    view.stop = shot.stop.value_or(widest_stop(*view.lens, view.focal, shot.extender));
    view.focus_distance = shot.focus.value_or(usual_focus(view.pose, subjects, aim));
    view.angle = optics::angle_of_view(reach.area, view.focal);
    view.frame = optics::Frame{view.pose, view.angle};
    if (const PlacedCamera* placed = stage.camera(shot.camera)) {
        view.owner = placed->owner;
    }
    return view;
}

double depth_m(const optics::CameraPose& pose, const Vec3& point) {
    return optics::axes_of(pose).forward.dot(point - pose.lens);
}

FrameHits hits_over_frame(const Stage& stage, const ShotView& view, int columns, int rows) {
    FrameHits hits;
    hits.columns = columns;
    hits.rows = rows;
    std::vector<Vec3> directions;
    for (int row = 0; row < rows; ++row) {
        for (int column = 0; column < columns; ++column) {
            const double u = (2.0 * column + 1.0) / columns - 1.0;
            const double v = 1.0 - (2.0 * row + 1.0) / rows;
            directions.push_back(view.frame.ray_direction({u, v}));
        }
    }
    hits.cells = stage.rays->nearest_hits(view.pose.lens, directions, kSight_m, {view.owner, -1});
    return hits;
}

} // namespace throwline::stage
