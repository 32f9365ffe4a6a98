#pragma once

#include "plan/read_values.h"

/// What is allowed in a survey, whichever file it stands in.
namespace throwline::plan {

/// A crew names corners by letters; beyond this nobody has taped a room, and the adjustment's cost
/// grows with the cube of the number of points.
inline constexpr std::size_t kMostSurveyCorners = 100;
inline constexpr std::size_t kMostFloorPoints = 200;
inline constexpr std::size_t kMostTapeReadings = 2000;

inline constexpr LengthRange kTapePrecisions{Length{}, Length::metres(1), true};
inline constexpr NumberRange kTapePrecisionsPerMetre_mm{0.0, 100.0};
/// A corner that may be off by more is not believed to be square.
inline constexpr AngleRange kSquarenesses{Angle::degrees(0.01), Angle::degrees(20)};

} // namespace throwline::plan
