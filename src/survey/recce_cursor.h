#pragma once

#include "base/result.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace throwline::survey {

/// Walks through the lines of a recce. Spaces and comments are stepped over before anything is
/// looked at; a comment begins with # at the start of a line or behind a space.
class RecceCursor {
  public:
    /// Lines end with LF, CR LF or CR; a byte order mark is dropped.
    RecceCursor(std::string_view text, std::string file);

    /// Steps to the start of the next line; false behind the last one.
    bool next_line();
    /// The place of what comes next on the line.
    Place place();
    bool at_end();

    /// Steps over a character if it comes next.
    bool skip(char32_t c);
    /// The same for any hyphen or dash.
    bool skip_dash();
    bool at_dash();
    bool at_quote();

    /// The bare word that comes next, without stepping over it: up to a space, a quote, a dash or
    /// one of , : = + ( ) #. Empty when there is none.
    std::string peek_word();
    std::string take_word();
    /// Steps over the word if it comes next; letter case does not count.
    bool skip_word(std::string_view word);

    /// A text in quotes, plain or typographic, that comes next; \" \\ and \n stand for a quote, a
    /// backslash and a line end. Fails when it does not end on the line.
    Result<std::string> take_quoted();
    /// Words up to the next length, comma, colon or quote, as the name of something.
    std::string take_words();
    /// What looks like a length; empty when nothing does.
    std::string take_length();
    /// All that is left of the line: without its comment, or with what looks like one.
    std::string take_rest();
    std::string take_raw_rest();
    /// At most so many characters of what is left of the line.
    std::string peek_rest(std::size_t most);
    /// Steps to the next comma, or to the end of the line.
    void skip_to_comma();
    void skip_to_end();

  private:
    char32_t at(std::size_t ahead) const;
    bool comment_at(std::size_t index) const;
    void skip_space();
    std::string taken(std::size_t count);
    std::span<const char32_t> rest() const;

    std::string file_;
    std::vector<std::vector<char32_t>> lines_;
    /// Counted from 1; 0 before the first.
    std::size_t line_ = 0;
    std::size_t position_ = 0;
};

/// Whether a name can stand in a recce without quotes, apart from its meaning as a word.
bool is_bare_name(std::string_view name);

/// "Note" and "note" are one word of a recce.
std::string lower_case(std::string_view word);

} // namespace throwline::survey
