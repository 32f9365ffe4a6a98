#pragma once

#include "sheet/drawing.h"
#include "stage/level_map.h"

#include <array>
#include <memory>

namespace throwline::sheet {

/// A value and the line along which the level is that.
struct Contour {
    double level_lx = 0.0;
    /// Places on the plan, metres.
    std::vector<std::vector<Vec2>> lines;
};

/// Levels as tones of one map that reads in grey, with contours.
struct LevelPicture {
    std::shared_ptr<const Pixels> pixels;
    /// Where the picture lies on the plan: its lower left and upper right corner, metres.
    Vec2 low = Vec2::Zero();
    Vec2 high = Vec2::Zero();
    std::vector<Contour> contours;
    /// The level of the lightest tone.
    double highest_lx = 0.0;
    double height_m = 0.0;
};

LevelPicture level_picture(const stage::LevelMap& map, UnitSystem units);

/// Lines along which a grid of values, row by row from the lower left, has one value: marching
/// squares, places in cells of the grid (0..columns - 1, 0..rows - 1).
std::vector<std::vector<Vec2>> contour_lines(const std::vector<double>& values, int columns,
                                             int rows, double value);

/// A colour of the map for a share 0..1: dark blue over grey to yellow, even in lightness, fitted
/// to cividis (Nuñez, Anderton and Renslow 2018, doi 10.1371/journal.pone.0199239).
std::array<std::uint8_t, 3> level_colour(double share);

} // namespace throwline::sheet
