#pragma once

#include "plan/plan.h"
#include "sheet/board.h"
#include "survey/recce.h"

/// A recce on a drawing: points, readings and how well they are known.
namespace throwline::sheet {

/// How the axes of a survey (first corner at the origin, first wall along +x) lie on the plan.
struct SurveyAxes {
    Vec2 origin = Vec2::Zero();
    double turn_rad = 0.0;
    /// Whether the plan's room is the one surveyed, so that its north is too.
    bool fits_plan = false;

    Vec2 on_plan(const Vec2& surveyed) const { return origin + rotated(surveyed, turn_rad); }
};
/// Those of the plan's room, where its corners are the survey's; else the survey's own.
SurveyAxes axes_on(const plan::Room& room, const survey::RecceResult& result);

/// How many times larger than true error ellipses are drawn: 1, 2 or 5 times a power of ten, so
/// that the largest is some millimetres long; 0 when no error is known.
double ellipse_factor(const survey::RecceResult& result, double mm_per_m);

/// Outline of a point's standard error ellipse, `factor` times as large, on the plan.
Polygon error_ellipse(const survey::SurveyedPoint& point, const SurveyAxes& axes, double factor);

/// What was read, as lettered beside its line: 14'-7 3/8", or metres to the millimetre, 5.207.
std::string read_text(double read_m, UnitSystem units);

/// "+3", "-12", "0": how much a reading had to change to fit the others, millimetres.
std::string change_text(const survey::SurveyedReading& reading);

/// Every tape reading as a line with what was read and how much that had to change, wrong ones in
/// vermilion with what they should probably have been; square signs, ellipses, names of points.
void draw_recce(Board& board, const survey::RecceResult& result, const SurveyAxes& axes,
                UnitSystem units);

} // namespace throwline::sheet
