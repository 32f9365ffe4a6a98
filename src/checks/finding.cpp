#include "checks/finding.h"

#include <algorithm>
#include <functional>
#include <tuple>

namespace throwline::checks {

std::string_view name_of(Severity severity) {
    switch (severity) {
    case Severity::error:
        return "error";
    case Severity::caution:
        return "caution";
    case Severity::note:
        return "note";
    }
    return "";
}

bool covers(const plan::Acceptance& acceptance, const Finding& finding) {
    const auto involved = [&](const std::string& thing) {
        return std::find(finding.things.begin(), finding.things.end(), thing)
               != finding.things.end();
    };
    return acceptance.check == finding.check
           && (acceptance.shot.empty() || acceptance.shot == finding.shot)
           && std::all_of(acceptance.things.begin(), acceptance.things.end(), involved);
}

void sort_worst_first(std::vector<Finding>& findings) {
    const auto key = [](const Finding& f) {
        return std::make_tuple(f.accepted.has_value(), f.severity, -f.weight,
                               std::string_view{f.check}, std::string_view{f.shot.name},
                               std::string_view{f.beat.name}, std::cref(f.things),
                               std::string_view{f.message});
    };
    std::stable_sort(findings.begin(), findings.end(),
                     [&](const Finding& a, const Finding& b) { return key(a) < key(b); });
}

} // namespace throwline::checks
