#pragma once

#include "checks/finding.h"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>
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

/// Whether all of some things are among those that a finding is about.
inline bool is_about(const checks::Finding& finding, const std::vector<std::string>& wanted) {
    return std::all_of(wanted.begin(), wanted.end(), [&](const std::string& name) {
        return std::find(finding.things.begin(), finding.things.end(), name)
               != finding.things.end();
    });
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

/// What only one of two analyses found, a line each: "+" only the first, "-" only the second.
inline std::string difference(const std::vector<checks::Finding>& first,
                              const std::vector<checks::Finding>& second) {
    const std::vector<std::string> a = signatures(first);
    const std::vector<std::string> b = signatures(second);
    std::vector<std::string> only_a;
    std::vector<std::string> only_b;
    std::set_difference(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(only_a));
    std::set_difference(b.begin(), b.end(), a.begin(), a.end(), std::back_inserter(only_b));
    std::string text;
    for (const std::string& line : only_a) {
        text += "+ " + line + "\n";
    }
    for (const std::string& line : only_b) {
        text += "- " + line + "\n";
    }
    return text;
}

} // namespace throwline::support
