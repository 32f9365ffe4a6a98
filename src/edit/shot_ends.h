#pragma once

#include "plan/plan.h"

namespace throwline::edit {

/// Takes a shot off a plan, with every mention of it.
void end_shot(plan::Plan& plan, const plan::Id<plan::Shot>& shot);

} // namespace throwline::edit
