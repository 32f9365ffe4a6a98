#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace throwline {

/// The characters (Unicode code points, RFC 3629) of a text. A byte that starts no well-formed
/// sequence becomes one U+FFFD, so any bytes can be read and columns can still be counted.
std::vector<char32_t> characters_of(std::string_view text);

/// The opposite of `characters_of`.
std::string utf8_of(std::span<const char32_t> characters);

/// The text on one line that cannot upset a terminal: control characters, line ends among them, and
/// broken bytes as U+FFFD.
std::string on_one_line(std::string_view text);

/// The text as it can stand in a message: in double quotes, control characters and broken bytes as
/// U+FFFD, cut after `longest` characters.
std::string in_quotes(std::string_view text, std::size_t longest = 40);

} // namespace throwline
