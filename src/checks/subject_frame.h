#pragma once

#include "checks/check.h"
#include "optics/shot_size.h"

#include <optional>

namespace throwline::checks {

/// What the frame of a shot takes of one upright subject, measured on the vertical line through the
/// subject's head, so that it holds for a tilted camera.
struct SubjectFrame {
    double bottom_z_m = 0.0;
    double top_z_m = 0.0;
    /// Along the optical axis, from the lens to the subject's face.
    double depth_m = 0.0;
    optics::PersonInFrame person;
    optics::ShotSize size = optics::ShotSize::full;
};

/// Nothing for somebody behind the lens, somebody who lies (sizes go by upright people), or a
/// camera that looks so steeply that the frame has no lower edge there.
std::optional<SubjectFrame> subject_frame(const stage::ShotView& view, const stage::Figure& figure);

/// The subject whose size comes nearest to the wanted one, the first of equals; with several
/// subjects a shot is named by the one it is framed for. Nothing when nobody can be measured.
struct SizedSubject {
    const stage::Figure* figure = nullptr;
    SubjectFrame frame;
};
std::optional<SizedSubject> best_sized_subject(const ShotScene& scene, optics::ShotSize wanted);

} // namespace throwline::checks
