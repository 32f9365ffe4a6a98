#include "base/length_text.h"

#include "base/exact_ratio.h"
#include "base/measure_tokens.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace throwline {

namespace {

enum class Unit { feet, inches, metres, centimetres, millimetres };

constexpr std::string_view kUnits = "a unit (', ft, \", in, m, cm or mm)";
constexpr std::string_view kEnd = "the end";
/// A text with more digits than any tape can show; nothing is rounded behind the user's back.
constexpr std::string_view kFewerDigits = "a number with fewer digits";

/// Nothing real is longer, and every multiple of 1/64 in up to here is told apart by a double.
constexpr double kLongest_m = 1e7;

struct UnitWord {
    std::string_view word;
    Unit unit;
};
constexpr UnitWord kUnitWords[] = {
    {"ft", Unit::feet},
    {"foot", Unit::feet},
    {"feet", Unit::feet},
    {"in", Unit::inches},
    {"inch", Unit::inches},
    {"inches", Unit::inches},
    {"m", Unit::metres},
    {"metre", Unit::metres},
    {"metres", Unit::metres},
    {"meter", Unit::metres},
    {"meters", Unit::metres},
    {"cm", Unit::centimetres},
    {"centimetre", Unit::centimetres},
    {"centimetres", Unit::centimetres},
    {"centimeter", Unit::centimetres},
    {"centimeters", Unit::centimetres},
    {"mm", Unit::millimetres},
    {"millimetre", Unit::millimetres},
    {"millimetres", Unit::millimetres},
    {"millimeter", Unit::millimetres},
    {"millimeters", Unit::millimetres},
};

std::optional<Unit> unit_of(const Token& token) {
    if (token.kind == TokenKind::prime) {
        return Unit::feet;
    }
    if (token.kind == TokenKind::double_prime) {
        return Unit::inches;
    }
    const auto found =
        std::find_if(std::begin(kUnitWords), std::end(kUnitWords), [&](const UnitWord& entry) {
            return token.kind == TokenKind::word && entry.word == token.text;
        });
    return found == std::end(kUnitWords) ? std::nullopt : std::optional{found->unit};
}

/// One unit in metres: 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
std::optional<ExactRatio> metres_in(Unit unit) {
    switch (unit) {
    case Unit::feet:
        return ExactRatio::of(381, 1250);
    case Unit::inches:
        return ExactRatio::of(127, 5000);
    case Unit::metres:
        return ExactRatio::of(1, 1);
    case Unit::centimetres:
        return ExactRatio::of(1, 100);
    case Unit::millimetres:
        return ExactRatio::of(1, 1000);
    }
    return std::nullopt;
}

/// A number as written before a unit: "12", "3.5", "1/2", "2 7/16", "9½".
struct Amount {
    Token first;
    /// Whether it is a number without a fraction.
    bool plain = true;
    /// Nothing when a plain number has too many digits to be held exactly.
    std::optional<ExactRatio> value;

    bool is_whole() const { return plain && first.is_whole(); }
};

class LengthParser {
  public:
    LengthParser(std::string_view text, const LengthReading& reading)
        : tokens_{text, "a length", reading.decimal_comma}, bare_unit_{reading.bare_unit} {}

    Result<Length> parse() {
        const bool negative = tokens_.take_minus();
        const Token start = tokens_.peek();
        const Result<double> size_m = unsigned_metres();
        if (!size_m) {
            return tl::unexpected{size_m.error()};
        }
        if (!(*size_m <= kLongest_m)) {
            return tokens_.unexpected(start, "at most 10 000 000 m");
        }
        // 0 - 0 is 0 where -0 would be a negative zero.
        return Length::metres(negative ? 0.0 - *size_m : *size_m);
    }

  private:
    Result<double> unsigned_metres() {
        const Result<Amount> amount = read_amount("a number");
        if (!amount) {
            return tl::unexpected{amount.error()};
        }
        const Result<Unit> unit = read_unit();
        if (!unit) {
            return tl::unexpected{unit.error()};
        }
        const bool more = !tokens_.at(TokenKind::end);
        if (*unit == Unit::feet && more) {
            return feet_and_inches(*amount);
        }
        if (*unit == Unit::metres && more) {
            return metres_and_centimetres(*amount);
        }
        return more ? tokens_.unexpected(tokens_.peek(), kEnd) : in_metres(*amount, *unit);
    }

    Result<Unit> read_unit() {
        const std::optional<Unit> unit = unit_of(tokens_.peek());
        if (unit) {
            tokens_.take();
            return *unit;
        }
        if (tokens_.at(TokenKind::end) && bare_unit_) {
            return *bare_unit_ == UnitSystem::metric ? Unit::metres : Unit::feet;
        }
        return tokens_.unexpected(tokens_.peek(), kUnits);
    }

    /// How many tokens on a fraction begins that may follow a whole number; nothing if none does.
    std::optional<std::size_t> fraction_ahead() const {
        const std::size_t start = tokens_.at(TokenKind::hyphen) ? 1 : 0;
        const bool typed =
            tokens_.peek(start).is_whole() && tokens_.peek(start + 1).kind == TokenKind::slash;
        const bool single = tokens_.peek(start).kind == TokenKind::vulgar_fraction;
        return typed || single ? std::optional{start} : std::nullopt;
    }

    Result<ExactRatio> read_fraction() {
        const Token above = tokens_.take();
        if (above.kind == TokenKind::vulgar_fraction) {
            return *ExactRatio::of(above.numerator, above.denominator);
        }
        tokens_.skip(TokenKind::slash);
        const Token below = tokens_.take();
        if (!below.is_whole()) {
            return tokens_.unexpected(below, "a whole number under the fraction line");
        }
        const auto numerator = ExactRatio::of_decimal(above.text);
        const auto denominator = ExactRatio::of_decimal(below.text);
        if (!numerator || !denominator) {
            return tokens_.unexpected(numerator ? below : above, kFewerDigits);
        }
        const auto inverse = denominator->inverse();
        if (!inverse) {
            return tokens_.unexpected(below, "a denominator above 0");
        }
        const auto value = numerator->times(*inverse);
        return value ? Result<ExactRatio>{*value} : tokens_.unexpected(above, kFewerDigits);
    }

    Result<Amount> read_amount(std::string_view expected) {
        const Token first = tokens_.peek();
        const bool fraction_only =
            first.kind == TokenKind::vulgar_fraction
            || (first.is_whole() && tokens_.peek(1).kind == TokenKind::slash);
        if (!fraction_only && first.kind != TokenKind::number) {
            return tokens_.unexpected(first, expected);
        }
        Amount amount{first, true, ExactRatio{}};
        if (!fraction_only) {
            amount.value = ExactRatio::of_decimal(tokens_.take().text);
        }
        if (fraction_only || (first.is_whole() && fraction_ahead())) {
            return with_fraction(std::move(amount));
        }
        return amount;
    }

    Result<Amount> with_fraction(Amount amount) {
        tokens_.skip(TokenKind::hyphen);
        const Result<ExactRatio> fraction = read_fraction();
        if (!fraction) {
            return tl::unexpected{fraction.error()};
        }
        amount.plain = false;
        amount.value = amount.value ? amount.value->plus(*fraction) : std::nullopt;
        if (!amount.value) {
            return tokens_.unexpected(amount.first, kFewerDigits);
        }
        return amount;
    }

    Result<double> in_metres(const Amount& amount, Unit unit) const {
        if (amount.plain && unit == Unit::metres) {
            return decimal_metres(amount, "");
        }
        if (amount.plain && unit == Unit::centimetres) {
            return decimal_metres(amount, "e-2");
        }
        if (amount.plain && unit == Unit::millimetres) {
            return decimal_metres(amount, "e-3");
        }
        return total(amount, amount.value, unit, ExactRatio{}, unit);
    }

    /// A decimal number of any length is rounded once, straight from its digits.
    Result<double> decimal_metres(const Amount& amount, std::string_view exponent) const {
        const std::string digits = amount.first.text + std::string{exponent};
        double value_m = 0.0;
        const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), value_m);
        if (read.ec != std::errc{}) {
            return tokens_.unexpected(amount.first, "at most 10 000 000 m, in fewer digits");
        }
        return value_m;
    }

    Result<double> feet_and_inches(const Amount& feet) {
        if (!feet.is_whole()) {
            return tokens_.unexpected(feet.first, "whole feet before inches");
        }
        tokens_.skip(TokenKind::hyphen);
        const Result<Amount> inches = read_amount("inches");
        if (!inches) {
            return tl::unexpected{inches.error()};
        }
        // Three digits are a thousand parted by an apostrophe, even where they are 000.
        const bool too_many = inches->first.is_whole() && inches->first.text.size() > 2;
        if (!inches->value || inches->value->reaches(12) || too_many) {
            return tokens_.unexpected(inches->first, "inches below 12 after feet");
        }
        const bool marked = unit_of(tokens_.peek()) == Unit::inches;
        if (marked) {
            tokens_.take();
        }
        if (!tokens_.at(TokenKind::end)) {
            return tokens_.unexpected(tokens_.peek(), marked ? kEnd : "\", in or the end");
        }
        return total(feet, feet.value, Unit::feet, *inches->value, Unit::inches);
    }

    Result<double> metres_and_centimetres(const Amount& metres) {
        if (!metres.is_whole()) {
            return tokens_.unexpected(metres.first, "whole metres before centimetres");
        }
        const Result<Amount> rest = read_amount("centimetres or the end");
        if (!rest) {
            return tl::unexpected{rest.error()};
        }
        const bool too_many = rest->first.is_whole() && rest->first.text.size() > 2;
        if (!rest->value || rest->value->reaches(100) || too_many) {
            return tokens_.unexpected(rest->first, "centimetres below 100 after metres");
        }
        const bool marked = unit_of(tokens_.peek()) == Unit::centimetres;
        if (marked) {
            tokens_.take();
        }
        if (!tokens_.at(TokenKind::end)) {
            return tokens_.unexpected(tokens_.peek(), marked ? kEnd : "cm or the end");
        }
        return total(metres, metres.value, Unit::metres, *rest->value, Unit::centimetres);
    }

    /// big * big_unit + small * small_unit, rounded once.
    Result<double> total(const Amount& place, const std::optional<ExactRatio>& big, Unit big_unit,
                         const ExactRatio& small, Unit small_unit) const {
        const auto first = big ? big->times(*metres_in(big_unit)) : std::nullopt;
        const auto second = small.times(*metres_in(small_unit));
        const auto sum = first && second ? first->plus(*second) : std::nullopt;
        if (!sum) {
            return tokens_.unexpected(place.first, kFewerDigits);
        }
        return sum->nearest_double();
    }

    TokenReader tokens_;
    std::optional<UnitSystem> bare_unit_;
};

} // namespace

bool is_length_unit(std::string_view word) {
    return std::any_of(std::begin(kUnitWords), std::end(kUnitWords),
                       [&](const UnitWord& entry) { return entry.word == word; });
}

Result<Length> parse_length(std::string_view text, const LengthReading& reading) {
    return LengthParser{text, reading}.parse();
}

} // namespace throwline
