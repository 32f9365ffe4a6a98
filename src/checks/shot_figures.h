#pragma once

#include "checks/check.h"
#include "checks/sight.h"
#include "checks/subject_frame.h"
#include "optics/coverage.h"
#include "optics/focus.h"

#include <optional>

namespace throwline::checks {

/// What a shot takes of one of its subjects.
struct SubjectFigures {
    plan::Id<plan::Person> person;
    /// Along the optical axis to the face.
    double depth_m = 0.0;
    /// What the frame covers on a square-on plane there.
    optics::Coverage coverage;
    /// Where the frame's edges and the shot's size fall on an upright subject; nothing for others.
    std::optional<SubjectFrame> frame;
    bool sharp = false;
    /// Nothing when hardly any of the subject lies in the frame.
    std::optional<Sight> sight;
};

/// The figures of one shot at one beat that a camera card or a table shows.
struct ShotFigures {
    plan::Id<plan::Shot> shot;
    plan::Id<plan::Beat> beat;
    plan::Id<plan::Camera> camera;
    stage::ShotView view;
    /// Nothing when the focus distance is not beyond the focal length.
    std::optional<optics::DepthOfField> sharp;
    Length close_focus;
    std::optional<optics::ShotSize> wanted;
    std::vector<SubjectFigures> subjects;
};

/// What is sharp; nothing when the focus distance is not beyond the focal length.
std::optional<optics::DepthOfField> sharp_range(const stage::ShotView& view);

/// Nothing when the shot cannot be resolved.
std::optional<ShotFigures> figures_of(const ShotScene& scene);

} // namespace throwline::checks
