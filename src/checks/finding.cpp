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
