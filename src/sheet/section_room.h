#pragma once

#include "sheet/section_cut.h"

/// The room as a section shows it.
namespace throwline::sheet {

/// A wall ahead of the cut, as far as it is seen.
struct WallAhead {
    std::size_t wall = 0;
    /// Along the wall, from its start.
    double from_m = 0.0;
    double to_m = 0.0;
    /// From the cut to its middle.
    double ahead_m = 0.0;
    /// Whether its inside is seen.
    bool faces_cut = true;
};
/// Furthest first; walls that are seen edge on are left out.
std::vector<WallAhead> walls_ahead(const SectionCut& cut, const plan::Room& room);

/// A wall's face with its doors and windows.
void draw_wall_ahead(Board& board, const SectionCut& cut, const plan::Room& room,
                     const WallAhead& wall);

/// A wall that the cut runs through: the rectangle of its thickness, along the cut.
struct WallCut {
    std::size_t wall = 0;
    CutStretch stretch;
    /// Doors, windows and openings that the cut runs through.
    std::vector<const plan::Opening*> openings;
};
std::vector<WallCut> walls_cut(const SectionCut& cut, const plan::Room& room);

/// Walls, floor and ceiling that the cut runs through, hatched.
void draw_room_cut(Board& board, const SectionCut& cut, const plan::Room& room);

/// Top of the highest wall and ceiling.
double room_top_m(const plan::Room& room);
/// Drawn depth of floor and ceiling.
inline constexpr double kSlab_mm = 3.0;

} // namespace throwline::sheet
