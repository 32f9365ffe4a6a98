#pragma once

#include "sheet/drawing.h"

#include <string>
#include <string_view>
#include <vector>

namespace throwline::sheet {

/// A text in lines no wider than `width_mm`, broken at spaces; a single word that is wider is
/// broken between characters. At least one line.
std::vector<std::string> wrapped_lines(std::string_view text, double width_mm, double height_mm,
                                       bool bold, const TextMeasure& measure);

/// The text, cut and closed with "…" when it is wider than `width_mm`.
std::string cut_to_width(const std::string& text, double width_mm, double height_mm, bool bold,
                         const TextMeasure& measure);

} // namespace throwline::sheet
