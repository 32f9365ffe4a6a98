#pragma once

#include "sheet/sheet_kinds.h"

namespace throwline::sheet {

/// The floor plan of a production, to scale, as a finished sheet: room, set, people with their
/// walks, cameras with what they take in, lamps with their beams, sound, power, numbered findings,
/// and around it title block, legend, rulers and cautions. Only what the options select is shown.
/// Errors: an unknown paper, scale, shot or beat, a plan without a room, or a plan that does not
/// fit the sheet.
Result<Drawing> floor_plan_sheet(const SheetInput& input, const SheetOptions& options);

/// The one page of it.
Result<std::vector<SheetJob>> floor_plan_jobs(const SheetInput& input, const SheetOptions& options);

} // namespace throwline::sheet
