#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace throwline {

/// The candidate that a mistyped name most likely meant: least edit distance (insert, delete,
/// change, swap of neighbours), letter case ignored; earlier candidates win ties. Empty when
/// nothing is nearer than half the length of the longer name.
std::string nearest_name(std::string_view typed, std::span<const std::string> candidates);
/// How many such edits lead from one to the other.
std::size_t typing_distance(std::string_view typed, std::string_view meant);

} // namespace throwline
