#pragma once

#include "base/quantity.h"

#include <optional>
#include <span>
#include <vector>

namespace throwline::lists {

/// A length that there are pieces of.
struct StockLength {
    Length length;
    /// How many there are; as many as wanted when empty.
    std::optional<int> pieces;
};

/// How many of each stock length, in their order, and what they add up to.
struct Cover {
    std::vector<int> pieces;
    Length total;

    int piece_count() const;
};

/// Joints of a run close up by this: pieces that lack no more of a run reach along it (common
/// practice, no source).
inline constexpr Length kJointPlay = Length::millimetres(2);
/// A longer run is not worked out.
inline constexpr Length kLongestRun = Length::metres(100);

/// The pieces end to end that reach along a run with the least over-length, and of those the fewest
/// pieces; exact, over whole tenths of a millimetre. Nothing when there are not enough, or the run
/// is longer than kLongestRun. Lengths above 0.
std::optional<Cover> cover_length(Length run, std::span<const StockLength> stock);

} // namespace throwline::lists
