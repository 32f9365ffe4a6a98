#pragma once

#include "card/card.h"
#include "checks/shot_figures.h"

/// Figures of a shot with how they came about.
namespace throwline::card {

/// The shot at the beat of now, else at its first; null while nothing is known of it.
const checks::ShotScene* scene_of(const CardInput& input, const plan::Id<plan::Shot>& shot);

Working focal_working(const stage::ShotView& view);
/// Of the frame that a size asks for, on somebody of usual stature.
Working size_working(ShotSize size);

/// "2.90 m": along the axis to a face.
Figure distance_figure(const checks::ShotFigures& figures, const checks::SubjectFigures& subject,
                       UnitSystem units);

/// What the shot takes in, of whom how much, and what is sharp.
void shot_figures(Card& card, const CardInput& input, const plan::Id<plan::Shot>& shot);

} // namespace throwline::card
