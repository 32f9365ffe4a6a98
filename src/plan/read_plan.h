#pragma once

#include "base/result.h"
#include "catalogue/catalogue.h"
#include "plan/plan.h"

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

namespace throwline::plan {

/// Largest plan file that is read; a larger one is refused before it is opened.
inline constexpr std::uintmax_t kLargestPlanBytes = 32U << 20U;

/// Reads a plan from JSON text. Strict: unknown, duplicate and missing keys, wrong types, numbers
/// out of range, names that nothing has, crossing outlines are errors, and all of them are
/// reported, each with line, column and JSON pointer, what was found, what is allowed and the
/// nearest valid name. `file` only labels the errors. Names of stock, lenses and the like are
/// checked in `catalogue`.
Checked<Plan> read_plan(std::string_view json, const catalogue::Catalogue& catalogue,
                        const std::string& file = {});

/// The same from a file; "-" is standard input.
Checked<Plan> read_plan_file(const std::filesystem::path& path,
                             const catalogue::Catalogue& catalogue);

struct SurveyFile {
    Survey survey;
    /// How the plan around it shows lengths; metric for a survey by itself.
    UnitSystem units = UnitSystem::metric;
};
/// A survey from JSON: an object as under a plan's key `survey`, or that of a whole plan. As strict
/// as read_plan.
Checked<SurveyFile> read_survey(std::string_view json, const catalogue::Catalogue& catalogue,
                                const std::string& file = {});

/// Stable text: same keys in the same order, shortest exact numbers in metres and degrees, what
/// stood under `extra` as it came. Reading it back gives an equal plan.
std::string written(const Plan& plan);

} // namespace throwline::plan
