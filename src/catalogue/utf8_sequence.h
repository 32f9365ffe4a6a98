#pragma once

#include <cstddef>
#include <string>
#include <string_view>

/// UTF-8 as RFC 3629 defines it: no overlong forms, no surrogates, nothing beyond U+10FFFF.
namespace throwline::catalogue {

/// Bytes of the well-formed character that the text begins with; 0 when it begins with none.
std::size_t utf8_length(std::string_view text);
/// Appends a character; `code` is no surrogate and at most 0x10FFFF.
void append_utf8(std::string& text, unsigned code);

constexpr bool is_high_surrogate(unsigned code) {
    return code >= 0xD800U && code <= 0xDBFFU;
}
constexpr bool is_low_surrogate(unsigned code) {
    return code >= 0xDC00U && code <= 0xDFFFU;
}
constexpr unsigned joined_surrogates(unsigned high, unsigned low) {
    return 0x10000U + ((high - 0xD800U) << 10U) + (low - 0xDC00U);
}

} // namespace throwline::catalogue
