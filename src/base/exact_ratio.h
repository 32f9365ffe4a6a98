#pragma once

#include <optional>
#include <string_view>

namespace throwline {

/// A fraction that is 0 or more, kept exact in 128 bits and in lowest terms. Every operation
/// answers with nothing when the result does not fit, so nothing is rounded before
/// `nearest_double`.
class ExactRatio {
  public:
    __extension__ using Whole = unsigned __int128;

    constexpr ExactRatio() = default;
    /// Nothing when the denominator is 0.
    static std::optional<ExactRatio> of(Whole numerator, Whole denominator);
    /// Reads digits with at most one point: "12", "3.50", ".5". Nothing for anything else.
    static std::optional<ExactRatio> of_decimal(std::string_view digits);

    std::optional<ExactRatio> plus(const ExactRatio& other) const;
    std::optional<ExactRatio> times(const ExactRatio& other) const;
    /// Nothing for 0.
    std::optional<ExactRatio> inverse() const { return of(denominator_, numerator_); }

    /// Whether the value is at least `limit`.
    bool reaches(unsigned limit) const { return numerator_ / denominator_ >= limit; }
    /// The double nearest to the exact value, ties to even (IEEE 754 rounding, once).
    double nearest_double() const;

  private:
    constexpr ExactRatio(Whole numerator, Whole denominator)
        : numerator_{numerator}, denominator_{denominator} {}

    Whole numerator_ = 0;
    Whole denominator_ = 1;
};

} // namespace throwline
