#pragma once

#include "sheet/sheet_kinds.h"

namespace throwline::sheet {

/// The room as it was read with the tape: every reading with how much it had to change, wrong ones
/// marked, how well each corner is known, what is to be read again, site notes. A survey that
/// settles no shape gives the plan's room with what is missing. Errors: a plan without a survey,
/// unknown paper or scale.
Result<Drawing> recce_sheet(const SheetInput& input, const SheetOptions& options);

/// One page; none for a plan without a survey.
Result<std::vector<SheetJob>> recce_jobs(const SheetInput& input, const SheetOptions& options);

} // namespace throwline::sheet
