#include "base/length_text.h"
#include "fuzz/property.h"
#include "fuzz/targets.h"

#include <cmath>

namespace throwline::fuzz {

namespace {

/// What parse_length promises not to go beyond.
constexpr double kLongest_m = 1e7;
constexpr double kLargest_deg = 1e6;
/// Rounding in the last digit on top of half a step of what is shown, at 1e7 m.
constexpr double kRounding_m = 1e-8;
constexpr double kRounding_deg = 1e-9;
constexpr double kInch_m = 0.0254;

double reread_m(const std::string& text) {
    const Result<Length> again = parse_length(text);
    require(again.has_value(), "a length reads back as it is shown: " + text);
    return again->m();
}

void require_reads_back(Length length) {
    const double size_m = length.m();
    require(std::abs(size_m) <= kLongest_m, "a length is finite and in range");
    require(!(size_m == 0.0 && std::signbit(size_m)), "no length is a negative zero");
    require(reread_m(exact_metres(length)) == size_m, "exact metres read back to the same double");
    for (const int denominator : {1, 2, 4, 8, 16, 32, 64}) {
        if (std::abs(size_m) > kLongest_m - kInch_m) {
            continue; // Rounding up may leave the range.
        }
        const std::string text = feet_inches(length, {.denominator = denominator});
        const double again_m = reread_m(text);
        require(std::abs(again_m - size_m) <= 0.5 * kInch_m / denominator + kRounding_m,
                "feet and inches are off by at most half a step: " + text);
        require(feet_inches(Length::metres(again_m), {.denominator = denominator}) == text,
                "feet and inches settle: " + text);
    }
    require(std::abs(reread_m(shown(length, UnitSystem::metric)) - size_m) <= 0.005 + kRounding_m,
            "metres are shown to the centimetre");
}

void try_length(std::string_view text, const LengthReading& reading) {
    const Result<Length> length = parse_length(text, reading);
    if (length) {
        require_reads_back(*length);
    } else {
        require_readable({length.error()});
        require(length.error().place.column > 0, "an error of a length has a column");
    }
}

void try_angle(std::string_view text) {
    const Result<Angle> angle = parse_angle(text);
    if (!angle) {
        require_readable({angle.error()});
        require(angle.error().place.column > 0, "an error of an angle has a column");
        return;
    }
    require(std::abs(angle->deg()) <= kLargest_deg + kRounding_deg, "an angle is in range");
    for (const int decimals : {0, 1, 3}) {
        const std::string shown_text = degrees_text(*angle, decimals);
        const Result<Angle> again = parse_angle(shown_text);
        require(again.has_value(), "an angle reads back as it is shown: " + shown_text);
        require(std::abs(again->deg() - angle->deg())
                    <= 0.5 * std::pow(10.0, -decimals) + kRounding_deg,
                "an angle is off by at most half a digit: " + shown_text);
    }
}

} // namespace

void length_input(std::string_view bytes) {
    for (const bool comma : {false, true}) {
        try_length(bytes, {.bare_unit = std::nullopt, .decimal_comma = comma});
        try_length(bytes, {.bare_unit = UnitSystem::metric, .decimal_comma = comma});
        try_length(bytes, {.bare_unit = UnitSystem::imperial, .decimal_comma = comma});
    }
    try_angle(bytes);
}

} // namespace throwline::fuzz
