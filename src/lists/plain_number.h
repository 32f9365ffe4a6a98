#pragma once

#include <cmath>

namespace throwline::lists {

/// A number as programs read it from a list: to a millionth of its unit, so that no trace of binary
/// fractions is left (1.2192 and not 1.2191999999999998), and never a negative zero.
inline double plain_number(double value) {
    // Beyond this the steps of a double are wider than a millionth.
    constexpr double kLargest = 1e9;
    constexpr double kSteps = 1e6;
    return std::abs(value) < kLargest ? std::round(value * kSteps) / kSteps + 0.0 : value;
}

} // namespace throwline::lists
