#pragma once

#include "base/result.h"
#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <string>
#include <string_view>

namespace throwline::plan {

/// What could be read of a damaged plan, and everything that could not.
struct Salvaged {
    Plan plan;
    /// Empty when nothing was wrong.
    Errors errors;
};

/// Reads what can be read. A text that breaks off is closed after its last whole value; entries
/// that the reader finds fault with are left out, and what refers to them after that, until the
/// rest can be read. In the worst case the plan is empty but for its title. The result is one that
/// read_plan() accepts. Same text, same result.
Salvaged salvaged(std::string_view json, const catalogue::Catalogue& catalogue,
                  const std::string& file = {});

} // namespace throwline::plan
