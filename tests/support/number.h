#pragma once

#include <charconv>
#include <string_view>

namespace throwline::support {

/// The number that a text begins with, with a point whatever the locale (std::stod would follow
/// it); 0 when it begins with none.
inline double number_at_start(std::string_view text) {
    double number = 0.0;
    std::from_chars(text.data(), text.data() + text.size(), number);
    return number;
}

} // namespace throwline::support
