#include "lists/line_text.h"

#include "base/utf8.h"

#include <algorithm>

namespace throwline::lists {

std::string line_text(std::string_view text) {
    std::string line{text};
    std::replace_if(
        line.begin(), line.end(), [](char c) { return c == '\n' || c == '\r' || c == '\t'; }, ' ');
    return on_one_line(line);
}

} // namespace throwline::lists
