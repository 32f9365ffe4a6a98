#pragma once

#include "base/result.h"
#include "catalogue/catalogue.h"

#include <string_view>

namespace throwline::sheet {

/// Longest side of a sheet: that of a PDF page, 14400 points (ISO 32000-1:2008, annex C.2).
inline constexpr Length kLongestPaper = Length::inches(200);

/// A paper of the catalogue by its name, or of any size: "500x700mm", "24in x 36in". A side without
/// a unit has that of the other. Errors: neither of these, or a side that is not positive or longer
/// than kLongestPaper.
Result<catalogue::Paper> paper_named(std::string_view typed, const catalogue::Catalogue& catalogue);

} // namespace throwline::sheet
