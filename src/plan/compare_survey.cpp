#include "plan/compare_parts.h"
#include "plan/difference_words.h"

#include <tuple>

namespace throwline::plan {

namespace {

/// Says what came and went of one list of a survey, calls `compare(before, now)` for what is in
/// both, and says when only the order differs.
template <class Part, class KeyOf, class Said, class Compare>
void compare_lists(FieldChanges& fields, const std::vector<Part>& old, const std::vector<Part>& now,
                   const KeyOf& key_of, const Said& said, const Compare& compare) {
    const ThingPairs pairs = paired(old, now, key_of);
    each_pair(
        pairs, old, now, compare, [&](const Part& gone) { fields.say(said(gone) + " left out"); },
        [&](const Part& come, std::size_t) { fields.say(said(come) + " added"); });
    if (!out_of_order(pairs).empty()) {
        fields.say(said(now.front()) + " and its like in another order");
    }
}

void compare_readings(FieldChanges& fields, const Survey& old, const Survey& now) {
    const auto said = [](const TapeReading& reading) {
        return fmt::format("reading {}-{}", reading.from, reading.to);
    };
    compare_lists(
        fields, old.readings, now.readings,
        [](const TapeReading& reading) { return std::pair{reading.from, reading.to}; }, said,
        [&](const TapeReading& before, const TapeReading& after) {
            const auto& [from, to, length, note] = after;
            fields.length(said(after), before.length, length);
            fields.text(said(after) + " noted", before.note, note);
        });
}

void compare_stretch(FieldChanges& fields, const std::string& where, const Stretch& old,
                     const Stretch& now) {
    const auto& [name, kind, width, depth, height, sill] = now;
    fields.name(where + " name", old.name, name);
    fields.choice(where + " kind", old.kind, kind);
    fields.length(where + " width", old.width, width);
    fields.length(where + " depth", old.depth, depth);
    fields.length(where + " height", old.height, height);
    fields.length(where + " above the floor", old.sill, sill);
}

void compare_chains(FieldChanges& fields, const Survey& old, const Survey& now) {
    const auto said = [](const Chain& chain) {
        return fmt::format("chain {}-{}", chain.from, chain.to);
    };
    compare_lists(
        fields, old.chains, now.chains,
        [](const Chain& chain) { return std::pair{chain.from, chain.to}; }, said,
        [&](const Chain& before, const Chain& after) {
            const auto& [from, to, stretches, to_the_end] = after;
            fields.flag(before.to_the_end, to_the_end, said(after) + " reaches the end now",
                        said(after) + " no longer reaches the end");
            if (before.stretches.size() != stretches.size()) {
                fields.number("stretches of " + said(after),
                              static_cast<double>(before.stretches.size()),
                              static_cast<double>(stretches.size()));
                return;
            }
            for (std::size_t i = 0; i < stretches.size(); ++i) {
                compare_stretch(fields, fmt::format("{} stretch {}", said(after), i + 1),
                                before.stretches[i], stretches[i]);
            }
        });
}

void compare_floor(FieldChanges& fields, const Survey& old, const Survey& now) {
    const auto said_point = [](const FloorPoint& point) { return "point " + point.name; };
    compare_lists(
        fields, old.points, now.points, [](const FloorPoint& point) { return point.name; },
        said_point,
        [&](const FloorPoint& before, const FloorPoint& after) {
            const auto& [name, outside] = after;
            fields.flag(before.outside, outside, said_point(after) + " outside the room now",
                        said_point(after) + " inside the room now");
        });
    const auto said_thing = [](const FloorThing& thing) { return thing.name; };
    compare_lists(fields, old.things, now.things, said_thing, said_thing,
                  [&](const FloorThing& before, const FloorThing& after) {
                      const auto& [name, points, diameter, height] = after;
                      fields.list("points of " + name, before.points, points);
                      fields.length("diameter of " + name, before.diameter, diameter);
                      fields.length("height of " + name, before.height, height);
                  });
}

void compare_heights(FieldChanges& fields, const Survey& old, const Survey& now) {
    const auto said = [](const HeightReading& reading) {
        return reading.at.empty() ? std::string{"ceiling"} : "ceiling at " + reading.at;
    };
    compare_lists(
        fields, old.heights, now.heights, [](const HeightReading& reading) { return reading.at; },
        said,
        [&](const HeightReading& before, const HeightReading& after) {
            const auto& [at, height] = after;
            fields.length(said(after), before.height, height);
        });
}

void compare_outlets(FieldChanges& fields, const Survey& old, const Survey& now) {
    const auto said = [](const OutletReading& outlet) {
        return fmt::format("outlet of {} on wall {}-{}", outlet.circuit, outlet.from, outlet.to);
    };
    compare_lists(
        fields, old.outlets, now.outlets,
        [](const OutletReading& outlet) {
            return std::tuple{outlet.circuit, outlet.from, outlet.to};
        },
        said,
        [&](const OutletReading& before, const OutletReading& after) {
            const auto& [circuit, from, to, along, height] = after;
            fields.length(said(after) + " along", before.along, along);
            fields.length(said(after) + " height", before.height, height);
        });
}

void compare_notes(FieldChanges& fields, const Survey& old, const Survey& now) {
    compare_lists(
        fields, old.notes, now.notes, [](const SiteNote& note) { return note.text; },
        [](const SiteNote& note) { return "note " + short_text(note.text); },
        [&](const SiteNote& before, const SiteNote& after) {
            const auto& [kind, text] = after;
            fields.choice("note " + short_text(text), before.kind, kind);
        });
}

void compare(FieldChanges& fields, const Survey& old, const Survey& now) {
    const auto& [corners, clockwise, square_corners, squareness, readings, chains, points, things,
                 heights, outlets, first_wall_bearing, precision, precision_per_metre_mm, notes,
                 extra] = now;
    fields.list("corners", old.corners, corners);
    fields.flag(old.clockwise, clockwise, "walked clockwise now", "walked anticlockwise now");
    fields.list("square corners", old.square_corners, square_corners);
    fields.angle("squareness", old.squareness, squareness);
    compare_readings(fields, old, now);
    compare_chains(fields, old, now);
    compare_floor(fields, old, now);
    compare_heights(fields, old, now);
    compare_outlets(fields, old, now);
    fields.angle("bearing of the first wall", old.first_wall_bearing, first_wall_bearing);
    fields.length("precision of a reading", old.precision, precision);
    fields.number("precision per metre", old.precision_per_metre_mm, precision_per_metre_mm, "mm");
    compare_notes(fields, old, now);
    fields.extra(old.extra, extra);
}

} // namespace

void compare_survey(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    const Subject subject = placeless(ThingKind::survey, {}, "survey");
    if (old.survey && now.survey) {
        FieldChanges fields = ledger.fields();
        compare(fields, *old.survey, *now.survey);
        ledger.changed(subject, fields);
    } else if (old.survey) {
        ledger.removed(subject);
    } else if (now.survey) {
        ledger.added(subject);
    }
}

} // namespace throwline::plan
