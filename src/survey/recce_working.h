#pragma once

#include "base/working.h"
#include "survey/recce.h"

/// How the figures of a recce came about (formulas of adjustment computations, textbook, from
/// memory; the tests after Baarda).
namespace throwline::survey {

/// Standard errors of a point and its error ellipse.
Working point_working(const RecceResult& result, const SurveyedPoint& point);
/// By how many standard errors a reading is off.
Working reading_working(const RecceResult& result, const SurveyedReading& reading);
/// The least error in a reading that would be found. Only for one with a `detectable`.
Working detectable_working(const RecceResult& result, const SurveyedReading& reading);
/// The test of all readings together. Only when something is checked.
Working agreement_working(const RecceResult& result);
/// All of them, in the order in which a result is read.
std::vector<Working> recce_workings(const RecceResult& result);

} // namespace throwline::survey
