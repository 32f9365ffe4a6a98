#pragma once

#include "checks/mark_light.h"
#include "checks/shot_figures.h"
#include "sheet/composition.h"

#include <string>
#include <utility>
#include <vector>

/// A shot in words, for its sheet and for the card that hangs on its camera.
namespace throwline::sheet {

/// A shot with its figures at the beat in which it is shown: the first in which it finds somebody
/// to look at.
struct ShotShown {
    const plan::Shot* shot = nullptr;
    const plan::Camera* camera = nullptr;
    const checks::ShotScene* scene = nullptr;
    /// Nothing when it never finds anybody.
    std::optional<checks::ShotFigures> figures;
    std::vector<checks::MarkLight> marks;
};
/// The shots of a selection in the order in which they are taken.
std::vector<ShotShown> shots_shown(const SheetInput& input, const Selection& selection);

/// "28 mm, T2.8"
std::string lens_words(const checks::ShotFigures& figures);
/// "at 9'-6\", sharp from 9'-0\" to 10'-1\""
std::string focus_words(const checks::ShotFigures& figures, UnitSystem units);
/// "4'-8\" up, tilted 2.3° down"
std::string height_words(const checks::ShotFigures& figures, UnitSystem units);
/// "medium close-up, wanted medium"; empty where nobody can be measured.
std::string size_words(const checks::SubjectFigures& subject,
                       const std::optional<optics::ShotSize>& wanted);
/// "to 3.20 m from wall 1 (bottom), ...": each place that the camera goes to.
std::string move_words(const plan::Plan& plan, const plan::Shot& shot);
/// "1, At the island; 2"
std::string beat_words(const plan::Plan& plan, const plan::Shot& shot);

/// A name and what is said about it, in the order in which an operator sets a shot up.
using WordEntry = std::pair<std::string, std::string>;
std::vector<WordEntry> words_about(const SheetInput& input, const ShotShown& shown);

} // namespace throwline::sheet
