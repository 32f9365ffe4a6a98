#pragma once

#include "sheet/section_cut.h"

/// Lines of sight and of light in a section.
namespace throwline::sheet {

/// What a shot takes in between its upper and lower edge.
struct SideView {
    /// Lens, along the cut and up.
    Vec2 lens = Vec2::Zero();
    /// Above the horizontal, of the axis and of both edges.
    Angle axis;
    Angle upper;
    Angle lower;
    /// Whether it looks to the right of the section.
    bool to_the_right = true;
    /// How far its view is turned about the lens, on the plan, into the cut: its angles are drawn
    /// true.
    Angle turned;
};
/// Nothing for a cut without a shot.
std::optional<SideView> side_view(const SectionCut& cut);

/// Edges, axis and angles of the shot's view, from the lens to floor, ceiling and walls.
void draw_side_view(Board& board, const SectionCut& cut, const plan::Room& room);

/// Along the cut and up, where a lamp's light goes.
struct SideBeam {
    Vec2 face = Vec2::Zero();
    /// Where the axis ends, at the target, and its edges, half the beam angle to each side as seen
    /// on paper: at a wall, floor or ceiling.
    Vec2 aim = Vec2::Zero();
    Vec2 upper = Vec2::Zero();
    Vec2 lower = Vec2::Zero();
    /// Of the lamp as seen from what it lights, above the horizontal.
    Angle elevation;
    Length distance;
    /// Between the plan of the beam and the cut, 0 to 90 degrees.
    Angle off_the_cut;
};
/// Nothing for a lamp that does not burn or shines all round.
std::optional<SideBeam> side_beam(const SectionCut& cut, const plan::Room& room,
                                  const stage::PlacedLamp& lamp);

/// "35° up, throw 3.20 m", as seen from what it lights.
std::string beam_text(const SideBeam& beam, UnitSystem units);

/// Axis and, where the beam lies near the plane of the cut, its edges.
void draw_beams(Board& board, const SectionCut& cut, const plan::Plan& plan);
/// Whether a lamp is shown.
bool is_shown(const SectionCut& cut, const stage::PlacedLamp& lamp);

} // namespace throwline::sheet
