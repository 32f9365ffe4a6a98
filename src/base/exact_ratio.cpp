#include "base/exact_ratio.h"

#include <cmath>

namespace throwline {

namespace {

using Whole = ExactRatio::Whole;

Whole common_divisor(Whole a, Whole b) {
    while (b != 0) {
        const Whole rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

std::optional<Whole> product(Whole a, Whole b) {
    Whole result = 0;
    return __builtin_mul_overflow(a, b, &result) ? std::nullopt : std::optional{result};
}

std::optional<Whole> sum(Whole a, Whole b) {
    Whole result = 0;
    return __builtin_add_overflow(a, b, &result) ? std::nullopt : std::optional{result};
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

} // namespace

std::optional<ExactRatio> ExactRatio::of(Whole numerator, Whole denominator) {
    if (denominator == 0) {
        return std::nullopt;
    }
    const Whole divisor = common_divisor(numerator, denominator);
    return ExactRatio{numerator / divisor, denominator / divisor};
}

std::optional<ExactRatio> ExactRatio::of_decimal(std::string_view digits) {
    std::optional<Whole> numerator = 0;
    std::optional<Whole> denominator = 1;
    bool after_point = false;
    bool any = false;
    for (const char c : digits) {
        if (c == '.' && !after_point) {
            after_point = true;
            continue;
        }
        numerator = product(*numerator, 10);
        denominator = after_point ? product(*denominator, 10) : denominator;
        if (!is_digit(c) || !numerator || !denominator) {
            return std::nullopt;
        }
        numerator = sum(*numerator, static_cast<unsigned>(c - '0'));
        if (!numerator) {
            return std::nullopt;
        }
        any = true;
    }
    return any ? of(*numerator, *denominator) : std::nullopt;
}

std::optional<ExactRatio> ExactRatio::plus(const ExactRatio& other) const {
    const auto left = product(numerator_, other.denominator_);
    const auto right = product(other.numerator_, denominator_);
    const auto below = product(denominator_, other.denominator_);
    if (!left || !right || !below) {
        return std::nullopt;
    }
    const auto above = sum(*left, *right);
    return above ? of(*above, *below) : std::nullopt;
}

std::optional<ExactRatio> ExactRatio::times(const ExactRatio& other) const {
    const auto above = product(numerator_, other.numerator_);
    const auto below = product(denominator_, other.denominator_);
    return above && below ? of(*above, *below) : std::nullopt;
}

double ExactRatio::nearest_double() const {
    if (numerator_ == 0) {
        return 0.0;
    }
    // Two bits more than the 53 of a double, the lowest standing for "and something left over",
    // make the one rounding in the conversion below come out as if the quotient were endless.
    constexpr Whole kEnoughBits = Whole{1} << 54U;
    Whole quotient = numerator_ / denominator_;
    Whole rest = numerator_ % denominator_;
    int exponent = 0;
    while (quotient < kEnoughBits) {
        // rest < denominator: doubling it may carry out of 128 bits, subtracting brings it back.
        const bool one = rest >= denominator_ - rest;
        rest = one ? rest - (denominator_ - rest) : 2 * rest;
        quotient = 2 * quotient + (one ? 1 : 0);
        --exponent;
    }
    if (rest != 0) {
        quotient |= 1;
    }
    return std::ldexp(static_cast<double>(quotient), exponent);
}

} // namespace throwline
