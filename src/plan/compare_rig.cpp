#include "plan/compare_parts.h"

namespace throwline::plan {

namespace {

Subject grid_subject(const Plan& old, const Plan& now) {
    const auto place = [](const Plan& plan) {
        return plan.grid ? std::vector<Vec2>{plan.grid->origin} : std::vector<Vec2>{};
    };
    return {{ThingKind::grid, {}, place(old), place(now)}, "pipe grid"};
}

/// " with the 3 lamps that hang from it"
std::string with_lamps(const Plan& plan) {
    int count = 0;
    for (const Lamp& lamp : plan.lamps) {
        count += std::holds_alternative<GridHang>(lamp.mount) ? 1 : 0;
    }
    return count == 0 ? "" : fmt::format(", with the {} on it", counted(count, "lamp"));
}

void compare(DifferenceLedger& ledger, const Plan& old_plan, const Plan& plan) {
    const Grid& old = *old_plan.grid;
    const auto& [origin, pitch_x, pitch_y, columns, rows, height, turn, run, point_load_kg,
                 pipe_load_kg, extra] = *plan.grid;
    const Subject subject = grid_subject(old_plan, plan);
    ledger.moved(subject, std::span{&old.origin, 1}, std::span{&origin, 1}, "", with_lamps(plan));
    ledger.raised(subject, old.height, height);
    ledger.turned(subject, old.turn, turn);
    FieldChanges fields = ledger.fields();
    fields.length("pitch of the letters", old.pitch_x, pitch_x);
    fields.length("pitch of the numbers", old.pitch_y, pitch_y);
    fields.number("letters", old.columns, columns);
    fields.number("numbers", old.rows, rows);
    fields.choice("pipes", old.run, run);
    fields.mass("load on a point by the venue's papers", old.point_load_kg, point_load_kg);
    fields.mass("load on a pipe by the venue's papers", old.pipe_load_kg, pipe_load_kg);
    fields.extra(old.extra, extra);
    ledger.changed(subject, fields);
}

void compare_grid(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    if (old.grid && now.grid) {
        compare(ledger, old, now);
    } else if (old.grid) {
        ledger.removed(grid_subject(old, now));
    } else if (now.grid) {
        ledger.added(grid_subject(old, now));
    }
}

std::vector<Vec2> ends_of(const Pipe& pipe) {
    return {pipe.from, pipe.to};
}

std::string said(const Pipe& pipe) {
    return with_kind("pipe", pipe.id.name);
}

void compare(DifferenceLedger& ledger, const Pipe& old, const Pipe& now) {
    const auto& [id, from, to, height, point_load_kg, load_kg, extra] = now;
    const Subject subject{{ThingKind::pipe, id.name, ends_of(old), {from, to}}, said(now)};
    ledger.moved(subject, ends_of(old), ends_of(now), "has other ends");
    ledger.raised(subject, old.height, height);
    FieldChanges fields = ledger.fields();
    fields.mass("load on a point by the venue's papers", old.point_load_kg, point_load_kg);
    fields.mass("load by the venue's papers", old.load_kg, load_kg);
    fields.extra(old.extra, extra);
    ledger.changed(subject, fields);
}

} // namespace

void compare_rig(DifferenceLedger& ledger, const Plan& old, const Plan& now) {
    compare_grid(ledger, old, now);
    const ThingPairs pairs = paired_by_id(old.pipes, now.pipes);
    each_pair(
        pairs, old.pipes, now.pipes,
        [&](const Pipe& before, const Pipe& after) { compare(ledger, before, after); },
        [&](const Pipe& gone) {
            ledger.removed({{ThingKind::pipe, gone.id.name, ends_of(gone), {}}, said(gone)});
        },
        [&](const Pipe& come, std::size_t) {
            ledger.added({{ThingKind::pipe, come.id.name, {}, ends_of(come)}, said(come)});
        });
    tell_order(ledger, ThingKind::pipe, pairs, "pipes");
}

} // namespace throwline::plan
