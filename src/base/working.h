#pragma once

#include <string>
#include <vector>

namespace throwline {

/// One input or intermediate of a working, ready to print: {"f", "focal length", "50 mm"}.
struct WorkingTerm {
    std::string symbol;
    std::string name;
    std::string value;

    bool operator==(const WorkingTerm&) const = default;
};

/// How a shown number came about. Built on demand, never in a hot loop.
struct Working {
    /// In words and symbols: "horizontal angle = 2 atan(s / 2f)".
    std::string formula;
    std::vector<WorkingTerm> inputs;
    /// With its unit: "39.6 deg".
    std::string result;
    /// A published document, "common practice, no source", or "plain geometry".
    std::string source;

    bool operator==(const Working&) const = default;
};

/// One line: "formula; f focal length = 50 mm; ... ; result: 39.6 deg; source: ...".
std::string text_of(const Working& working);

} // namespace throwline
