#pragma once

class QLineEdit;

namespace throwline::ui {

/// Gives a line the button that empties it, with a name to be heard.
void add_clear_button(QLineEdit& line);

} // namespace throwline::ui
