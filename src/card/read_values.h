#pragma once

#include "base/length_text.h"

#include <optional>
#include <string>
#include <vector>

/// What is typed into the Card, read. Where it will not do, the result is empty and `fault` is one
/// sentence that says what is allowed.
namespace throwline::card {

struct LengthBounds {
    Length least;
    Length most = Length::metres(1000);
};

/// Where things may be: a plan reaches so far from its origin.
inline constexpr LengthBounds kPlaces{Length::metres(-1000), Length::metres(1000)};

/// A bare number is metres or feet, as the plan shows them.
std::optional<Length> read_length(const std::string& text, UnitSystem units,
                                  const LengthBounds& bounds, std::string& fault);
/// A decimal comma is read as well.
std::optional<double> read_number(const std::string& text, double least, double most,
                                  std::string& fault);
std::optional<Angle> read_angle(const std::string& text, std::string& fault);
std::optional<bool> read_yes_no(const std::string& text, std::string& fault);
/// The choice itself as it is written in the list, letter case ignored; the nearest in the fault.
std::optional<std::string> read_choice(const std::string& text,
                                       const std::vector<std::string>& choices, std::string& fault);
/// Names separated by commas, each of the list; said twice they count once.
std::optional<std::vector<std::string>>
read_names(const std::string& text, const std::vector<std::string>& choices, std::string& fault);

/// Without white space at either end.
std::string trimmed(const std::string& text);
/// Whether two texts are the same, ASCII letter case and white space at the ends ignored.
bool says(const std::string& text, const std::string& words);
/// Parts between separators, trimmed; empty ones are left out.
std::vector<std::string> parts_between(const std::string& text, char separator);
/// "a, b"
std::string joined(const std::vector<std::string>& names, const std::string& between = ", ");
/// "from 0.02 m to 30.00 m"
std::string hint_of(const LengthBounds& bounds, UnitSystem units);

} // namespace throwline::card
