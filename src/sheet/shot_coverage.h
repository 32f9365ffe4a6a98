#pragma once

#include "checks/shot_figures.h"
#include "sheet/board.h"

namespace throwline::sheet {

/// What one shot takes in, cut by walls and by what stands higher than the lens: the fan with its
/// edges, the stretch in which it is sharp tinted and its near and far limits lettered, the axis,
/// and how far the lens stands from two walls.
void draw_shot_coverage(Board& board, const plan::Plan& plan, const checks::ShotScene& scene,
                        const checks::ShotFigures& figures);

} // namespace throwline::sheet
