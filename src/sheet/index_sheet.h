#pragma once

#include "sheet/sheet_kinds.h"

namespace throwline::sheet {

/// A sheet, or pages that belong together, as the index lists them.
struct IndexEntry {
    int number = 0;
    /// Of the last page where several belong together.
    int last = 0;
    std::string name;
    /// "1:50"; empty where nothing is true to scale.
    std::string scale;
    /// "A3 landscape"
    std::string paper;
};

/// The first pages of a set: the production, its place, date and hours; every sheet with its
/// number, scale and paper; how many findings there are, and the worst in full; cautions. Not to
/// scale. How many pages it takes depends on how many entries there are and on their names, and on
/// nothing else in them.
Result<std::vector<SheetJob>> index_jobs(const SheetInput& input, const SheetOptions& options,
                                         const std::vector<IndexEntry>& entries);

/// An index that is not part of a set and so lists no sheets.
Result<std::vector<SheetJob>> index_alone_jobs(const SheetInput& input,
                                               const SheetOptions& options);

} // namespace throwline::sheet
