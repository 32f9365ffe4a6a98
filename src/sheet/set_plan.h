#pragma once

#include "sheet/sheet_kinds.h"

namespace throwline::sheet {

/// Room and set for those who build and set them: what stands on the floor, with sizes and where it
/// goes; no people, cameras or lamps. Errors: a plan without a room, unknown paper or scale.
Result<Drawing> set_plan_sheet(const SheetInput& input, const SheetOptions& options);

/// The drawing, and a page or more of pieces where there are too many for its panel; none without a
/// room.
Result<std::vector<SheetJob>> set_plan_jobs(const SheetInput& input, const SheetOptions& options);

} // namespace throwline::sheet
