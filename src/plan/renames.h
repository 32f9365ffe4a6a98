#pragma once

#include "plan/plan.h"

#include <string>
#include <vector>

namespace throwline::plan {

enum class ThingKind;

/// Something that is equal in two plans but for what it is called.
struct Rename {
    ThingKind kind;
    std::string before;
    std::string now;
};

/// What was renamed between two plans.
struct Renames {
    std::vector<Rename> list;
    /// The older plan with the newer names, wherever they stand.
    Plan renamed;
};
Renames renames_between(const Plan& old, const Plan& now);

} // namespace throwline::plan
