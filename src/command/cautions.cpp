#include "command/cautions.h"

#include <algorithm>
#include <set>
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

template <class Brings>
std::vector<std::string> cautions_where(const Brings& brings) {
    std::vector<std::string> cautions;
    for (const Caution& caution : kCautions) {
        if (brings(caution.check)) {
            cautions.emplace_back(caution.sentence);
        }
    }
    return cautions;
}

/// Checks that look at a kind of thing and bring a caution.
std::vector<std::string_view> checks_of(plan::ThingKind kind) {
    switch (kind) {
    case plan::ThingKind::grid:
    case plan::ThingKind::pipe:
        return {"pipe-load"};
    case plan::ThingKind::lamp:
        return {"pipe-load", "lamp-clearance"};
    case plan::ThingKind::circuit:
        return {"circuit-load"};
    case plan::ThingKind::opening:
        return {"way-out"};
    case plan::ThingKind::room:
    case plan::ThingKind::wall:
    case plan::ThingKind::scenery:
    case plan::ThingKind::person:
    case plan::ThingKind::beat:
    case plan::ThingKind::mark:
    case plan::ThingKind::camera:
    case plan::ThingKind::shot:
    case plan::ThingKind::boom:
    case plan::ThingKind::production:
    case plan::ThingKind::site:
    case plan::ThingKind::survey:
    case plan::ThingKind::underlay:
    case plan::ThingKind::kit_item:
    case plan::ThingKind::targets:
    case plan::ThingKind::acceptance:
        return {};
    }
    return {};
}

} // namespace

std::vector<std::string> cautions_for(std::span<const checks::Finding> findings) {
    return cautions_where([&](std::string_view check) {
        return std::any_of(findings.begin(), findings.end(),
                           [&](const checks::Finding& finding) { return finding.check == check; });
    });
}

std::vector<std::string> cautions_for(std::span<const plan::Difference> differences) {
    std::set<std::string_view> checks;
    for (const plan::Difference& difference : differences) {
        for (const plan::ChangedThing& thing : difference.things) {
            const std::vector<std::string_view> of_kind = checks_of(thing.kind);
            checks.insert(of_kind.begin(), of_kind.end());
        }
    }
    return cautions_where([&](std::string_view check) { return checks.count(check) > 0; });
}

std::vector<std::string> checks_with_caution() {
    std::vector<std::string> ids;
    for (const Caution& caution : kCautions) {
        ids.emplace_back(caution.check);
    }
    return ids;
}

} // namespace throwline::command
