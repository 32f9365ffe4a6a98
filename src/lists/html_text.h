#pragma once

#include <string>
#include <string_view>

namespace throwline::lists {

/// Text on one line as it can stand between tags and in a quoted attribute: &, <, >, " and ' as
/// entities.
std::string html_text(std::string_view text);

/// A hash as content security policies name it: the bytes of hexadecimal digits in base 64
/// (RFC 4648). An even number of digits.
std::string base64_of_hex(std::string_view digits);

} // namespace throwline::lists
