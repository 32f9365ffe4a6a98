#pragma once

#include "ui/help/help_window.h"

#include <vector>

namespace throwline::ui {

/// The carried pages, and those made from the tables: all keys, all that can be typed, about.
std::vector<HelpPage> help_pages();

} // namespace throwline::ui
