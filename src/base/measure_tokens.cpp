#include "base/measure_tokens.h"

#include "base/length_text.h"
#include "base/utf8.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline {

namespace {

struct VulgarFraction {
    char32_t character;
    unsigned numerator;
    unsigned denominator;
};
constexpr VulgarFraction kVulgarFractions[] = {
    {U'½', 1, 2}, {U'¼', 1, 4}, {U'¾', 3, 4}, {U'⅓', 1, 3}, {U'⅔', 2, 3},
    {U'⅛', 1, 8}, {U'⅜', 3, 8}, {U'⅝', 5, 8}, {U'⅞', 7, 8},
};

bool is_one_of(char32_t c, std::u32string_view characters) {
    return characters.find(c) != std::u32string_view::npos;
}
bool is_space(char32_t c) {
    return is_one_of(c, U" \t\u00A0\u2007\u2009\u202F");
}
bool is_digit(char32_t c) {
    return c >= U'0' && c <= U'9';
}
bool is_letter(char32_t c) {
    return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z');
}
bool is_prime(char32_t c) {
    return is_one_of(c, U"'\u2032\u2018\u2019");
}

TokenKind kind_of_mark(char32_t c) {
    if (is_one_of(c, U"-\u2010\u2011\u2013")) {
        return TokenKind::hyphen;
    }
    if (is_one_of(c, U"/\u2044\u2215")) {
        return TokenKind::slash;
    }
    if (is_one_of(c, U"\"\u2033\u201C\u201D")) {
        return TokenKind::double_prime;
    }
    // U+00BA is the raised o of some keyboards.
    if (is_one_of(c, U"\u00B0\u00BA")) {
        return TokenKind::degree;
    }
    if (c == U'\u2212') {
        return TokenKind::minus;
    }
    return c == U'+' ? TokenKind::plus : TokenKind::other;
}

class Scanner {
  public:
    /// The characters must outlive the scanner.
    Scanner(std::span<const char32_t> characters, bool decimal_comma)
        : characters_{characters}, decimal_comma_{decimal_comma} {}

    Token next() {
        while (is_space(at(0))) {
            ++position_;
        }
        return token_here();
    }

    /// How many characters have been read.
    std::size_t position() const { return position_; }

  private:
    /// U+0000 past the end, which has no meaning in a text either.
    char32_t at(std::size_t ahead) const {
        const std::size_t index = position_ + ahead;
        return index < characters_.size() ? characters_[index] : U'\0';
    }

    std::size_t digits_from(std::size_t ahead) const {
        std::size_t count = 0;
        while (is_digit(at(ahead + count))) {
            ++count;
        }
        return count;
    }

    /// Whether a decimal point stands `whole` characters on.
    bool has_point(std::size_t whole) const {
        const std::size_t decimals = digits_from(whole + 1);
        if (decimals == 0) {
            return false;
        }
        if (at(whole) == U'.') {
            return true;
        }
        const bool may_part_thousands = decimals == 3 && whole <= 3 && at(0) != U'0';
        return at(whole) == U',' && decimal_comma_ && whole > 0 && !may_part_thousands;
    }

    Token taken(TokenKind kind, std::size_t count) {
        Token token{.kind = kind, .column = static_cast<int>(position_) + 1, .text = {}};
        token.text = utf8_of(characters_.subspan(position_, count));
        position_ += count;
        return token;
    }

    Token number(std::size_t whole) {
        const bool point = has_point(whole);
        Token token = taken(TokenKind::number, point ? whole + 1 + digits_from(whole + 1) : whole);
        std::replace(token.text.begin(), token.text.end(), ',', '.');
        return token;
    }

    Token word() {
        std::size_t count = 0;
        while (is_letter(at(count))) {
            ++count;
        }
        Token token = taken(TokenKind::word, count);
        for (char& c : token.text) {
            c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        }
        if (at(0) == U'.' && !is_digit(at(1))) {
            ++position_;
        }
        return token;
    }

    Token token_here() {
        if (position_ >= characters_.size()) {
            return taken(TokenKind::end, 0);
        }
        const char32_t c = at(0);
        const std::size_t whole = digits_from(0);
        if (whole > 0 || has_point(0)) {
            return number(whole);
        }
        if (is_letter(c)) {
            return word();
        }
        if (is_prime(c)) {
            return is_prime(at(1)) ? taken(TokenKind::double_prime, 2) : taken(TokenKind::prime, 1);
        }
        for (const VulgarFraction& fraction : kVulgarFractions) {
            if (fraction.character == c) {
                Token token = taken(TokenKind::vulgar_fraction, 1);
                token.numerator = fraction.numerator;
                token.denominator = fraction.denominator;
                return token;
            }
        }
        return taken(kind_of_mark(c), 1);
    }

    std::span<const char32_t> characters_;
    bool decimal_comma_;
    std::size_t position_ = 0;
};

bool is_amount(const Token& token) {
    return token.kind == TokenKind::number || token.kind == TokenKind::vulgar_fraction;
}

/// Whether a token can follow another within one length. `touching`: no space is between them.
bool goes_on(const Token& before, const Token& token, bool touching) {
    switch (token.kind) {
    case TokenKind::number:
    case TokenKind::vulgar_fraction:
        return true;
    case TokenKind::hyphen:
        return before.kind != TokenKind::hyphen && before.kind != TokenKind::minus
               && before.kind != TokenKind::plus;
    case TokenKind::minus:
    case TokenKind::plus:
        return before.kind == TokenKind::end;
    case TokenKind::slash:
        return before.kind == TokenKind::number;
    case TokenKind::prime:
        return is_amount(before);
    case TokenKind::double_prime:
        return is_amount(before) && touching;
    case TokenKind::word:
        return is_amount(before) && is_length_unit(token.text);
    case TokenKind::degree:
    case TokenKind::other:
    case TokenKind::end:
        return false;
    }
    return false;
}

/// Whether a length can end with a token.
bool can_end(const Token& token) {
    return is_amount(token) || token.kind == TokenKind::prime
           || token.kind == TokenKind::double_prime || token.kind == TokenKind::word;
}

} // namespace

std::vector<Token> tokens_of(std::string_view text, bool decimal_comma) {
    const std::vector<char32_t> characters = characters_of(text);
    Scanner scanner{characters, decimal_comma};
    std::vector<Token> tokens;
    do {
        tokens.push_back(scanner.next());
    } while (tokens.back().kind != TokenKind::end);
    return tokens;
}

std::size_t length_extent(std::span<const char32_t> text) {
    Scanner scanner{text, true};
    std::size_t extent = 0;
    for (Token before; true;) {
        const Token token = scanner.next();
        const bool touching = static_cast<std::size_t>(token.column) == extent + 1;
        if (!goes_on(before, token, touching)) {
            return extent;
        }
        extent = can_end(token) ? scanner.position() : extent;
        before = token;
    }
}

const Token& TokenReader::peek(std::size_t ahead) const {
    return tokens_[std::min(next_ + ahead, tokens_.size() - 1)];
}

bool TokenReader::skip(TokenKind kind) {
    const bool found = at(kind);
    next_ += found ? 1 : 0;
    return found;
}

const Token& TokenReader::take() {
    const Token& token = peek();
    ++next_;
    return token;
}

bool TokenReader::take_minus() {
    if (skip(TokenKind::plus)) {
        return false;
    }
    return skip(TokenKind::hyphen) || skip(TokenKind::minus);
}

tl::unexpected<Error> TokenReader::unexpected(const Token& found, std::string_view expected) const {
    const std::string read = found.kind == TokenKind::end ? "the end" : in_quotes(found.text);
    return failure(fmt::format("cannot read {} as {}: found {}, expected {}", in_quotes(text_),
                               noun_, read, expected),
                   {.file = {}, .pointer = {}, .line = 0, .column = found.column});
}

} // namespace throwline
