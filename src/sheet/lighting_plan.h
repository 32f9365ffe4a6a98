#pragma once

#include "sheet/sheet_kinds.h"

namespace throwline::sheet {

/// The room and set drawn back, and over them every lamp at its place and true size, lettered with
/// its name, channel, circuit, instrument, filters, watts and height; aims, beams, hanging places.
/// The panel keys the instruments and sums the circuits. True to scale. Errors: as
/// floor_plan_sheet; a plan without lamps.
Result<Drawing> lighting_plan_sheet(const SheetInput& input, const SheetOptions& options);

/// One page; none for a plan without lamps.
Result<std::vector<SheetJob>> lighting_plan_jobs(const SheetInput& input,
                                                 const SheetOptions& options);

} // namespace throwline::sheet
