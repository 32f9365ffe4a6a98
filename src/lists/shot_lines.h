#pragma once

#include "checks/check.h"
#include "checks/shot_figures.h"

#include <optional>
#include <string>
#include <vector>

/// Shots in the order in which they are taken, and how the lists word them.
namespace throwline::lists {

/// Shots by the first beat that they are in, those of one beat as in the plan.
std::vector<const plan::Shot*> in_shooting_order(const plan::Plan& plan);

/// A shot at each of its beats. Scenes are without figures where nobody is there to look at.
struct ShotLine {
    const plan::Shot* shot = nullptr;
    std::vector<const checks::ShotScene*> scenes;
};
std::vector<ShotLine> shot_lines(const checks::Analysis& analysis);

/// What a shot gets: the size that it has on each subject who can be measured, once where they are
/// the same: "medium", "medium of Mara, medium long of Teo".
std::string size_got_text(const checks::ShotScene& scene);

/// "Mara, Teo"
std::string subjects_text(const plan::Shot& shot);
/// "1", "1, 2"
std::string beats_text(const plan::Shot& shot);
/// "beat 1", "beat 1, Welcome"
std::string beat_heading(const plan::Beat& beat);

/// From where the shot starts over its moves.
double move_length_m(const plan::Shot& shot);

/// Distance along the optical axis to the first subject who is on the floor.
std::optional<Length> subject_distance(const checks::ShotScene& scene);

/// "shot 2A finds nobody to look at in beat 2", for each scene without a view.
std::vector<std::string> unresolved_remarks(const std::vector<ShotLine>& lines);

} // namespace throwline::lists
