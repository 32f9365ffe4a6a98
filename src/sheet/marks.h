#pragma once

#include "sheet/drawing.h"

#include <string>
#include <vector>

/// The pens of the house and short ways to set down marks.
namespace throwline::sheet {

using Marks = std::vector<Mark>;

/// Line weights, each root 2 from the next but one (ISO 128-2 steps, from memory): what is built,
/// what stands or hangs, lettering and dimensions, construction lines, the pale ground.
inline constexpr double kBuilt_mm = 0.5;
inline constexpr double kStanding_mm = 0.35;
inline constexpr double kFine_mm = 0.25;
inline constexpr double kConstruction_mm = 0.18;
inline constexpr double kHair_mm = 0.13;

/// Height of capitals. A3 reduced to A4 leaves 1.8 mm, the least of ISO 3098 (from memory).
inline constexpr double kLetter_mm = 2.5;
inline constexpr double kLargeLetter_mm = 3.5;
/// From baseline to baseline.
inline constexpr double kLinePitch_mm = 4.1;
/// How far letters such as g reach below the baseline, as a share of the height of capitals.
inline constexpr double kDescent = 0.34;

Pen pen(Ink ink, double width_mm, LinePattern pattern = LinePattern::solid, double strength = 1.0);
Pen no_pen();
Fill solid(Ink ink, double strength = 1.0);
Fill hatched(Ink ink, Hatch hatch, double strength = 1.0);

Path line(const Vec2& from, const Vec2& to, const Pen& pen);
Path open_path(std::vector<Vec2> points, const Pen& pen);
Path outline(std::vector<Vec2> points, const Pen& pen, const Fill& fill = {});
/// Points of an arc from one angle to another (plan sense: y up), on paper.
std::vector<Vec2> arc_points(const Vec2& centre, double radius_mm, double from_rad, double to_rad);
/// The mark with all its pens and fills weaker by a share; words and bare paper stay as they are.
Mark drawn_back(Mark mark, double share);
/// The unit direction on paper (y down) of an angle anticlockwise from +x.
Vec2 paper_direction(double angle_rad);

} // namespace throwline::sheet
