#pragma once

#include "plan/difference_ledger.h"

#include <set>

/// The marks of one beat in two plans.
namespace throwline::plan {

/// Whether somebody is in one of the plans only, which is told of the person and not of each mark.
struct Casts {
    std::set<Id<Person>> old;
    std::set<Id<Person>> now;

    bool gone(const Id<Person>& person) const { return old.count(person) > now.count(person); }
    bool come(const Id<Person>& person) const { return now.count(person) > old.count(person); }
};

Casts casts_of(const Plan& old, const Plan& now);

/// A mark of somebody's own, or that they are off the floor.
using MarkChange = std::variant<Mark, OffFloor>;
/// Where it is; nothing for null and off the floor.
std::vector<Vec2> place_of(const MarkChange* change);

/// Tells what differs between the marks of a beat. `beat_before` is the one before it in the newer
/// plan, null for the first.
void compare_marks(DifferenceLedger& ledger, const Casts& casts, const Beat& old, const Beat& now,
                   const Beat* beat_before);

} // namespace throwline::plan
