#pragma once

#include "lists/table.h"
#include "sheet/sheet_kinds.h"

namespace throwline::sheet {

/// Every list that has something in it, a job a page. Not to scale.
Result<std::vector<SheetJob>> list_jobs(const SheetInput& input, const SheetOptions& options);

/// The pages of one table.
Result<std::vector<SheetJob>> table_jobs(const SheetInput& input, const SheetOptions& options,
                                         const lists::Table& table);

} // namespace throwline::sheet
