#pragma once

#include "sheet/sheet_kinds.h"

namespace throwline::sheet {

/// A card for each camera that has shots, to hang on it: its name large, what it is made up of, and
/// its shots in the order in which they are taken, each with its frame as a small picture, its
/// figures, where it stands and how it moves. As many pages as that takes. Not to scale.
Result<std::vector<SheetJob>> camera_card_jobs(const SheetInput& input,
                                               const SheetOptions& options);

} // namespace throwline::sheet
