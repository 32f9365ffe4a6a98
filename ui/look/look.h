#pragma once

#include "ui/paint/ink_table.h"

#include <QColor>
#include <QFont>
#include <QPalette>

class QApplication;

/// How the window looks: ink on paper, light or dark. Everything that paints takes its colours from
/// here or from the ink table.
namespace throwline::ui {

using paint::Theme;

/// Follow the desktop, or one of them whatever it says.
enum class ThemeWish { as_desktop, light, dark };

/// The theme that a palette belongs to: by the lightness of its window ground.
Theme theme_of(const QPalette& palette);
/// Sets style, palette, font and style sheet of the whole program. The font is the desktop's; on
/// one without any, the one that sheets are lettered in.
void apply_theme(QApplication& application, ThemeWish wish);

/// Warm white or slate: the ground that the floor is drawn on.
QColor floor_ground(Theme theme);
/// Ground of panels, a shade off the floor's.
QColor panel_ground(Theme theme);
/// What is chosen, pointed at, or has the keyboard.
QColor choice_hue(Theme theme);
/// Lines between parts of the window; they only divide, nothing is lost without them.
QColor seam_hue(Theme theme);
/// Edges of what can be pressed, ticked or typed into: at least 3:1 against both grounds (WCAG 2.1,
/// 1.4.11).
QColor edge_hue(Theme theme);

/// Whether things may move on the screen to explain a change: not when the desktop asks for calm.
bool may_animate();

} // namespace throwline::ui
