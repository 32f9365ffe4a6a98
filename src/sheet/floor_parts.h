#pragma once

#include "sheet/board.h"
#include "sheet/floor_drawing.h"
#include "sheet/selection.h"

#include <stop_token>

/// What the floor of the screen is drawn from, and its overlays, one a file. Each lays its marks on
/// the board and asks for its lettering.
namespace throwline::sheet {

/// The plan with a stage that has no rays, and what is shown of it. Refers to its question.
struct FloorScene {
    const FloorQuestion& question;
    /// What is drawn of the plan: without what is left out, or only what was asked for.
    plan::Plan drawn;
    stage::Stage stage;
    std::vector<checks::BeatScene> beats;
    /// The shot of now first, then those that the other cameras are at.
    std::vector<checks::ShotScene> shots;
    Selection selection;
};

/// The band across a shot's coverage in which things are sharp, with its distances.
void draw_focus_band(Board& board, const FloorScene& scene);
/// From the lens to the eyes of each subject, and what is in the way; raises rays for it.
void draw_sight_lines(Board& board, const FloorScene& scene);
/// Edges of the fields of lamps with their throws.
void draw_beams(Board& board, const FloorScene& scene);
/// From each lamp to its circuit's nearest outlet, and what hangs on each circuit.
void draw_circuits(Board& board, const FloorScene& scene);
/// The floor in front of each way out that is kept clear.
void draw_ways_out(Board& board, const FloorScene& scene);
/// The level map with its contours and legend.
void draw_levels(Board& board, const FloorScene& scene);
/// Numbered findings about now.
void draw_findings_now(Board& board, const FloorScene& scene);

} // namespace throwline::sheet
