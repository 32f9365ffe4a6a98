#pragma once

#include "sheet/sheet_kinds.h"

namespace throwline::sheet {

/// A page for each shot of the selection: the plan around its camera and subjects with what it
/// takes in, its frame as a picture, its figures in words and its findings. True to scale, as large
/// as the paper allows. None for a plan without shots that find somebody to look at.
Result<std::vector<SheetJob>> shot_jobs(const SheetInput& input, const SheetOptions& options);

} // namespace throwline::sheet
