#pragma once

#include "checks/check.h"

#include <string>

namespace throwline::sheet {

/// What an operator asks about a frame, each in a word or two; empty where there is no answer.
struct FrameWords {
    std::string camera;
    /// "28 mm"
    std::string focal;
    /// Across and up: "65.5° x 39.6°"
    std::string angle;
    /// Of the subject it is framed for, else the first one that can be measured.
    std::string size;
    /// Of that subject along the lens axis: "2.90 m to Ana"; else of what is in focus.
    std::string distance;
    /// "T2.8"
    std::string stop;

    /// Those that there are, parted by middle dots.
    std::string line() const;
};
/// Nothing but the camera for a shot that cannot be resolved.
FrameWords frame_words(const checks::ShotScene& scene, UnitSystem units);

} // namespace throwline::sheet
