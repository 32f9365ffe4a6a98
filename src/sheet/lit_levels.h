#pragma once

#include "sheet/frame_surfaces.h"

#include <stop_token>
#include <vector>

/// How much light falls on what a frame shows.
namespace throwline::sheet {

/// Levels on the surfaces of a frame, lux, one a cell of a grid that takes every `every`th surface
/// each way, row by row from the top left; 0 where a ray leaves the room.
struct LitLevels {
    int columns = 0;
    int rows = 0;
    int every = 1;
    std::vector<double> levels_lx;

    /// At a place of the frame's surfaces.
    double at(int column, int row) const {
        return levels_lx[static_cast<std::size_t>(row / every) * static_cast<std::size_t>(columns)
                         + static_cast<std::size_t>(column / every)];
    }
};

/// Where the light of a surface is worked out: just off it, so that it is not in its own way.
Vec3 lifted(const FrameSurface& surface);

/// From all lamps that burn, on each surface as it is turned, shadows and all. Worked out on every
/// kCoarse-th cell; between four that lie on one surface and hardly differ the rest is filled in
/// evenly, elsewhere each cell is worked out for itself. Of use only when not stopped.
LitLevels levels_over_frame(const stage::Stage& stage, const FrameSurfaces& surfaces, int every,
                            double needed_lx, const std::stop_token& stop = {});

/// What lamps, walls, floor and ceiling throw back and forth until it is even everywhere: E = flux
/// x rho / (A (1 - rho)), A and rho being the area and the mean reflectance of the room's surfaces.
/// The integrating sphere (Sumpner 1892, from memory); a room is none, so this is a mood rather
/// than a reading. 0 without a room. Light that leaves through openings is left out.
double bounced_level_lx(const stage::Stage& stage);

} // namespace throwline::sheet
