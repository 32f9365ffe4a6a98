#pragma once

#include "sheet/board.h"
#include "sheet/floor_drawing.h"
#include "sheet/selection.h"

#include <algorithm>
#include <span>
#include <stop_token>
#include <vector>

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

/// Draws the items about places in sight first, in sight, then those about places around it, so
/// that nothing hangs out of what is looked at. `place` gives an item's place on paper; `draw` is
/// given a span of items, whose order else stays.
template <class Item, class Place, class Draw>
void in_sight_first(Board& board, const Box& in_sight, std::vector<Item>& items, const Place& place,
                    const Draw& draw) {
    const auto around = std::stable_partition(items.begin(), items.end(), [&](const Item& item) {
        return in_sight.contains(place(item));
    });
    const auto seen = static_cast<std::size_t>(around - items.begin());
    board.field.keep_within(in_sight);
    draw(std::span{items}.first(seen));
    board.field.keep_within({});
    draw(std::span{items}.subspan(seen));
}

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
