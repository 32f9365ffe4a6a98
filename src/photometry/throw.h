#pragma once

#include "base/quantity.h"
#include "base/result.h"
#include "base/working.h"
#include "photometry/beam_model.h"
#include "photometry/cone_floor.h"

#include <optional>
#include <vector>

namespace throwline::photometry {

/// A lamp aimed at a point away from it.
struct ThrowSetup {
    BeamModel beam;
    /// Of the lamp above the floor.
    Length height;
    /// Along the floor from under the lamp to under the point.
    Length run;
    /// Of the point above the floor.
    Length at_height;
};

struct ThrowFigures {
    /// Straight from the lamp to the point.
    Length slant;
    /// Of the lamp above the horizontal, seen from the point; negative when it is lower.
    Angle elevation;
    /// On a level surface at the point.
    double horizontal_lx = 0.0;
    /// On a vertical surface at the point, turned to the lamp.
    double facing_lx = 0.0;
    /// Diameter of the beam (50 %) square to the axis at the point.
    Length beam_width;
    /// The beam (50 %) on the floor; empty when it is open or the lamp looks up.
    std::optional<ConeFootprint> floor_ellipse;
};

/// Error when lamp and point are the same, when a figure is out of range (peak or height < 0, beam
/// not between 0 and 180 deg, field below beam), or when the lamp is not above the floor.
Result<ThrowFigures> throw_figures(const ThrowSetup& setup);

/// One working for each shown figure, in the order of ThrowFigures; none when throw_figures()
/// fails.
std::vector<Working> throw_workings(const ThrowSetup& setup);

} // namespace throwline::photometry
