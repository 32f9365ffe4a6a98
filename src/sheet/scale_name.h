#pragma once

#include "base/result.h"
#include "catalogue/catalogue.h"

#include <string_view>

namespace throwline::sheet {

/// Largest and smallest drawing that a scale of one's own may ask for, as real over drawn length.
inline constexpr double kLeastOwnRatio = 0.1;
inline constexpr double kMostOwnRatio = 100'000.0;

/// A scale of the catalogue by its name, or one's own: "1:37", "5/8 in = 1 ft". However it is
/// written, one of the catalogue's ratio is the catalogue's. Errors: neither of these, or a ratio
/// out of bounds.
Result<catalogue::DrawingScale> scale_named(std::string_view typed,
                                            const catalogue::Catalogue& catalogue);

} // namespace throwline::sheet
