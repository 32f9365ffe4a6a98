#include "catalogue/json_scanner.h"

#include "catalogue/utf8_sequence.h"

#include <fmt/format.h>

namespace throwline::catalogue {

namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_continuation(char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

/// A control character except NUL may not stand raw inside a string either (RFC 8259, 7).
bool is_control(char c) {
    return static_cast<unsigned char>(c) < 0x20U;
}

} // namespace

JsonScanner::JsonScanner(std::string_view text) : text_{text} {
    if (text_.starts_with(kByteOrderMark)) {
        text_.remove_prefix(kByteOrderMark.size());
    }
}

void JsonScanner::skip_space() {
    while (!at_end() && std::string_view{" \t\r\n"}.find(text_[next_]) != std::string_view::npos) {
        ++next_;
    }
}

bool JsonScanner::take(char expected) {
    if (at_end() || text_[next_] != expected) {
        return false;
    }
    ++next_;
    return true;
}

bool JsonScanner::take_word(std::string_view word) {
    if (!text_.substr(next_).starts_with(word)) {
        return false;
    }
    next_ += word.size();
    return true;
}

TextPosition JsonScanner::here() {
    for (; counted_ < next_; ++counted_) {
        if (text_[counted_] == '\n') {
            position_ = {position_.line + 1, 1};
        } else if (!is_continuation(text_[counted_])) {
            ++position_.column;
        }
    }
    return position_;
}

bool JsonScanner::fail(std::string message) {
    if (fault_.empty()) {
        fault_ = std::move(message);
        fault_position_ = here();
    }
    return false;
}

std::string JsonScanner::found() const {
    if (at_end()) {
        return "the end of the file";
    }
    const std::string_view rest = text_.substr(next_);
    if (const std::size_t length = utf8_length(rest); length > 0 && !is_control(rest[0])) {
        return fmt::format("'{}'", rest.substr(0, length));
    }
    return fmt::format("byte 0x{:02X}", static_cast<unsigned char>(rest[0]));
}

std::optional<std::string> JsonScanner::string() {
    std::string value;
    take('"');
    while (!take('"')) {
        if (at_end()) {
            fail("the file ends inside a string");
            return std::nullopt;
        }
        if (!(peek() == '\\' ? escape(value) : copy_character(value))) {
            return std::nullopt;
        }
    }
    return value;
}

bool JsonScanner::copy_character(std::string& value) {
    const std::string_view rest = text_.substr(next_);
    if (is_control(rest[0])) {
        return fail(fmt::format("a control character (byte 0x{:02X}) must be escaped in a string",
                                static_cast<unsigned char>(rest[0])));
    }
    const std::size_t length = utf8_length(rest);
    if (length == 0) {
        return fail(
            fmt::format("byte 0x{:02X} is not valid UTF-8", static_cast<unsigned char>(rest[0])));
    }
    value.append(rest.substr(0, length));
    next_ += length;
    return true;
}

bool JsonScanner::escape(std::string& value) {
    take('\\');
    constexpr std::string_view kLetters = "\"\\/bfnrt";
    constexpr std::string_view kMeanings = "\"\\/\b\f\n\r\t";
    if (take('u')) {
        return unicode_escape(value);
    }
    const std::size_t which = at_end() ? std::string_view::npos : kLetters.find(peek());
    if (which == std::string_view::npos) {
        return fail(fmt::format("a backslash may not be followed by {}", found()));
    }
    value.push_back(kMeanings[which]);
    ++next_;
    return true;
}

bool JsonScanner::unicode_escape(std::string& value) {
    const std::optional<unsigned> first = four_hex_digits();
    if (!first) {
        return false;
    }
    unsigned code = *first;
    if (code == 0) {
        return fail("the character U+0000 is not accepted");
    }
    if (is_high_surrogate(code)) {
        const bool paired = take_word("\\u");
        const std::optional<unsigned> second = paired ? four_hex_digits() : std::nullopt;
        if (!second || !is_low_surrogate(*second)) {
            return fail("half of a surrogate pair stands alone");
        }
        code = joined_surrogates(code, *second);
    } else if (is_low_surrogate(code)) {
        return fail("half of a surrogate pair stands alone");
    }
    append_utf8(value, code);
    return true;
}

std::optional<unsigned> JsonScanner::four_hex_digits() {
    unsigned code = 0;
    for (int i = 0; i < 4; ++i) {
        constexpr std::string_view kHex = "0123456789abcdef";
        const char c = peek();
        const char lower = (c >= 'A' && c <= 'F') ? static_cast<char>(c - 'A' + 'a') : c;
        const std::size_t digit = at_end() ? std::string_view::npos : kHex.find(lower);
        if (digit == std::string_view::npos) {
            fail(fmt::format("\\u needs four hexadecimal digits, found {}", found()));
            return std::nullopt;
        }
        code = code * 16U + static_cast<unsigned>(digit);
        ++next_;
    }
    return code;
}

bool JsonScanner::digits() {
    if (!is_digit(peek())) {
        return fail(fmt::format("expected a digit, found {}", found()));
    }
    while (is_digit(peek())) {
        ++next_;
    }
    return true;
}

std::optional<std::string_view> JsonScanner::number() {
    const std::size_t start = next_;
    take('-');
    if (take('0')) {
        if (is_digit(peek())) {
            fail("a number may not begin with 0 and a further digit");
            return std::nullopt;
        }
    } else if (!digits()) {
        return std::nullopt;
    }
    if (take('.') && !digits()) {
        return std::nullopt;
    }
    if (take('e') || take('E')) {
        if (!take('+')) {
            take('-');
        }
        if (!digits()) {
            return std::nullopt;
        }
    }
    return text_.substr(start, next_ - start);
}

} // namespace throwline::catalogue
