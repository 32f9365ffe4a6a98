#include "base/length_text.h"
#include "base/measure_tokens.h"

#include <array>
#include <charconv>
#include <cmath>
#include <limits>

namespace throwline {

namespace {

/// Far more turns than anything needs, and still exact to a millionth of a degree.
constexpr double kLargest_deg = 1e6;

bool is_degree_mark(const Token& token) {
    return token.kind == TokenKind::degree
           || (token.kind == TokenKind::word
               && (token.text == "deg" || token.text == "degree" || token.text == "degrees"));
}

bool is_radian_word(const Token& token) {
    return token.kind == TokenKind::word
           && (token.text == "rad" || token.text == "radian" || token.text == "radians");
}

class AngleParser {
  public:
    // A comma has no other meaning in an angle than a decimal point.
    explicit AngleParser(std::string_view text) : tokens_{text, "an angle", true} {}

    Result<Angle> parse() {
        const bool negative = tokens_.take_minus();
        const Token start = tokens_.peek();
        Result<Angle> size = unsigned_angle();
        if (!size) {
            return size;
        }
        if (!(size->deg() <= kLargest_deg)) {
            return tokens_.unexpected(start, "at most 1 000 000 degrees");
        }
        // 0 - 0 is 0 where -0 would be a negative zero.
        return negative ? Angle{} - *size : *size;
    }

  private:
    Result<double> read_number(std::string_view expected) {
        const Token token = tokens_.take();
        double value = 0.0;
        const char* const end = token.text.data() + token.text.size();
        if (token.kind != TokenKind::number
            || std::from_chars(token.text.data(), end, value).ec != std::errc{}) {
            return tokens_.unexpected(token, expected);
        }
        return value;
    }

    Result<Angle> unsigned_angle() {
        const Token first = tokens_.peek();
        const Result<double> value = read_number("a number");
        if (!value) {
            return tl::unexpected{value.error()};
        }
        if (is_radian_word(tokens_.peek())) {
            tokens_.take();
            return ended(Angle::radians(*value));
        }
        if (tokens_.at(TokenKind::end)) {
            return Angle::degrees(*value);
        }
        if (!is_degree_mark(tokens_.peek())) {
            return tokens_.unexpected(tokens_.peek(), "deg, °, rad or the end");
        }
        tokens_.take();
        if (tokens_.at(TokenKind::end)) {
            return Angle::degrees(*value);
        }
        return with_minutes(first, *value);
    }

    Result<Angle> with_minutes(const Token& degrees, double degrees_value) {
        if (tokens_.peek().kind == TokenKind::number && !degrees.is_whole()) {
            return tokens_.unexpected(degrees, "whole degrees before minutes");
        }
        const Token place = tokens_.peek();
        const Result<double> minutes = read_part("minutes below 60 or the end", TokenKind::prime);
        if (!minutes) {
            return tl::unexpected{minutes.error()};
        }
        if (tokens_.at(TokenKind::end)) {
            return Angle::degrees((degrees_value * 60.0 + *minutes) / 60.0);
        }
        if (!place.is_whole()) {
            return tokens_.unexpected(place, "whole minutes before seconds");
        }
        const Result<double> seconds =
            read_part("seconds below 60 or the end", TokenKind::double_prime);
        if (!seconds) {
            return tl::unexpected{seconds.error()};
        }
        return ended(
            Angle::degrees((degrees_value * 3600.0 + *minutes * 60.0 + *seconds) / 3600.0));
    }

    /// A number below 60 and its mark.
    Result<double> read_part(std::string_view expected, TokenKind mark) {
        const Token token = tokens_.peek();
        Result<double> value = read_number(expected);
        if (value && *value >= 60.0) {
            return tokens_.unexpected(token, expected);
        }
        if (value && !tokens_.skip(mark)) {
            return tokens_.unexpected(tokens_.peek(), mark == TokenKind::prime ? "'" : "\"");
        }
        return value;
    }

    Result<Angle> ended(Angle angle) const {
        if (!tokens_.at(TokenKind::end)) {
            return tokens_.unexpected(tokens_.peek(), "the end");
        }
        return angle;
    }

    TokenReader tokens_;
};

/// The number of degrees that is exactly this angle; not every double in radians has one.
std::optional<double> exact_degrees(Angle angle) {
    constexpr double kInfinity = std::numeric_limits<double>::infinity();
    const double near = angle.deg();
    for (const double candidate : {std::round(near), near, std::nextafter(near, -kInfinity),
                                   std::nextafter(near, kInfinity)}) {
        if (Angle::degrees(candidate) == angle) {
            return candidate == 0.0 ? 0.0 : candidate;
        }
    }
    return std::nullopt;
}

/// Shortest digits without an exponent, which angles as text do not have.
std::string plain_digits(double value) {
    // The smallest double has 1074 binary places behind the point.
    std::array<char, 1100> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value,
                                   std::chars_format::fixed);
    return {digits.data(), end.ptr};
}

} // namespace

std::string exact_angle(Angle angle) {
    const std::optional<double> degrees = exact_degrees(angle);
    return degrees ? plain_digits(*degrees) + "deg" : plain_digits(angle.rad()) + "rad";
}

Result<Angle> parse_angle(std::string_view text) {
    return AngleParser{text}.parse();
}

} // namespace throwline
