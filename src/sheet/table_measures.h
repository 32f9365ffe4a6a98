#pragma once

#include "sheet/marks.h"

#include <algorithm>
#include <cstddef>

/// Heights that laying a table out, breaking it over pages and drawing it have in common.
namespace throwline::sheet {

/// Above and below the words of a row, and of a heading.
inline constexpr double kRowAir_mm = 0.9;
inline constexpr double kHeadingAir_mm = 2.2;
/// Of a heading of one line.
inline constexpr double kHeadingHeight_mm = kLinePitch_mm + kHeadingAir_mm;

/// Of a row with so many lines.
inline double row_height_mm(std::size_t lines) {
    return kLinePitch_mm * static_cast<double>(std::max<std::size_t>(lines, 1)) + kRowAir_mm;
}

} // namespace throwline::sheet
