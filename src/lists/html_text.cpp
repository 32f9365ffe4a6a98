#include "lists/html_text.h"

#include "lists/line_text.h"

#include <cstdint>

namespace throwline::lists {

namespace {

unsigned digit_of(char c) {
    return static_cast<unsigned>(c <= '9' ? c - '0' : c - 'a' + 10);
}

} // namespace

std::string html_text(std::string_view text) {
    std::string html;
    for (const char c : line_text(text)) {
        switch (c) {
        case '&':
            html += "&amp;";
            break;
        case '<':
            html += "&lt;";
            break;
        case '>':
            html += "&gt;";
            break;
        case '"':
            html += "&quot;";
            break;
        case '\'':
            html += "&#39;";
            break;
        default:
            html += c;
        }
    }
    return html;
}

std::string base64_of_hex(std::string_view digits) {
    constexpr std::string_view kLetters =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    constexpr unsigned kLetterBits = 6;
    std::string text;
    std::uint32_t bits = 0;
    unsigned held = 0;
    for (const char c : digits) {
        bits = (bits << 4U) | digit_of(c);
        held += 4;
        if (held >= kLetterBits) {
            held -= kLetterBits;
            text += kLetters[(bits >> held) & 63U];
        }
    }
    if (held > 0) {
        text += kLetters[(bits << (kLetterBits - held)) & 63U];
    }
    while (text.size() % 4 != 0) {
        text += '=';
    }
    return text;
}

} // namespace throwline::lists
