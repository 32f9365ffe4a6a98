#pragma once

#include "checks/check.h"
#include "sheet/board.h"
#include "sheet/hatch.h"
#include "sheet/selection.h"

#include <functional>
#include <span>
#include <string>
#include <vector>

/// The marks of the floor plan, one family of things a function. Each lays its marks on the board,
/// asks for its lettering and notes what the legend must explain.
namespace throwline::sheet {

/// Squares on the floor at the grid's pitch, else at one metre or four feet, clipped to the room;
/// the pipes of the grid and single pipes.
void draw_ground(Board& board, const plan::Plan& plan);
/// Letters and numbers of the grid at the edges, `extent` being what the plan takes up.
void letter_grid(Board& board, const plan::Plan& plan, const Extent& extent);
/// Overall sizes inside the walls, beside and below the plan.
void draw_overall_sizes(Board& board, const plan::Plan& plan, const Extent& extent);

/// Walls with their thickness, doors with their swing, windows.
void draw_room(Board& board, const plan::Plan& plan);
/// Outer corners of the walls, as many as the outline has.
Polygon outer_outline(const plan::Room& room);
/// Free end of an open door's leaf; nothing without a swing.
std::optional<Vec2> door_leaf_end(const plan::Room& room, const plan::Opening& opening);

void draw_scenery(Board& board, const plan::Plan& plan, const catalogue::Catalogue& catalogue);

void draw_people(Board& board, const plan::Plan& plan, const Selection& selection);

/// Bodies and supports; `draw_coverage` shows what they take in.
void draw_cameras(Board& board, const plan::Plan& plan, const Selection& selection);
void draw_coverage(Board& board, const plan::Plan& plan, const Selection& selection);
/// The lens axis as far as what is in focus, ticked every metre or yard, a bar where it is sharp.
void draw_lens_axis(Board& board, const checks::ShotScene& scene, UnitSystem units);

/// What is lettered beside a lamp.
using LampLettering =
    std::function<std::vector<LabelLine>(const plan::Lamp&, const stage::PlacedLamp&)>;
/// Its name, then "ch 12, C1", what of that is known.
std::vector<LabelLine> lamp_name_lines(const plan::Lamp& lamp, const stage::PlacedLamp& placed);
std::string patch_text(const plan::Lamp& lamp);
void draw_lamps(Board& board, const plan::Plan& plan, std::span<const stage::PlacedLamp> lamps,
                const LampLettering& lettering = lamp_name_lines);
/// A kind of instrument as on the plan, for a key: facing right, its larger side `largest_mm`.
void add_instrument_symbol(Marks& marks, const Vec2& centre, double largest_mm,
                           const catalogue::Instrument& instrument);
/// Where beams fall at half their peak: on the floor, or at the height of the face aimed at.
void draw_pools(Board& board, const plan::Plan& plan, std::span<const stage::PlacedLamp> lamps);

void draw_booms(Board& board, const plan::Plan& plan, const Selection& selection);
void draw_outlets(Board& board, const plan::Plan& plan);

/// A finding with the number that it has on the sheet.
struct NumberedFinding {
    int number = 0;
    const checks::Finding* finding = nullptr;
};
/// What stands at a place that many findings are about.
enum class CrowdedSpot {
    /// All of their numbers, for paper: nothing else leads from its panel to the place.
    every_number,
    /// The worst one's number and how many more, for the screen, where the rest is a click away.
    worst_and_rest
};
/// Numbered lozenges beside the places, the worst first; findings at one place share a leader.
void draw_finding_marks(Board& board, std::span<const NumberedFinding> findings,
                        CrowdedSpot crowded = CrowdedSpot::every_number);
/// One lozenge with its number, as on the plan: filled, double or single by severity.
void add_lozenge(Marks& marks, const Vec2& centre, int number, checks::Severity severity);
/// Size of a lozenge.
inline constexpr double kLozengeWidth_mm = 8.0;
inline constexpr double kLozengeHeight_mm = 5.0;

} // namespace throwline::sheet
