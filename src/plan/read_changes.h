#pragma once

#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <cstddef>
#include <optional>

namespace throwline::plan {

/// A plan that read_plan() accepts, read back from what was written of its changes.
struct ReadBack {
    Plan plan;
    /// How much longer the file can be for them.
    std::size_t most_bytes = 0;
};

/// Writes what is in `after` and not in `before`, a plan that read_plan() accepts, reads it back by
/// the reader of files, and checks the whole as that does. As strict as writing and reading all of
/// it, but for the size of the file, and as quick as the change is small. Nothing when something is
/// wrong: read_plan() says what.
std::optional<ReadBack> read_changes(const Plan& before, const Plan& after,
                                     const catalogue::Catalogue& catalogue);

} // namespace throwline::plan
