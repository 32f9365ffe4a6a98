#pragma once

#include "base/result.h"

#include <optional>
#include <string>
#include <string_view>

namespace throwline::catalogue {

struct TextPosition {
    int line = 1;
    /// In characters, from 1.
    int column = 1;
};

/// Walks over JSON text one token at a time and knows where it is. A function that returns nullopt
/// or false has set the fault, after which nothing more may be read.
class JsonScanner {
  public:
    explicit JsonScanner(std::string_view text);

    void skip_space();
    bool at_end() const { return next_ == text_.size(); }
    /// The next character, or NUL at the end.
    char peek() const { return at_end() ? '\0' : text_[next_]; }
    /// Steps over `expected` if it comes next.
    bool take(char expected);
    /// Steps over a word such as "true" if it comes next.
    bool take_word(std::string_view word);
    /// A string whose opening quotation mark comes next; its value in UTF-8.
    std::optional<std::string> string();
    /// A number as written; its grammar has been checked, its range not.
    std::optional<std::string_view> number();

    /// Where the next character stands.
    TextPosition here();
    /// Always false, so that a failing function can return it.
    bool fail(std::string message);
    const std::string& fault() const { return fault_; }
    TextPosition fault_position() const { return fault_position_; }
    /// What comes next, for "expected ..., found 'x'".
    std::string found() const;

  private:
    bool escape(std::string& value);
    bool unicode_escape(std::string& value);
    std::optional<unsigned> four_hex_digits();
    bool copy_character(std::string& value);
    bool digits();

    std::string_view text_;
    std::size_t next_ = 0;
    /// Counting resumes here, so that asking often stays linear in the text.
    std::size_t counted_ = 0;
    TextPosition position_;
    std::string fault_;
    TextPosition fault_position_;
};

} // namespace throwline::catalogue
