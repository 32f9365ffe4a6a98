#pragma once

#include "edit/moves.h"

#include <optional>

class QWidget;

namespace throwline::ui {

/// Asks for rows and columns of copies, and how far apart; nothing when left.
std::optional<edit::Array> asked_rows(QWidget* over, UnitSystem units);

} // namespace throwline::ui
