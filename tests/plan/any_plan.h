#pragma once

#include "plan/plan.h"

namespace throwline::plan::testing {

/// A plan with everything in it, made from random numbers; every one is readable. To be called
/// within a rapidcheck property.
Plan any_plan();

} // namespace throwline::plan::testing
