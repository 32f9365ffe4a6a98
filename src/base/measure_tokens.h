#pragma once

#include "base/result.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace throwline {

/// What a written length or angle is made of. Different ways of typing a mark come out as one kind.
enum class TokenKind {
    /// Digits with at most one decimal point: "12", "3.50", ".5".
    number,
    /// A single character such as ½.
    vulgar_fraction,
    slash,
    /// - or a typographic hyphen or dash.
    hyphen,
    /// U+2212, which is only ever a sign.
    minus,
    plus,
    /// ' or a typographic one: feet, or minutes of an angle.
    prime,
    /// " or a typographic one, or two primes: inches, or seconds of an angle.
    double_prime,
    degree,
    /// Latin letters, in lower case; a closing point as in "ft." is dropped.
    word,
    /// A character with no meaning here.
    other,
    end,
};

struct Token {
    TokenKind kind = TokenKind::end;
    /// In characters, from 1; that of the end is one past the last character.
    int column = 1;
    /// As typed; of a number with "." as its point, whatever was typed.
    std::string text;
    /// Of a vulgar fraction.
    unsigned numerator = 0;
    unsigned denominator = 1;

    /// Whether this is a number without a decimal point.
    bool is_whole() const {
        return kind == TokenKind::number && text.find('.') == std::string::npos;
    }
};

/// The tokens of a text, the last of kind `end`. Spaces, also no-break and thin ones, only part
/// tokens. A comma between digits is a decimal point if `decimal_comma`; where it can as well part
/// thousands
/// ("1,000", but not "0,125" or "1234,567") it is left as `other`.
std::vector<Token> tokens_of(std::string_view text, bool decimal_comma);

/// How many characters at the start of a text look like one length, to cut it out of a line of
/// other words: 8 of "4ft 2in deep". What was cut out need not be a length that can be read. Quotes
/// count as inches only when they touch a number, so that `4ft 2 "oak"` ends before the quote.
std::size_t length_extent(std::span<const char32_t> text);

/// Walks through tokens and words the errors.
class TokenReader {
  public:
    /// `noun` is what is read, such as "a length".
    TokenReader(std::string_view text, std::string_view noun, bool decimal_comma)
        : text_{text}, noun_{noun}, tokens_{tokens_of(text, decimal_comma)} {}

    /// The token `ahead` places on; the end repeats.
    const Token& peek(std::size_t ahead = 0) const;
    bool at(TokenKind kind) const { return peek().kind == kind; }
    /// Steps over the token if it is of this kind.
    bool skip(TokenKind kind);
    const Token& take();
    /// Steps over a leading sign; whether it was a minus.
    bool take_minus();

    /// 'cannot read "5'13" as a length: found 13, expected inches below 12', with the column.
    tl::unexpected<Error> unexpected(const Token& found, std::string_view expected) const;

  private:
    std::string_view text_;
    std::string_view noun_;
    std::vector<Token> tokens_;
    std::size_t next_ = 0;
};

} // namespace throwline
