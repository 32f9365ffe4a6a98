#include "plan/compare_parts.h"

namespace throwline::plan {

namespace {

/// The two ends of an opening on the inside of its wall; empty where the room has no such wall.
std::vector<Vec2> ends_of(const Room& room, const Opening& opening) {
    const auto wall = static_cast<std::size_t>(opening.wall);
    if (opening.wall < 0 || wall >= room.outline.size()) {
        return {};
    }
    const Vec2& start = room.outline[wall];
    const Vec2 along = (room.outline[(wall + 1) % room.outline.size()] - start).normalized();
    return {start + along * opening.from_start.m(),
            start + along * (opening.from_start + opening.width).m()};
}

std::string said(const Opening& opening) {
    return with_kind(name_of(opening.kind), opening.id.name);
}

std::string swing_text(const std::optional<Swing>& swing) {
    return swing ? fmt::format("{}, hinge at {}", swing->inward ? "in" : "out",
                               swing->hinge_at_start ? "start" : "end")
                 : std::string{};
}

void compare_swing(FieldChanges& fields, const std::optional<Swing>& old,
                   const std::optional<Swing>& now) {
    fields.name("swing", swing_text(old), swing_text(now));
    if (old && now) {
        fields.angle("opens", old->widest, now->widest);
    }
}

/// Along its wall, whose own moves are told of the wall.
void compare_place(DifferenceLedger& ledger, FieldChanges& fields, const Subject& subject,
                   const Room& room, const Opening& old, const Opening& now) {
    const std::vector<Vec2> before = ends_of(room, old);
    const std::vector<Vec2> after = ends_of(room, now);
    const bool told = old.from_start != now.from_start && old.wall == now.wall && !before.empty()
                      && before.front() != after.front();
    if (told) {
        ledger.moved(subject, std::span{before}.first(1), std::span{after}.first(1));
    } else {
        fields.length("from the start of its wall", old.from_start, now.from_start);
    }
}

void compare(DifferenceLedger& ledger, const Room& old_room, const Room& room, const Opening& old,
             const Opening& now) {
    const auto& [id, kind, wall, from_start, width, sill, head, swing, way_out, transmission,
                 extra] = now;
    const Subject subject{{ThingKind::opening, id.name, ends_of(old_room, old), ends_of(room, now)},
                          said(now)};
    FieldChanges fields = ledger.fields();
    compare_place(ledger, fields, subject, room, old, now);
    fields.choice("kind", old.kind, kind);
    fields.number("wall", number_of_wall(old.wall), number_of_wall(wall));
    fields.length("width", old.width, width);
    fields.length("sill", old.sill, sill);
    fields.length("head", old.head, head);
    compare_swing(fields, old.swing, swing);
    fields.flag(old.way_out, way_out, "counted on as a way out now",
                "no longer counted on as a way out");
    fields.share("light let through", old.transmission, transmission);
    fields.extra(old.extra, extra);
    ledger.changed(subject, fields);
}

} // namespace

void compare_openings(DifferenceLedger& ledger, const Room& old, const Room& now) {
    const ThingPairs pairs = paired_by_id(old.openings, now.openings);
    const auto on_wall = [](const Opening& opening) {
        return fmt::format(" on wall {}{}", number_of_wall(opening.wall),
                           opening.way_out ? ", counted on as a way out" : "");
    };
    each_pair(
        pairs, old.openings, now.openings,
        [&](const Opening& before, const Opening& after) {
            compare(ledger, old, now, before, after);
        },
        [&](const Opening& gone) {
            ledger.removed({{ThingKind::opening, gone.id.name, ends_of(old, gone), {}}, said(gone)},
                           on_wall(gone));
        },
        [&](const Opening& come, std::size_t) {
            ledger.added({{ThingKind::opening, come.id.name, {}, ends_of(now, come)}, said(come)},
                         on_wall(come));
        });
    tell_order(ledger, ThingKind::opening, pairs, "openings");
}

} // namespace throwline::plan
