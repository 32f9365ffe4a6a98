#pragma once

#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

/// What hangs from pipes and points: for the check, and for the lists that show the same figures.
namespace throwline::checks {

/// A grid position as it is named everywhere, however it was typed: "C2" for "c2".
std::string grid_position(std::string_view typed);

/// Sums of masses stray from a limit that they meet by no more than this.
inline constexpr double kMassRounding_kg = 1e-9;

/// What hangs from one pipe or point.
struct Hanging {
    double mass_kg = 0.0;
    /// From the venue's papers; 0 when not known.
    double limit_kg = 0.0;
    std::vector<std::string> lamps;
    Vec2 at = Vec2::Zero();
};
/// By "grid point C2", "grid pipe 2", "pipe P1", "pipe P1 at 2.00 m".
using HangingByName = std::map<std::string, Hanging>;

/// Lamps of known instruments at known places; clamps, cables and accessories are not counted.
HangingByName everything_hanging(const plan::Plan& plan, const catalogue::Catalogue& catalogue);

/// "24.5 kg" or "54 lb"; hundredths where the usual decimals would tell little too much as nothing.
std::string mass_text(double mass_kg, UnitSystem units);

} // namespace throwline::checks
