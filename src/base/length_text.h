#pragma once

#include "base/quantity.h"
#include "base/result.h"

#include <optional>
#include <string>
#include <string_view>

namespace throwline {

/// How lengths are read where the text leaves something open.
struct LengthReading {
    /// What a bare number means, metres or feet; without it a bare number is an error.
    std::optional<UnitSystem> bare_unit = std::nullopt;
    /// Whether a comma may stand for the decimal point ("3,5 m"). Where it could as well part
    /// thousands ("1,000 m") it is refused all the same.
    bool decimal_comma = true;
};

/// Reads every way a crew writes a length: 10'6, 10'-6", 10ft 6in, 6' 2 7/16", 5’ 9½”, 1-1/2",
/// 126in, 3.5 m, 3,5 m, 350cm, 3m 20, -0'-3". Parsed to an exact rational of millimetres and
/// converted once, so that any multiple of 1/64 in comes back as the same double every time. Errors
/// give the column (Place::column, in characters from 1), what was read and what was expected.
/// Refused: inches >= 12 after feet, fractional feet before inches, a zero denominator, bare
/// numbers without `bare_unit`, thousands separators, anything that is not finite or beyond 1e7 m.
Result<Length> parse_length(std::string_view text, const LengthReading& reading = {});

/// Whether a word in lower case is a unit of length, such as "ft", "metres" or "cm".
bool is_length_unit(std::string_view word);

/// Reads "12deg", "12°", "-3.5 deg", "0.2rad", "12° 30'", "12°30'15\""; a bare number is degrees.
/// Errors as for lengths. Refused: minutes or seconds of 60 and more, anything beyond 1e6 degrees.
Result<Angle> parse_angle(std::string_view text);

/// The smallest part of an inch that is shown: 1, 2, 4, 8, 16, 32 or 64.
struct InchFraction {
    int denominator = 16;
};

/// Feet, hyphen, inches, reduced fraction: 12'-0", 6'-2 7/16", -0'-3". Rounds half away from zero
/// in whole fractions, so that the carry is right: 11.97 in at 1/16 is 1'-0".
std::string feet_inches(Length length, InchFraction fraction = {});

/// Metres with a fixed number of decimals, "3.50 m"; never "-0.00 m".
std::string metres_text(Length length, int decimals = 2);

/// A length as the crew reads it: feet-inches to 1/4 in, or metres to the centimetre.
std::string shown(Length length, UnitSystem units);

/// The shortest text that reads back to the same double, in metres: "3.5 m".
std::string exact_metres(Length length);
/// A text that reads back to the same double: "95deg", or "1.658rad" where no number of degrees is
/// exactly this angle.
std::string exact_angle(Angle angle);

/// Fixed decimals, "." as the point whatever the locale, no negative zero.
std::string fixed(double value, int decimals);
/// Shortest digits that read back to the same double; "." whatever the locale.
std::string shortest(double value);
/// "39.6°"
std::string degrees_text(Angle angle, int decimals = 1);

} // namespace throwline
