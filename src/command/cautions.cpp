#include "command/cautions.h"

#include <algorithm>
#include <string_view>

namespace throwline::command {

namespace {

struct Caution {
    std::string_view check;
    std::string_view sentence;
};

constexpr Caution kCautions[] = {
    {"circuit-load", "Caution, mains power: these are planning sums. Local code and a licensed "
                     "electrician decide."},
    {"pipe-load",
     "Caution, loads overhead: only the venue's own documents and a qualified rigger say what may "
     "hang; every fixture goes on a rated clamp with a safety bond of its own."},
    {"lamp-clearance", "Caution, hot lamps: the maker's distances to people, drapes and sprinklers "
                       "hold; let fixtures "
                       "cool before they are touched."},
    {"way-out",
     "Caution, ways out: local code and the venue say how wide they must be; keep them clear of "
     "cables too."},
};

} // namespace

std::vector<std::string> cautions_for(std::span<const checks::Finding> findings) {
    std::vector<std::string> cautions;
    for (const Caution& caution : kCautions) {
        const bool found =
            std::any_of(findings.begin(), findings.end(), [&](const checks::Finding& finding) {
                return finding.check == caution.check;
            });
        if (found) {
            cautions.emplace_back(caution.sentence);
        }
    }
    return cautions;
}

std::vector<std::string> checks_with_caution() {
    std::vector<std::string> ids;
    for (const Caution& caution : kCautions) {
        ids.emplace_back(caution.check);
    }
    return ids;
}

} // namespace throwline::command
