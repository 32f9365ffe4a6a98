#include "checks/subject_frame.h"

#include "checks/framing.h"

#include <cmath>

namespace throwline::checks {

namespace {

/// Below this the plane of a frame edge holds the vertical: no height to speak of.
constexpr double kSteepest = 1e-6;

/// Height at which the vertical through `point` meets the plane through the lens that projects to
/// the upper (edge_v = 1) or lower (-1) edge of the frame.
std::optional<double> edge_height_m(const optics::Frame& frame, const Vec3& point, double edge_v) {
    const Vec3 normal = frame.axes().down + edge_v * frame.tan_half_v() * frame.axes().forward;
    if (std::abs(normal.z()) < kSteepest) {
        return std::nullopt;
    }
    const double z_m = point.z() - normal.dot(point - frame.pose().lens) / normal.z();
    const Vec3 meets{point.x(), point.y(), z_m};
    return frame.depth(meets) > optics::kNearPlane_m ? std::optional{z_m} : std::nullopt;
}

} // namespace

std::optional<SubjectFrame> subject_frame(const stage::ShotView& view,
                                          const stage::Figure& figure) {
    const double depth_m = view.frame.depth(figure.face);
    if (figure.pose == plan::Pose::lie || depth_m < optics::kNearPlane_m) {
        return std::nullopt;
    }
    const std::optional<double> bottom_m = edge_height_m(view.frame, figure.crown, -1.0);
    const std::optional<double> top_m = edge_height_m(view.frame, figure.crown, 1.0);
    if (!bottom_m || !top_m || *top_m <= *bottom_m) {
        return std::nullopt;
    }
    SubjectFrame result;
    result.bottom_z_m = *bottom_m;
    result.top_z_m = *top_m;
    result.depth_m = depth_m;
    result.person.bottom_cut_share = optics::bottom_cut_share(
        Length::metres(figure.crown.z()), Length::metres(*bottom_m), figure.stature);
    result.person.frame_height_share = (*top_m - *bottom_m) / figure.stature.m();
    result.size = optics::classify_shot_size(result.person);
    return result;
}

std::optional<SizedSubject> best_sized_subject(const ShotScene& scene, optics::ShotSize wanted) {
    std::optional<SizedSubject> best;
    for (const stage::Figure* figure : subjects_on_floor(scene)) {
        const std::optional<SubjectFrame> frame = subject_frame(*scene.view, *figure);
        if (!frame) {
            continue;
        }
        if (!best
            || optics::steps_between(frame->size, wanted)
                   < optics::steps_between(best->frame.size, wanted)) {
            best = SizedSubject{figure, *frame};
        }
    }
    return best;
}

} // namespace throwline::checks
