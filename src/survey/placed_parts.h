#pragma once

#include "plan/plan.h"
#include "survey/recce.h"

#include <string>
#include <vector>

namespace throwline::survey {

/// Where a recce lies on the page: its first corner, and the direction of its first wall,
/// anticlockwise from +x.
struct RecceFrame {
    Vec2 origin = Vec2::Zero();
    double turn_rad = 0.0;
};

/// What a recce gives to a plan. Coordinates are rounded to a tenth of a millimetre.
struct PlacedParts {
    /// As walked.
    Polygon outline;
    std::vector<plan::Opening> openings;
    std::vector<plan::Scenery> scenery;
    /// By name, each with its outlets alone.
    std::vector<plan::Circuit> circuits;
    std::vector<std::string> notes;
    /// Bearing of true north on the page, when a wall's bearing was taken.
    std::optional<Angle> north;
    /// What was left out or taken as usual, a sentence each.
    std::vector<std::string> remarks;
    /// What cannot be, a sentence each: a door past the end of its wall, a window above the
    /// ceiling.
    std::vector<std::string> faults;
};

/// `ceiling` is the room's height.
PlacedParts placed_parts(const RecceResult& result, const RecceFrame& frame, Length ceiling,
                         UnitSystem units);

/// The names that a survey's openings and scenery get, in the order of PlacedParts, whether or not
/// they could be placed.
std::vector<std::string> opening_names(const plan::Survey& survey);
std::vector<std::string> scenery_names(const plan::Survey& survey);

} // namespace throwline::survey
