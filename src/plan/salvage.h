#pragma once

#include "base/result.h"
#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <string>
#include <string_view>
#include <vector>

namespace throwline::plan {

/// What could be read of a damaged plan, and everything that could not.
struct Salvaged {
    Plan plan;
    /// What is wrong, at its place in the text; empty when nothing was. At most kMostSalvageErrors.
    Errors errors;
    /// What was left out because of that, outermost things only: "lamps \"key\"", "room outline".
    /// Not what stood after the place where a text breaks off: nobody knows that.
    std::vector<std::string> left_out;
};

inline constexpr std::size_t kMostSalvageErrors = 200;

/// Reads what can be read. A text that is no JSON is mended as mended_json() says; entries that the
/// reader finds fault with are left out, and what refers to them after that, until the rest can be
/// read; parts of the plan that a lost bracket has put into another part are put back. In the worst
/// case the plan is empty but for its title. Nothing is guessed: what is there
/// is as it was. The result is one that read_plan() accepts. Same text, same result.
Salvaged salvaged(std::string_view json, const catalogue::Catalogue& catalogue,
                  const std::string& file = {});

} // namespace throwline::plan
