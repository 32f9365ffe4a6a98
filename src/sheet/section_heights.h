#pragma once

#include "sheet/section_cut.h"

#include <string>
#include <vector>

/// Heights beside a section.
namespace throwline::sheet {

/// A height above the floor and whose it is.
struct Level {
    double height_m = 0.0;
    /// "eyes Ana", "grid", "top of back wall +2"
    std::string words;
};

/// Floor, platforms, eyes, lens, tops of flats and drapes, grid and pipes, ceiling: of what the
/// section shows, lowest first; things at one height (to the tape's step) share a level.
std::vector<Level> levels_of(const SectionCut& cut, const plan::Plan& plan,
                             const catalogue::Catalogue& catalogue);

/// Running heights from the floor, each lettered at its mark, left of `left_m` along the cut; words
/// that would stand too close are moved apart.
void draw_levels(Board& board, const std::vector<Level>& levels, double left_m, UnitSystem units);

/// Floor to flats, grid and ceiling as a chain with its overall, right of `right_m`.
void draw_height_chain(Board& board, const SectionCut& cut, const plan::Plan& plan, double right_m);

/// Wall to lens to first subject to wall, under the floor.
void draw_foot_chain(Board& board, const SectionCut& cut, UnitSystem units);

} // namespace throwline::sheet
