#pragma once

#include <string>
#include <string_view>

namespace throwline::lists {

/// A text on one line: line ends and tabs as spaces, what else cannot be shown as U+FFFD.
std::string line_text(std::string_view text);

} // namespace throwline::lists
