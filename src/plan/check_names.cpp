#include "plan/check_names.h"

#include "base/utf8.h"
#include "plan/check_plan.h"
#include "plan/read_values.h"

#include <unordered_map>

namespace throwline::plan {

namespace {

/// Who already has a name, and where in the file.
struct Holder {
    std::string_view kind;
    int line = 0;
};
using Holders = std::unordered_map<std::string_view, Holder>;

void claim(Reading& reading, const Value& id, const std::string& name, std::string_view kind,
           Holders& holders) {
    if (name.empty()) {
        return;
    }
    const auto [holder, is_new] = holders.try_emplace(name, Holder{kind, id.node->line});
    if (!is_new) {
        reading.wrong(id, fmt::format("{} is already the name of a {} in line {}", in_quotes(name),
                                      holder->second.kind, holder->second.line));
    }
}

template <class Thing>
void claim_all(Reading& reading, const Value& root, std::string_view key, std::string_view kind,
               const std::vector<Thing>& things, Holders& holders) {
    each(root, key, things, [&](const Value& value, const Thing& thing) {
        claim(reading, value.at("id"), thing.id.name, kind, holders);
    });
}

template <class Thing>
void claim_apart(Reading& reading, const Value& root, std::string_view key, std::string_view kind,
                 const std::vector<Thing>& things) {
    Holders holders;
    claim_all(reading, root, key, kind, things, holders);
}

/// "90deg" as a name could not be told from a bearing where somebody faces it.
template <class Thing>
void check_not_angles(Reading& reading, const Value& root, std::string_view key,
                      const std::vector<Thing>& things) {
    each(root, key, things, [&](const Value& value, const Thing& thing) {
        if (reads_as_angle(thing.id.name)) {
            reading.wrong(value.at("id"), fmt::format("{} reads as an angle; choose another name",
                                                      in_quotes(thing.id.name)));
        }
    });
}

template <class Thing>
void check_aimable(Reading& reading, const Value& root, std::string_view key, std::string_view kind,
                   const std::vector<Thing>& things, Holders& holders) {
    claim_all(reading, root, key, kind, things, holders);
    check_not_angles(reading, root, key, things);
}

} // namespace

void KnownNames::add(const std::string& name) {
    if (name.empty()) {
        return;
    }
    if (const auto [known, is_new] = names_.insert(name); is_new) {
        in_order_.push_back(&*known);
    }
}

std::string KnownNames::complaint(const std::string& name) const {
    if (in_order_.empty()) {
        return fmt::format("no {} is called {}; there is none at all", kind_, in_quotes(name));
    }
    std::vector<std::string> candidates;
    for (const std::string* known : in_order_) {
        candidates.push_back(*known);
    }
    return fmt::format("no {} is called {}{}", kind_, in_quotes(name),
                       nearest_hint(name, candidates));
}

void KnownNames::expect(Reading& reading, const Value& value, const std::string& name) const {
    if (!name.empty() && !has(name)) {
        reading.wrong(value, reading.is_full() ? std::string{} : complaint(name));
    }
}

void check_unique_names(Reading& reading, const Value& root, const Plan& plan) {
    const Value room = root.at("room");
    claim_apart(reading, room, "openings", "door, window or opening", plan.room.openings);
    claim_apart(reading, root, "pipes", "pipe", plan.pipes);
    claim_apart(reading, root, "circuits", "circuit", plan.circuits);
    claim_apart(reading, root, "beats", "beat", plan.beats);
    claim_apart(reading, root, "shots", "shot", plan.shots);
    Holders aimable;
    check_aimable(reading, root, "people", "person", plan.people, aimable);
    check_aimable(reading, root, "cameras", "camera", plan.cameras, aimable);
    check_aimable(reading, root, "lamps", "lamp", plan.lamps, aimable);
    check_aimable(reading, root, "scenery", "piece of scenery", plan.scenery, aimable);
    check_aimable(reading, root, "booms", "boom", plan.booms, aimable);
}

} // namespace throwline::plan
