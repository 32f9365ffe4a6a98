#include "base/polygon.h"
#include "checks/power_checks.h"
#include "checks/things_used.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::checks {

std::vector<Finding> kit_count(const CheckInput& input, const std::stop_token&) {
    std::vector<Finding> findings;
    const ThingsUsed used = things_used(input.plan);
    const Vec2 middle = centroid(input.plan.room.outline);
    for (const plan::KitItem& owned : input.plan.kit) {
        const auto users = used.find(owned.item);
        const std::size_t have = static_cast<std::size_t>(std::max(owned.count, 0));
        if (users == used.end() || users->second.size() <= have) {
            continue;
        }
        Finding finding;
        finding.check = "kit";
        finding.severity = Severity::error;
        finding.things = users->second;
        finding.at = middle; // it is about no place of its own
        finding.weight = static_cast<double>(users->second.size() - have);
        finding.message = fmt::format("The plan uses {} of \"{}\" and the kit list holds {}.",
                                      users->second.size(), owned.item, have);
        finding.working = {"used - owned",
                           {{"", "used", std::to_string(users->second.size())},
                            {"", "owned", std::to_string(have)}},
                           std::to_string(users->second.size() - have) + " too many",
                           "plain count"};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace throwline::checks
