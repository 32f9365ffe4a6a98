#include "base/utf8.h"

#include <algorithm>

namespace throwline {

namespace {

constexpr char32_t kReplacement = 0xFFFD;

/// How many bytes a sequence has by its first byte; 0 when it can start none.
std::size_t sequence_length(unsigned char first) {
    if (first < 0x80) {
        return 1;
    }
    if (first >= 0xC2 && first <= 0xDF) {
        return 2;
    }
    if (first >= 0xE0 && first <= 0xEF) {
        return 3;
    }
    return first >= 0xF0 && first <= 0xF4 ? 4 : 0;
}

/// Overlong forms, surrogates and numbers beyond Unicode are not characters (RFC 3629, section 3).
bool is_character(char32_t value, std::size_t length) {
    constexpr char32_t kLeast[] = {0, 0, 0x80, 0x800, 0x10000};
    return value >= kLeast[length] && value <= 0x10FFFF && (value < 0xD800 || value > 0xDFFF);
}

/// The character at the start of `text` and its bytes; a broken one takes one byte.
std::pair<char32_t, std::size_t> first_character(std::string_view text) {
    const auto first = static_cast<unsigned char>(text[0]);
    const std::size_t length = sequence_length(first);
    if (length == 1) {
        return {first, 1};
    }
    if (length == 0 || length > text.size()) {
        return {kReplacement, 1};
    }
    char32_t value = first & (0x7FU >> length);
    for (std::size_t i = 1; i < length; ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        if ((byte & 0xC0U) != 0x80U) {
            return {kReplacement, 1};
        }
        value = (value << 6U) | (byte & 0x3FU);
    }
    return is_character(value, length) ? std::pair{value, length} : std::pair{kReplacement, 1UL};
}

void append(std::string& text, char32_t c) {
    const auto tail = [&](unsigned shift) {
        text += static_cast<char>(0x80U | ((c >> shift) & 0x3FU));
    };
    if (c < 0x80) {
        text += static_cast<char>(c);
    } else if (c < 0x800) {
        text += static_cast<char>(0xC0U | (c >> 6U));
        tail(0);
    } else if (c < 0x10000) {
        text += static_cast<char>(0xE0U | (c >> 12U));
        tail(6);
        tail(0);
    } else {
        text += static_cast<char>(0xF0U | (c >> 18U));
        tail(12);
        tail(6);
        tail(0);
    }
}

bool is_control(char32_t c) {
    return c < 0x20 || (c >= 0x7F && c < 0xA0);
}

} // namespace

std::vector<char32_t> characters_of(std::string_view text) {
    std::vector<char32_t> characters;
    characters.reserve(text.size());
    while (!text.empty()) {
        const auto [character, bytes] = first_character(text);
        characters.push_back(character);
        text.remove_prefix(bytes);
    }
    return characters;
}

std::string utf8_of(std::span<const char32_t> characters) {
    std::string text;
    text.reserve(characters.size());
    for (const char32_t c : characters) {
        append(text, c);
    }
    return text;
}

std::string on_one_line(std::string_view text) {
    std::vector<char32_t> characters = characters_of(text);
    std::replace_if(characters.begin(), characters.end(), is_control, kReplacement);
    return utf8_of(characters);
}

std::string in_quotes(std::string_view text, std::size_t longest) {
    // A character has at most four bytes, so the rest of a huge text need not be looked at.
    std::vector<char32_t> characters = characters_of(text.substr(0, 4 * (longest + 1)));
    std::replace_if(characters.begin(), characters.end(), is_control, kReplacement);
    const bool cut = characters.size() > longest;
    characters.resize(std::min(characters.size(), longest));
    return '"' + utf8_of(characters) + (cut ? "...\"" : "\"");
}

} // namespace throwline
