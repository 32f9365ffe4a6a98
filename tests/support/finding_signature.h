#pragma once

#include "checks/finding.h"

#include <algorithm>
#include <fmt/format.h>
#include <string>
#include <vector>

namespace throwline::support {

/// What a finding is about, without figures and places: check, severity, shot, beat, things.
inline std::string signature(const checks::Finding& finding) {
    std::vector<std::string> things = finding.things;
    std::sort(things.begin(), things.end());
    return fmt::format("{} {} shot={} beat={} {}", checks::name_of(finding.severity), finding.check,
                       finding.shot.name, finding.beat.name, fmt::join(things, "+"));
}

/// All of them, sorted, so that two analyses can be compared whatever their order.
inline std::vector<std::string> signatures(const std::vector<checks::Finding>& findings) {
    std::vector<std::string> all;
    for (const checks::Finding& finding : findings) {
        all.push_back(signature(finding));
    }
    std::sort(all.begin(), all.end());
    return all;
}

} // namespace throwline::support
