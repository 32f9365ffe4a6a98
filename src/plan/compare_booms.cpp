#include "plan/compare_parts.h"

#include <array>

namespace throwline::plan {

namespace {

std::vector<Vec2> ends_of(const Boom& boom) {
    return {boom.operator_at, boom.microphone};
}

std::string said(const Boom& boom) {
    return with_kind("boom", boom.id.name);
}

void compare(DifferenceLedger& ledger, const Boom& old, const Boom& now) {
    const auto& [id, operator_at, pole, microphone, height, beats, extra] = now;
    const Subject subject{{ThingKind::boom, id.name, ends_of(old), ends_of(now)}, said(now)};
    if (shifted_alike(ends_of(old), ends_of(now))) {
        ledger.moved(subject, ends_of(old), ends_of(now));
    } else {
        ledger.moved({subject.thing, "operator of " + subject.said}, std::span{&old.operator_at, 1},
                     std::span{&operator_at, 1});
        ledger.moved({subject.thing, "microphone of " + subject.said},
                     std::span{&old.microphone, 1}, std::span{&microphone, 1});
    }
    ledger.raised({subject.thing, "microphone of " + subject.said}, old.height, height);
    FieldChanges fields = ledger.fields();
    fields.length("pole", old.pole, pole);
    fields.ids("beats", old.beats, beats);
    fields.extra(old.extra, extra);
    ledger.changed(subject, fields);
}

} // namespace

void compare_booms(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    const ThingPairs pairs = paired_by_id(old.booms, now.booms);
    each_pair(
        pairs, old.booms, now.booms,
        [&](const Boom& before, const Boom& after) { compare(ledger, before, after); },
        [&](const Boom& gone) {
            ledger.removed({{ThingKind::boom, gone.id.name, ends_of(gone), {}}, said(gone)});
        },
        [&](const Boom& come, std::size_t) {
            ledger.added({{ThingKind::boom, come.id.name, {}, ends_of(come)}, said(come)});
        });
    tell_order(ledger, ThingKind::boom, pairs, "booms");
}

} // namespace throwline::plan
