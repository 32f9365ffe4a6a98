#pragma once

#include "sheet/sheet_kinds.h"

namespace throwline::sheet {

/// The room cut along a line and seen from the side: walls cut, what lies beyond, people, the
/// shot's view and lamps with their angles, heights; true to one scale. Errors: those of
/// section_cut() and of any sheet.
Result<Drawing> section_sheet(const SheetInput& input, const SheetOptions& options);

/// One page, along what the options ask for; none without a room.
Result<std::vector<SheetJob>> section_jobs(const SheetInput& input, const SheetOptions& options);

} // namespace throwline::sheet
