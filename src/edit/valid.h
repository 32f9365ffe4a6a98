#pragma once

#include "base/result.h"
#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <string>

namespace throwline::edit {

/// A plan that the reader accepts, with the text of its file.
struct ValidPlan {
    plan::PlanPtr plan;
    std::string text;
};

/// Writes a plan and reads it back, so that nothing that an edit makes can be a plan that does not
/// open again. What comes back is what was read. Errors: what the reader says.
Checked<ValidPlan> valid(const plan::Plan& plan, const catalogue::Catalogue& catalogue);

} // namespace throwline::edit
