#pragma once

#include "base/length_text.h"
#include "base/vec.h"

#include <optional>
#include <string>
#include <vector>

/// Places in words, and read again: "1.20 m, 3.40 m", points of a way parted by semicolons. A comma
/// with a space behind it parts; one before a digit is a decimal comma.
namespace throwline::card {

std::string text_of(const Vec2& place, UnitSystem units);
std::string text_of(const Vec3& place, UnitSystem units);
std::string text_of(const std::vector<Vec2>& points, UnitSystem units);

/// The lengths of a place, or nothing and one sentence. `wanted` is how many: 2 or 3.
std::optional<std::vector<Length>> read_place(const std::string& text, std::size_t wanted,
                                              UnitSystem units, std::string& fault);
std::optional<Vec2> read_point(const std::string& text, UnitSystem units, std::string& fault);
/// As many points as are named.
std::optional<std::vector<Vec2>> read_points(const std::string& text, UnitSystem units,
                                             std::string& fault);
/// How many parts a text has that could be lengths of a place.
std::size_t count_of_parts(const std::string& text);

} // namespace throwline::card
