#pragma once

#include "checks/check.h"

#include <vector>

namespace throwline::checks {

/// Two shots that are cut together, each at the beat on its side of the cut: one that they share if
/// there is one, else the last beat of the first and the first beat of the second.
struct Cut {
    const ShotScene* before = nullptr;
    const ShotScene* after = nullptr;

    /// Where the camera of the first shot has come to, and where that of the second begins.
    Vec2 camera_before() const;
    Vec2 camera_after() const;
    /// The same beat on both sides.
    bool in_one_beat() const { return before->beat == after->beat; }
};

/// Every cut in the order of the plan: to the shots that a shot names, else to the next shot of the
/// plan when they share a beat or a subject.
std::vector<Cut> cuts_of(const CheckInput& input);

/// Subjects of the first shot who are subjects of the second as well, and on the floor in both.
std::vector<plan::Id<plan::Person>> shared_subjects(const Cut& cut);

/// "from shot 1A to shot 1B".
std::string said(const Cut& cut);

} // namespace throwline::checks
