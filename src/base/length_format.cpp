#include "base/length_text.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <fmt/format.h>
#include <numeric>

namespace throwline {

namespace {

/// Up to here the count of 1/64 in is far below the 2^53 where a double stops counting one by one.
constexpr double kLongestInFractions_m = 1e10;

/// A half written as a double and divided again may miss the half by a few units in the last place,
/// which must not turn its rounding round.
constexpr double kHalfSlack = 1e-15;

/// The nearest count of fractions of an inch in a length that is 0 or more, halves upwards.
std::int64_t whole_fractions(double length_m, int denominator) {
    const double count = length_m * denominator * 5000.0 / 127.0;
    return static_cast<std::int64_t>(std::floor(count * (1.0 + kHalfSlack) + 0.5));
}

std::string fraction_text(std::int64_t numerator, std::int64_t denominator) {
    if (numerator == 0) {
        return {};
    }
    const std::int64_t divisor = std::gcd(numerator, denominator);
    return fmt::format(" {}/{}", numerator / divisor, denominator / divisor);
}

/// Both signs of zero read the same.
std::string without_negative_zero(const std::string& text) {
    const bool is_zero = text.find_first_not_of("-0.") == std::string::npos;
    return is_zero && text.starts_with('-') ? text.substr(1) : text;
}

} // namespace

std::string feet_inches(Length length, InchFraction fraction) {
    const double size_m = std::abs(length.m());
    if (!(size_m <= kLongestInFractions_m)) {
        return metres_text(length);
    }
    const std::int64_t per_inch = fraction.denominator;
    const std::int64_t count = whole_fractions(size_m, fraction.denominator);
    const bool negative = length.m() < 0.0 && count > 0;
    return fmt::format("{}{}'-{}{}\"", negative ? "-" : "", count / (12 * per_inch),
                       count % (12 * per_inch) / per_inch,
                       fraction_text(count % per_inch, per_inch));
}

std::string metres_text(Length length, int decimals) {
    return fixed(length.m(), decimals) + " m";
}

std::string shown(Length length, UnitSystem units) {
    switch (units) {
    case UnitSystem::metric:
        return metres_text(length, 2);
    case UnitSystem::imperial:
        return feet_inches(length, {.denominator = 4});
    }
    return {};
}

std::string exact_metres(Length length) {
    // Without an exponent, which is no way to write a length. The smallest double has 324 decimals.
    std::array<char, 400> text{};
    const auto written =
        std::to_chars(text.data(), text.data() + text.size(), length.m(), std::chars_format::fixed);
    return without_negative_zero(std::string{text.data(), written.ptr}) + " m";
}

std::string fixed(double value, int decimals) {
    return without_negative_zero(fmt::format("{:.{}f}", value, decimals));
}

std::string shortest(double value) {
    return without_negative_zero(fmt::format("{}", value));
}

std::string degrees_text(Angle angle, int decimals) {
    return fixed(angle.deg(), decimals) + "°";
}

} // namespace throwline
