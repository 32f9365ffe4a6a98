#pragma once

#include "sheet/composition.h"

namespace throwline::sheet {

/// Clouds the changes that the options bring, of those that the sheet shows. To be called by every
/// sheet that shows the production from above.
void draw_changes(Board& board, const SheetInput& input, const SheetOptions& options,
                  const Selection& selection);

/// What a sheet of some beats and shots shows of changes: marks and shots only when they are among
/// these, and no people, cameras and beats as a whole.
std::vector<plan::Difference> changes_of(std::span<const plan::Difference> changes,
                                         const Selection& selection);

} // namespace throwline::sheet
