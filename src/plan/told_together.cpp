#include "base/utf8.h"
#include "base/words.h"
#include "plan/difference_ledger.h"
#include "plan/difference_words.h"

#include <algorithm>
#include <fmt/format.h>
#include <limits>
#include <map>
#include <set>
#include <tuple>

namespace throwline::plan {

namespace {

using Entries = std::vector<const LedgerEntry*>;

/// More names than these in one sentence are only counted.
constexpr std::size_t kMostNames = 8;

std::string names_in(const Entries& entries) {
    std::vector<std::string> names;
    for (std::size_t i = 0; i < std::min(entries.size(), kMostNames); ++i) {
        names.push_back(entries[i]->said);
    }
    if (entries.size() > kMostNames) {
        names.push_back(fmt::format("{} more", entries.size() - kMostNames));
    }
    return on_one_line(listed(names));
}

Difference gathered(Gathering gathering, const Entries& entries, std::string sentence) {
    Difference difference;
    difference.change = Change::moved;
    difference.gathering = gathering;
    difference.sentence = std::move(sentence);
    for (const LedgerEntry* entry : entries) {
        const std::vector<ChangedThing>& things = entry->difference.things;
        difference.things.insert(difference.things.end(), things.begin(), things.end());
    }
    return difference;
}

Difference together(const Entries& entries, UnitSystem units) {
    const Vec2& shift = *entries.front()->shift;
    Difference difference = gathered(Gathering::together, entries,
                                     fmt::format("{} moved together {}: {}.",
                                                 counted(static_cast<int>(entries.size()), "thing"),
                                                 shift_text(shift, units), names_in(entries)));
    difference.working = shift_working(shift, units);
    return difference;
}

Difference slight(const Entries& entries, UnitSystem units) {
    return gathered(Gathering::slight, entries,
                    fmt::format("{} moved by less than {} or turned by less than {}°: {}.",
                                counted(static_cast<int>(entries.size()), "thing"),
                                units == UnitSystem::metric ? "1 mm" : "1/25 in",
                                shortest(kSlightTurn.deg()), names_in(entries)));
}

/// Moves across the plan by the same shift, in the order of the first of each.
std::vector<Entries> grouped_by_shift(std::span<const LedgerEntry> entries) {
    std::vector<Entries> groups;
    for (const LedgerEntry& entry : entries) {
        if (!entry.shift || entry.slight) {
            continue;
        }
        const auto known = std::find_if(groups.begin(), groups.end(), [&](const Entries& group) {
            return (*group.front()->shift - *entry.shift).norm() < kSlightMove.m();
        });
        if (known == groups.end()) {
            groups.push_back({&entry});
        } else {
            known->push_back(&entry);
        }
    }
    return groups;
}

using ThingKey = std::pair<ThingKind, std::string>;

ThingKey key_of(const LedgerEntry& entry) {
    return {entry.difference.things.front().kind, entry.difference.things.front().name};
}

double weight_of(const LedgerEntry& entry) {
    switch (entry.difference.change) {
    case Change::added:
    case Change::removed:
        return std::numeric_limits<double>::infinity();
    case Change::renamed:
    case Change::moved:
    case Change::turned:
    case Change::changed:
        return entry.size_m;
    }
    return 0.0;
}

/// By kind, then things by the weightiest that happened to them; lines of a thing stay together.
void sort(Entries& entries) {
    std::map<ThingKey, std::pair<double, std::size_t>> things;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        auto& [weight, first] = things.try_emplace(key_of(*entries[i]), 0.0, i).first->second;
        weight = std::max(weight, weight_of(*entries[i]));
    }
    const auto rank = [&](const LedgerEntry* entry) {
        const auto& [weight, first] = things.at(key_of(*entry));
        return std::tuple{entry->difference.things.front().kind, -weight, first};
    };
    std::stable_sort(entries.begin(), entries.end(),
                     [&](const LedgerEntry* a, const LedgerEntry* b) { return rank(a) < rank(b); });
}

} // namespace

std::vector<Difference> told_together(std::span<const LedgerEntry> entries, UnitSystem units) {
    std::vector<Difference> told;
    std::vector<Entries> groups = grouped_by_shift(entries);
    std::erase_if(groups, [](const Entries& group) { return group.size() < kFewestTogether; });
    std::stable_sort(groups.begin(), groups.end(),
                     [](const Entries& a, const Entries& b) { return a.size() > b.size(); });
    std::set<const LedgerEntry*> grouped;
    for (const Entries& group : groups) {
        told.push_back(together(group, units));
        grouped.insert(group.begin(), group.end());
    }
    Entries alone;
    Entries hardly;
    for (const LedgerEntry& entry : entries) {
        if (grouped.count(&entry) == 0) {
            (entry.slight ? hardly : alone).push_back(&entry);
        }
    }
    sort(alone);
    for (const LedgerEntry* entry : alone) {
        told.push_back(entry->difference);
    }
    if (!hardly.empty()) {
        told.push_back(slight(hardly, units));
    }
    return told;
}

} // namespace throwline::plan
