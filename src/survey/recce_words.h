#pragma once

#include <array>
#include <string_view>

/// The words of a recce; a name that is one of them stands in quotes.
namespace throwline::survey {

/// Those that begin a line.
inline constexpr std::array<std::string_view, 13> kLineWords{
    "corners", "square", "squareness", "units",  "tape",    "point", "along",
    "solid",   "round",  "height",     "outlet", "bearing", "note"};

/// Those within a line.
inline constexpr std::array<std::string_view, 17> kInnerWords{
    "clockwise", "anticlockwise", "all",  "outside", "at",   "high",   "across",  "up",   "from",
    "deep",      "sill",          "rest", "wall",    "door", "window", "opening", "thing"};

} // namespace throwline::survey
