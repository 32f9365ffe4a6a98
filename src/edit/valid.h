#pragma once

#include "base/result.h"
#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <cstddef>

namespace throwline::edit {

/// A plan that the reader accepts.
struct ValidPlan {
    plan::PlanPtr plan;
    /// Its file is no longer than this.
    std::size_t most_bytes = 0;
};

/// Writes a plan and reads it back, so that nothing that an edit makes can be a plan that does not
/// open again. What comes back is what was read. Errors: what the reader says.
Checked<ValidPlan> valid(const plan::Plan& plan, const catalogue::Catalogue& catalogue);

/// The same for a plan that was made from a valid one, as quick as the change is small: what did
/// not change is not read again.
Checked<ValidPlan> valid_after(const ValidPlan& before, const plan::Plan& plan,
                               const catalogue::Catalogue& catalogue);

} // namespace throwline::edit
