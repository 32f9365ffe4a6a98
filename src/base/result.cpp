#include "base/result.h"

#include "base/utf8.h"

#include <fmt/format.h>

namespace throwline {

std::string text_of(const Error& error) {
    const Place& place = error.place;
    std::string text = place.file;
    if (place.line > 0) {
        text += fmt::format("{}{}", text.empty() ? "line " : ":", place.line);
        if (place.column > 0) {
            text += fmt::format(":{}", place.column);
        }
    }
    if (!place.pointer.empty()) {
        text += (text.empty() ? "" : ": ") + place.pointer;
    }
    return on_one_line(text.empty() ? error.message : text + ": " + error.message);
}

} // namespace throwline
