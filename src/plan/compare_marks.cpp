#include "plan/compare_marks.h"

#include "base/words.h"

#include <fmt/format.h>

namespace throwline::plan {

namespace {

/// One person in one beat: with a mark of their own, off the floor, or (null) as the beat before
/// left them.
struct MarkComparison {
    DifferenceLedger& ledger;
    const Id<Person>& person;
    const Id<Beat>& beat;
    /// In the newer plan; null for the first.
    const Beat* beat_before;
    const MarkChange* old;
    const MarkChange* now;

    Subject subject() const {
        const std::string in_beat = with_kind("beat", beat.name);
        return {{ThingKind::mark, fmt::format("{} in {}", person.name, in_beat), place_of(old),
                 place_of(now), beat.name},
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
                              beat_before == nullptr
                                  ? std::string{}
                                  : fmt::format("; {} stays as in {}", person.name,
                                                with_kind("beat", beat_before->id.name)));
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

} // namespace

Casts casts_of(const Plan& old, const Plan& now) {
    Casts casts;
    for (const Person& person : old.people) {
        casts.old.insert(person.id);
    }
    for (const Person& person : now.people) {
        casts.now.insert(person.id);
    }
    return casts;
}

std::vector<Vec2> place_of(const MarkChange* change) {
    const Mark* mark = change == nullptr ? nullptr : std::get_if<Mark>(change);
    return mark == nullptr ? std::vector<Vec2>{} : std::vector<Vec2>{mark->at};
}

void compare_marks(DifferenceLedger& ledger, const Casts& casts, const Beat& old, const Beat& now,
                   const Beat* beat_before) {
    for (const auto& [person, change] : now.marks) {
        const auto before = old.marks.find(person);
        const MarkChange* known = before == old.marks.end() ? nullptr : &before->second;
        if (known != nullptr || !casts.come(person)) {
            MarkComparison{ledger, person, now.id, beat_before, known, &change}.compare();
        }
    }
    for (const auto& [person, change] : old.marks) {
        if (now.marks.count(person) == 0 && !casts.gone(person)) {
            MarkComparison{ledger, person, now.id, beat_before, &change, nullptr}.compare();
        }
    }
}

} // namespace throwline::plan
