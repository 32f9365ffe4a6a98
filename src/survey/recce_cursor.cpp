#include "survey/recce_cursor.h"

#include "base/measure_tokens.h"
#include "base/utf8.h"

#include <algorithm>

namespace throwline::survey {

namespace {

constexpr char32_t kByteOrderMark = 0xFEFF;

bool is_one_of(char32_t c, std::u32string_view characters) {
    return characters.find(c) != std::u32string_view::npos;
}
bool is_space(char32_t c) {
    return is_one_of(c, U" \t\u00A0\u2007\u2009\u202F");
}
bool is_dash(char32_t c) {
    return is_one_of(c, U"-\u2010\u2011\u2012\u2013\u2014\u2212");
}
/// Phones put typographic quotes where plain ones were typed.
bool is_quote(char32_t c) {
    return is_one_of(c, U"\"\u201C\u201D\u201E");
}
bool is_name_character(char32_t c) {
    return c > U' ' && c != 0x7F && !is_space(c) && !is_dash(c) && !is_quote(c)
           && !is_one_of(c, U",:=+()#\\'\u2032\u2033\u2018\u2019");
}
bool begins_length(char32_t c) {
    return (c >= U'0' && c <= U'9') || is_one_of(c, U".½¼¾⅓⅔⅛⅜⅝⅞");
}

std::vector<std::vector<char32_t>> lines_of(std::string_view text) {
    std::vector<std::vector<char32_t>> lines{{}};
    const std::vector<char32_t> characters = characters_of(text);
    for (std::size_t i = 0; i < characters.size(); ++i) {
        const char32_t c = characters[i];
        if (c == U'\n' || c == U'\r') {
            i += c == U'\r' && i + 1 < characters.size() && characters[i + 1] == U'\n' ? 1 : 0;
            lines.emplace_back();
        } else if (i > 0 || c != kByteOrderMark) {
            lines.back().push_back(c);
        }
    }
    return lines;
}

} // namespace

RecceCursor::RecceCursor(std::string_view text, std::string file)
    : file_{std::move(file)}, lines_{lines_of(text)} {}

bool RecceCursor::next_line() {
    position_ = 0;
    line_ += line_ <= lines_.size() ? 1 : 0;
    return line_ <= lines_.size();
}

std::span<const char32_t> RecceCursor::rest() const {
    if (line_ == 0 || line_ > lines_.size()) {
        return {};
    }
    return std::span{lines_[line_ - 1]}.subspan(position_);
}

char32_t RecceCursor::at(std::size_t ahead) const {
    const auto characters = rest();
    return ahead < characters.size() ? characters[ahead] : U'\0';
}

bool RecceCursor::comment_at(std::size_t index) const {
    const std::vector<char32_t>& line = lines_[line_ - 1];
    return line[index] == U'#' && (index == 0 || is_space(line[index - 1]));
}

void RecceCursor::skip_space() {
    while (is_space(at(0))) {
        ++position_;
    }
    if (!rest().empty() && comment_at(position_)) {
        position_ = lines_[line_ - 1].size();
    }
}

Place RecceCursor::place() {
    skip_space();
    return {file_, {}, static_cast<int>(line_), static_cast<int>(position_) + 1};
}

bool RecceCursor::at_end() {
    skip_space();
    return rest().empty();
}

bool RecceCursor::skip(char32_t c) {
    const bool found = !at_end() && at(0) == c;
    position_ += found ? 1 : 0;
    return found;
}

bool RecceCursor::at_dash() {
    return !at_end() && is_dash(at(0));
}

bool RecceCursor::skip_dash() {
    const bool found = at_dash();
    position_ += found ? 1 : 0;
    return found;
}

bool RecceCursor::at_quote() {
    return !at_end() && is_quote(at(0));
}

std::string RecceCursor::taken(std::size_t count) {
    std::string text = utf8_of(rest().first(count));
    position_ += count;
    return text;
}

std::string RecceCursor::peek_word() {
    skip_space();
    std::size_t count = 0;
    while (is_name_character(at(count))) {
        ++count;
    }
    return utf8_of(rest().first(count));
}

std::string RecceCursor::take_word() {
    std::string word = peek_word();
    position_ += characters_of(word).size();
    return word;
}

bool RecceCursor::skip_word(std::string_view word) {
    const bool found = lower_case(peek_word()) == word;
    position_ += found ? word.size() : 0;
    return found;
}

Result<std::string> RecceCursor::take_quoted() {
    const Place start = place();
    const bool plain = at(0) == U'"';
    ++position_;
    std::vector<char32_t> text;
    for (; !rest().empty(); ++position_) {
        const char32_t c = at(0);
        if (plain ? c == U'"' : is_quote(c)) {
            ++position_;
            return utf8_of(text);
        }
        if (c != U'\\') {
            text.push_back(c);
            continue;
        }
        ++position_;
        if (!is_one_of(at(0), U"\"\\n") || rest().empty()) {
            --position_;
            return failure("behind a backslash in quotes comes \", \\ or n", place());
        }
        text.push_back(at(0) == U'n' ? U'\n' : at(0));
    }
    return failure("the quote that begins here does not end on this line", start);
}

std::string RecceCursor::take_words() {
    skip_space();
    std::size_t count = 0;
    std::size_t end = 0;
    bool apart = true;
    for (; count < rest().size(); ++count) {
        const char32_t c = at(count);
        const bool begins = apart && (begins_length(c) || comment_at(position_ + count));
        if (begins || is_quote(c) || is_one_of(c, U",:")) {
            break;
        }
        apart = is_space(c);
        end = apart ? end : count + 1;
    }
    return taken(end);
}

std::string RecceCursor::take_length() {
    skip_space();
    return taken(length_extent(rest()));
}

std::string RecceCursor::take_rest() {
    skip_space();
    std::size_t end = 0;
    for (std::size_t i = 0; i < rest().size() && !comment_at(position_ + i); ++i) {
        end = is_space(at(i)) ? end : i + 1;
    }
    std::string text = taken(end);
    skip_to_end();
    return text;
}

std::string RecceCursor::take_raw_rest() {
    while (is_space(at(0))) {
        ++position_;
    }
    std::size_t end = rest().size();
    while (end > 0 && is_space(at(end - 1))) {
        --end;
    }
    std::string text = taken(end);
    skip_to_end();
    return text;
}

std::string RecceCursor::peek_rest(std::size_t most) {
    skip_space();
    return utf8_of(rest().first(std::min(most, rest().size())));
}

void RecceCursor::skip_to_comma() {
    while (!at_end() && at(0) != U',') {
        ++position_;
    }
}

void RecceCursor::skip_to_end() {
    position_ += rest().size();
}

bool is_bare_name(std::string_view name) {
    const std::vector<char32_t> characters = characters_of(name);
    return !characters.empty()
           && std::all_of(characters.begin(), characters.end(), is_name_character);
}

std::string lower_case(std::string_view word) {
    std::string lower{word};
    for (char& c : lower) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return lower;
}

} // namespace throwline::survey
