#pragma once

#include "sheet/sheet_kinds.h"

namespace throwline::sheet {

/// Every finding that the options select with its number, where it is, its words and what its
/// working came to, worst first; those accepted last. Not to scale. No page without findings.
Result<std::vector<SheetJob>> findings_jobs(const SheetInput& input, const SheetOptions& options);

/// The errors alone, as what a set goes on with when its panels have no room for them; a remark
/// tells how many other findings there are.
Result<std::vector<SheetJob>> error_jobs(const SheetInput& input, const SheetOptions& options);

} // namespace throwline::sheet
