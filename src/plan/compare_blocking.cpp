#include "plan/compare_parts.h"

namespace throwline::plan {

namespace {

using MarkChange = std::variant<Mark, OffFloor>;

std::string said(const Beat& beat) {
    const std::string beat_name = with_kind("beat", beat.id.name);
    return beat.name.empty() ? beat_name : fmt::format("{} ({})", beat_name, beat.name);
}

std::vector<Vec2> place_of(const MarkChange* change) {
    const Mark* mark = change == nullptr ? nullptr : std::get_if<Mark>(change);
    return mark == nullptr ? std::vector<Vec2>{} : std::vector<Vec2>{mark->at};
}

/// One person in one beat: with a mark of their own, off the floor, or (null) as the beat before
/// left them.
struct MarkComparison {
    DifferenceLedger& ledger;
    const Id<Person>& person;
    const Id<Beat>& beat;
    const MarkChange* old;
    const MarkChange* now;

    Subject subject() const {
        const std::string in_beat = with_kind("beat", beat.name);
        return {{ThingKind::mark, fmt::format("{} in {}", person.name, in_beat), place_of(old),
                 place_of(now)},
                fmt::format("{}'s mark in {}", person.name, in_beat)};
    }
    /// "Ana's walk", "what Ana faces", in that beat.
    Subject other_subject(const std::string& what) const {
        return {subject().thing, fmt::format("{} in {}", what, with_kind("beat", beat.name))};
    }

    void compare() const;
    void compare_marks(const Mark& before, const Mark& after) const;
    void compare_facing(const Facing& before, const Facing& after, FieldChanges& fields) const;
    void compare_walk(const Mark& before, const Mark& after) const;
};

void MarkComparison::compare() const {
    if (old == nullptr) {
        return std::holds_alternative<Mark>(*now)
                   ? ledger.added(subject())
                   : ledger.tell(Change::added, subject(),
                                 fmt::format("{} goes off the floor in {} now", person.name,
                                             with_kind("beat", beat.name)));
    }
    if (now == nullptr) {
        return ledger.removed(subject(),
                              fmt::format("; {} stays as the beat before left them", person.name));
    }
    const Mark* before = std::get_if<Mark>(old);
    const Mark* after = std::get_if<Mark>(now);
    if (before != nullptr && after != nullptr) {
        compare_marks(*before, *after);
    } else if (before != nullptr) {
        ledger.tell(Change::removed, subject(),
                    fmt::format("{} is off the floor in {} now", person.name,
                                with_kind("beat", beat.name)));
    } else if (after != nullptr) {
        ledger.tell(
            Change::added, subject(),
            fmt::format("{} is on the floor in {} now", person.name, with_kind("beat", beat.name)));
    }
}

void MarkComparison::compare_marks(const Mark& before, const Mark& after) const {
    const auto& [at, faces, pose, elevation, seat_height, path] = after;
    compare_walk(before, after);
    FieldChanges fields = ledger.fields();
    compare_facing(before.faces, faces, fields);
    fields.choice("pose", before.pose, pose);
    fields.length("height of the mark", before.elevation, elevation);
    fields.length("height of the seat", before.seat_height, seat_height);
    ledger.changed(subject(), fields);
}

/// A mark and its walk that moved alike are one move.
void MarkComparison::compare_walk(const Mark& before, const Mark& after) const {
    const auto walk_of = [](const Mark& mark) {
        std::vector<Vec2> points{mark.at};
        points.insert(points.end(), mark.path.begin(), mark.path.end());
        return points;
    };
    if (shifted_alike(walk_of(before), walk_of(after))) {
        ledger.moved(subject(), walk_of(before), walk_of(after));
        return;
    }
    ledger.moved(subject(), std::span{&before.at, 1}, std::span{&after.at, 1});
    Subject walk = other_subject(person.name + "'s walk");
    walk.thing.before = walk_of(before);
    walk.thing.now = walk_of(after);
    ledger.moved(walk, before.path, after.path, "goes another way");
}

void MarkComparison::compare_facing(const Facing& before, const Facing& after,
                                    FieldChanges& fields) const {
    const auto text = [](const Facing& facing) -> std::string {
        if (const auto* thing = std::get_if<ThingName>(&facing)) {
            return thing->name;
        }
        return std::holds_alternative<Angle>(facing) ? "a bearing" : "a place";
    };
    if (const auto* place = std::get_if<Vec2>(&after);
        place != nullptr && std::holds_alternative<Vec2>(before)) {
        ledger.moved(other_subject(fmt::format("what {} faces", person.name)),
                     std::span{&std::get<Vec2>(before), 1}, std::span{place, 1});
    } else if (const auto* bearing = std::get_if<Angle>(&after);
               bearing != nullptr && std::holds_alternative<Angle>(before)) {
        ledger.turned(other_subject(person.name), std::get<Angle>(before), *bearing);
    } else if (!(before == after)) {
        fields.say(fmt::format("faces {} now, not {}", text(after), text(before)));
    }
}

void compare(DifferenceLedger& ledger, const Beat& old, const Beat& now) {
    const auto& [id, name, marks, extra] = now;
    FieldChanges fields = ledger.fields();
    fields.text("name", old.name, name);
    fields.extra(old.extra, extra);
    ledger.changed(placeless(ThingKind::beat, id.name, with_kind("beat", id.name)), fields);
    for (const auto& [person, change] : marks) {
        const auto before = old.marks.find(person);
        MarkComparison{ledger, person, id, before == old.marks.end() ? nullptr : &before->second,
                       &change}
            .compare();
    }
    for (const auto& [person, change] : old.marks) {
        if (marks.count(person) == 0) {
            MarkComparison{ledger, person, id, &change, nullptr}.compare();
        }
    }
}

std::vector<Vec2> places_in(const Beat& beat) {
    std::vector<Vec2> places;
    for (const auto& [person, change] : beat.marks) {
        const std::vector<Vec2> place = place_of(&change);
        places.insert(places.end(), place.begin(), place.end());
    }
    return places;
}

void compare_beats(DifferenceLedger& ledger, const std::vector<Beat>& old,
                   const std::vector<Beat>& now) {
    const ThingPairs pairs = paired_by_id(old, now);
    each_pair(
        pairs, old, now,
        [&](const Beat& before, const Beat& after) { compare(ledger, before, after); },
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

} // namespace

void compare_blocking(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    const auto subject = [](const Person& person) {
        return placeless(ThingKind::person, person.id.name,
                         fmt::format("{} ({})", person.id.name, name_of(person.kind)));
    };
    const ThingPairs pairs = paired_by_id(old.people, now.people);
    each_pair(
        pairs, old.people, now.people,
        [&](const Person& before, const Person& after) { compare(ledger, before, after); },
        [&](const Person& gone) { ledger.removed(subject(gone)); },
        [&](const Person& come, std::size_t) { ledger.added(subject(come)); });
    tell_order(ledger, ThingKind::person, pairs, "people");
    compare_beats(ledger, old.beats, now.beats);
}

} // namespace throwline::plan
