#pragma once

#include "plan/plan.h"

#include <optional>
#include <string>
#include <vector>

/// How a cable comes from an outlet to a lamp.
namespace throwline::lists {

/// Where the tape found no height, outlets are this high (common practice, no source).
inline constexpr Length kOutletHeight = Length::feet(1);
/// An outlet farther than this from every wall is let into the floor.
inline constexpr Length kAtTheWall = Length::millimetres(500);

enum class CableWay {
    /// Up to the pipe, square along the grid's directions, and down to the lamp.
    overhead,
    /// Along the walls, the shorter way round, and square off the wall to the lamp.
    along_walls,
    /// From an outlet in the floor, square along the grid's directions.
    over_floor
};
std::string_view name_of(CableWay way);

struct CableRun {
    Vec2 outlet = Vec2::Zero();
    CableWay way = CableWay::overhead;
    double level_m = 0.0;
    /// All ways up and down.
    double rise_m = 0.0;
    /// Doors and openings that it passes along the walls.
    std::vector<const plan::Opening*> passes;

    double length_m() const { return level_m + rise_m; }
};

/// The shortest from any outlet of the lamp's circuit; of equals the first in the plan. Nothing
/// without a circuit, an outlet or a place.
std::optional<CableRun> cable_run(const plan::Plan& plan, const plan::Lamp& lamp);

/// What is cut off a drum for a run: a tenth more for bends, and tails at both ends (common
/// practice, no source).
inline constexpr double kSlackShare = 0.1;
constexpr Length tails_in(UnitSystem units) {
    return units == UnitSystem::metric ? Length::metres(1.5) : Length::feet(5);
}
Length with_slack(const CableRun& run, UnitSystem units);

} // namespace throwline::lists
