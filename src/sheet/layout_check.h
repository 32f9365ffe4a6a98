#pragma once

#include "sheet/drawing.h"

#include <string>
#include <utility>
#include <vector>

namespace throwline::sheet {

/// What is wrong with the lettering of a sheet. For tests; no sheet asks while it is drawn.
struct LayoutFaults {
    /// Pairs of texts that lie over each other. A number in a ring takes up its ring.
    std::vector<std::pair<std::string, std::string>> overlapping;
    /// Texts that reach over the edge of the page or over a line of the sheet's frame and parts.
    std::vector<std::string> cut;
    /// Texts whose capitals are lower than 2.5 mm (ISO 3098 after reduction by a paper size, from
    /// memory).
    std::vector<std::string> too_small;
    /// Texts with a wall or another built line through their letters. Paper beneath the letters
    /// does not excuse it.
    std::vector<std::string> over_built;

    bool none() const { return overlapping.empty() && cut.empty() && too_small.empty(); }
};

LayoutFaults layout_faults(const Drawing& drawing, const TextMeasure& measure);

} // namespace throwline::sheet
