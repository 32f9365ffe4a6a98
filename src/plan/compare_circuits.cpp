#include "plan/compare_parts.h"

#include <algorithm>

namespace throwline::plan {

namespace {

std::string said(const Circuit& circuit) {
    return with_kind("circuit", circuit.id.name);
}

/// Outlets have no names: as many as are in both plans have moved, the rest came or went.
void compare_outlets(DifferenceLedger& ledger, const Circuit& old, const Circuit& now) {
    const std::vector<Vec2> before = only_in(old.outlets, now.outlets);
    const std::vector<Vec2> after = only_in(now.outlets, old.outlets);
    const std::string outlet = fmt::format("outlet of {}", said(now));
    const auto subject = [&](std::span<const Vec2> was, std::span<const Vec2> is) {
        return Subject{
            {ThingKind::circuit, now.id.name, {was.begin(), was.end()}, {is.begin(), is.end()}},
            outlet};
    };
    const std::size_t both = std::min(before.size(), after.size());
    for (std::size_t i = 0; i < both; ++i) {
        const auto was = std::span{before}.subspan(i, 1);
        const auto is = std::span{after}.subspan(i, 1);
        ledger.moved(subject(was, is), was, is);
    }
    for (std::size_t i = both; i < before.size(); ++i) {
        ledger.removed(subject(std::span{before}.subspan(i, 1), {}));
    }
    for (std::size_t i = both; i < after.size(); ++i) {
        ledger.added(subject({}, std::span{after}.subspan(i, 1)));
    }
    if (old.outlets != now.outlets && before.empty() && after.empty()) {
        ledger.tell(Change::changed, subject({}, {}),
                    fmt::format("the outlets of {} are listed in another order", said(now)));
    }
}

void compare(DifferenceLedger& ledger, const Circuit& old, const Circuit& now) {
    const auto& [id, volts, breaker_amps, continuous, outlets, extra] = now;
    compare_outlets(ledger, old, now);
    FieldChanges fields = ledger.fields();
    fields.number("voltage", old.volts, volts, "V");
    fields.number("breaker", old.breaker_amps, breaker_amps, "A");
    fields.flag(old.continuous, continuous, "on for three hours or more now",
                "on for less than three hours now");
    fields.extra(old.extra, extra);
    ledger.changed({{ThingKind::circuit, id.name, old.outlets, outlets}, said(now)}, fields);
}

} // namespace

void compare_circuits(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    const ThingPairs pairs = paired_by_id(old.circuits, now.circuits);
    each_pair(
        pairs, old.circuits, now.circuits,
        [&](const Circuit& before, const Circuit& after) { compare(ledger, before, after); },
        [&](const Circuit& gone) {
            ledger.removed({{ThingKind::circuit, gone.id.name, gone.outlets, {}}, said(gone)});
        },
        [&](const Circuit& come, std::size_t) {
            ledger.added({{ThingKind::circuit, come.id.name, {}, come.outlets}, said(come)},
                         fmt::format(": {} V, breaker {} A", shortest(come.volts),
                                     shortest(come.breaker_amps)));
        });
    tell_order(ledger, ThingKind::circuit, pairs, "circuits");
}

} // namespace throwline::plan
