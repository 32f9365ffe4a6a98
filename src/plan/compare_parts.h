#pragma once

#include "base/words.h"
#include "plan/difference_ledger.h"
#include "plan/thing_pairs.h"

#include <fmt/format.h>

/// The comparison of each part of two plans; each writes down all that differs within it. What has
/// only another name has the newer one in both plans.
namespace throwline::plan {

/// Title, units, targets, kit, accepted findings, other data.
void compare_papers(DifferenceLedger& ledger, const Plan& old, const Plan& now);
void compare_site(DifferenceLedger& ledger, const Site& old, const Site& now);
void compare_survey(DifferenceLedger& ledger, const Plan& old, const Plan& now);
void compare_underlay(DifferenceLedger& ledger, const Plan& old, const Plan& now);
void compare_room(DifferenceLedger& ledger, const Room& old, const Room& now);
void compare_openings(DifferenceLedger& ledger, const Room& old, const Room& now);
/// Grid and pipes.
void compare_rig(DifferenceLedger& ledger, const Plan& old, const Plan& now);
void compare_circuits(DifferenceLedger& ledger, const Plan& old, const Plan& now);
void compare_scenery(DifferenceLedger& ledger, const Plan& old, const Plan& now);
/// People, beats and marks.
void compare_blocking(DifferenceLedger& ledger, const Plan& old, const Plan& now);
void compare_cameras(DifferenceLedger& ledger, const Plan& old, const Plan& now);
void compare_shots(DifferenceLedger& ledger, const Plan& old, const Plan& now);
void compare_booms(DifferenceLedger& ledger, const Plan& old, const Plan& now);
void compare_lamps(DifferenceLedger& ledger, const Plan& old, const Plan& now);

/// What a lamp or a shot is aimed at, when that is another kind of thing or has another name; a
/// place that moved is a move of "the aim of ...".
void compare_aim(DifferenceLedger& ledger, FieldChanges& fields, const Subject& subject,
                 const Aim& before, const Aim& now);

/// Tells that things are in another order, where their order means nothing but that.
void tell_order(DifferenceLedger& ledger, ThingKind kind, const ThingPairs& pairs,
                std::string_view things);
/// Tells which things now come before which, where they run in order.
template <class Thing>
void tell_running_order(DifferenceLedger& ledger, ThingKind kind, const ThingPairs& pairs,
                        const std::vector<Thing>& now, std::string_view heading) {
    for (const std::size_t pair : out_of_order(pairs)) {
        const std::string& name = now[pairs.both[pair].second].id.name;
        const std::string place = pair + 1 < pairs.both.size()
                                      ? "before " + now[pairs.both[pair + 1].second].id.name
                                      : std::string{"last"};
        ledger.tell(Change::moved, placeless(kind, name, name),
                    fmt::format("{}: {} now {}", heading, name, place));
    }
}

/// Calls `compare(before, now)` for what is in both lists, `gone(before)` and `come(now, index)`
/// for what is in one. `pairs` are those of the lists.
template <class Thing, class Compare, class Gone, class Come>
void each_pair(const ThingPairs& pairs, const std::vector<Thing>& old,
               const std::vector<Thing>& now, const Compare& compare, const Gone& gone,
               const Come& come) {
    for (const auto& [before, after] : pairs.both) {
        compare(old[before], now[after]);
    }
    for (const std::size_t index : pairs.gone) {
        gone(old[index]);
    }
    for (const std::size_t index : pairs.come) {
        come(now[index], index);
    }
}

} // namespace throwline::plan
