#include "plan/compare_marks.h"
#include "plan/compare_parts.h"

namespace throwline::plan {

namespace {

std::string said(const Beat& beat) {
    const std::string beat_name = with_kind("beat", beat.id.name);
    return beat.name.empty() ? beat_name : fmt::format("{} ({})", beat_name, beat.name);
}

void compare(DifferenceLedger& ledger, const Casts& casts, const Beat& old, const Beat& now,
             const Beat* beat_before) {
    const auto& [id, name, marks, extra] = now;
    FieldChanges fields = ledger.fields();
    fields.text("name", old.name, name);
    fields.extra(old.extra, extra);
    ledger.changed(placeless(ThingKind::beat, id.name, with_kind("beat", id.name)), fields);
    compare_marks(ledger, casts, old, now, beat_before);
}

std::vector<Vec2> places_in(const Beat& beat) {
    std::vector<Vec2> places;
    for (const auto& [person, change] : beat.marks) {
        const std::vector<Vec2> place = place_of(&change);
        places.insert(places.end(), place.begin(), place.end());
    }
    return places;
}

void compare_beats(DifferenceLedger& ledger, const Casts& casts, const std::vector<Beat>& old,
                   const std::vector<Beat>& now) {
    const ThingPairs pairs = paired_by_id(old, now);
    each_pair(
        pairs, old, now,
        [&](const Beat& before, const Beat& after) {
            compare(ledger, casts, before, after, &after == now.data() ? nullptr : &after - 1);
        },
        [&](const Beat& gone) {
            ledger.removed({{ThingKind::beat, gone.id.name, places_in(gone), {}}, said(gone)});
        },
        [&](const Beat& come, std::size_t index) {
            const std::string after =
                index == 0 ? " as the first"
                           : fmt::format(" after {}", with_kind("beat", now[index - 1].id.name));
            ledger.added({{ThingKind::beat, come.id.name, {}, places_in(come)}, said(come)}, after);
        });
    tell_running_order(ledger, ThingKind::beat, pairs, now, "order of beats");
}

void compare(DifferenceLedger& ledger, const Person& old, const Person& now) {
    const auto& [id, stature, kind, extra] = now;
    FieldChanges fields = ledger.fields();
    fields.length("stature", old.stature, stature);
    fields.choice("kind", old.kind, kind);
    fields.extra(old.extra, extra);
    ledger.changed(placeless(ThingKind::person, id.name, id.name), fields);
}

std::string said(const Person& person) {
    return fmt::format("{} ({})", person.id.name, name_of(person.kind));
}

/// Wherever somebody stands.
std::vector<Vec2> marks_of(const Plan& plan, const Id<Person>& person) {
    std::vector<Vec2> marks;
    for (const Beat& beat : plan.beats) {
        if (const auto change = beat.marks.find(person); change != beat.marks.end()) {
            const std::vector<Vec2> place = place_of(&change->second);
            marks.insert(marks.end(), place.begin(), place.end());
        }
    }
    return marks;
}

} // namespace

void compare_blocking(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    const ThingPairs pairs = paired_by_id(old.people, now.people);
    each_pair(
        pairs, old.people, now.people,
        [&](const Person& before, const Person& after) { compare(ledger, before, after); },
        [&](const Person& gone) {
            ledger.removed(
                {{ThingKind::person, gone.id.name, marks_of(old, gone.id), {}}, said(gone)});
        },
        [&](const Person& come, std::size_t) {
            ledger.added(
                {{ThingKind::person, come.id.name, {}, marks_of(now, come.id)}, said(come)});
        });
    tell_order(ledger, ThingKind::person, pairs, "people");
    compare_beats(ledger, casts_of(old, now), old.beats, now.beats);
}

} // namespace throwline::plan
