#include "base/length_text.h"
#include "checks/hanging.h"
#include "checks/power_checks.h"
#include "checks/wording.h"

#include <fmt/format.h>

namespace throwline::checks {

namespace {

Finding overload(const std::string& name, const Hanging& hanging, UnitSystem units) {
    Finding finding;
    finding.check = "pipe-load";
    finding.severity = Severity::error;
    finding.things = hanging.lamps;
    finding.at = hanging.at;
    finding.weight = hanging.mass_kg / hanging.limit_kg;
    finding.message = capitalised(fmt::format(
        "{} would carry {} of lamps, {} more than the {} that the plan gives from the venue's "
        "papers.",
        name, mass_text(hanging.mass_kg, units),
        mass_text(hanging.mass_kg - hanging.limit_kg, units), mass_text(hanging.limit_kg, units)));
    finding.working = {
        "load = sum of the masses of the lamps; clamps, cables and accessories come on top",
        {{"", "lamps", std::to_string(hanging.lamps.size())},
         {"", "given limit", mass_text(hanging.limit_kg, units)}},
        mass_text(hanging.mass_kg, units),
        "plain sum; the venue and a qualified rigger decide"};
    return finding;
}

} // namespace

std::vector<Finding> pipe_load(const CheckInput& input, const std::stop_token&) {
    std::vector<Finding> findings;
    for (const auto& [name, hanging] : everything_hanging(input.plan, input.catalogue)) {
        if (hanging.limit_kg > 0.0 && hanging.mass_kg > hanging.limit_kg + kMassRounding_kg) {
            findings.push_back(overload(name, hanging, input.plan.units));
        }
    }
    return findings;
}

} // namespace throwline::checks
