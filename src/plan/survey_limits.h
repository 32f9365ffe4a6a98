#pragma once

#include "plan/read_values.h"

/// What is allowed in a survey, whichever file it stands in.
namespace throwline::plan {

/// A crew names corners by letters; beyond this nobody tapes a room. The adjustment's cost grows
/// with the cube of the number of points and is some seconds at these limits.
inline constexpr std::size_t kMostSurveyCorners = 40;
inline constexpr std::size_t kMostFloorPoints = 60;
inline constexpr std::size_t kMostTapeReadings = 500;
inline constexpr std::size_t kMostChains = 200;

inline constexpr LengthRange kTapePrecisions{Length{}, Length::metres(1), true};
inline constexpr NumberRange kTapePrecisionsPerMetre_mm{0.0, 100.0};
/// A corner that may be off by more is not believed to be square.
inline constexpr AngleRange kSquarenesses{Angle::degrees(0.01), Angle::degrees(20)};

} // namespace throwline::plan
