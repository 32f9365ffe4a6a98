#pragma once

#include "base/polygon.h"
#include "plan/plan.h"

namespace throwline::checks {

/// An opening of the room on the plan.
struct OpeningPlace {
    /// Ends along the wall: nearer the wall's start, nearer its end.
    Vec2 start = Vec2::Zero();
    Vec2 end = Vec2::Zero();
    /// Unit vectors: along the wall, and square to it into the room.
    Vec2 along = Vec2::UnitX();
    Vec2 inward = Vec2::UnitY();
    double width_m = 0.0;

    Vec2 middle() const { return (start + end) / 2.0; }
};

/// The plan must be one that the reader accepts.
OpeningPlace place_of(const plan::Room& room, const plan::Opening& opening);

} // namespace throwline::checks
