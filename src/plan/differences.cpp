#include "plan/differences.h"

#include "plan/compare_parts.h"
#include "plan/renames.h"

namespace throwline::plan {

std::vector<Difference> differences(const Plan& old, const Plan& now) {
    DifferenceLedger ledger{now.units};
    const Renames renames = renames_between(old, now);
    for (const Rename& rename : renames.list) {
        const std::string kind{name_of(rename.kind)};
        ledger.renamed(placeless(rename.kind, rename.now, rename.now),
                       with_kind(kind, rename.before));
    }
    const Plan& before = renames.renamed;
    compare_room(ledger, before.room, now.room);
    compare_rig(ledger, before, now);
    compare_scenery(ledger, before, now);
    compare_blocking(ledger, before, now);
    compare_cameras(ledger, before, now);
    compare_shots(ledger, before, now);
    compare_booms(ledger, before, now);
    compare_lamps(ledger, before, now);
    compare_circuits(ledger, before, now);
    compare_papers(ledger, before, now);
    compare_site(ledger, before.site, now.site);
    compare_survey(ledger, before, now);
    compare_underlay(ledger, before, now);
    return told_together(ledger.entries(), now.units);
}

std::string_view name_of(Change change) {
    switch (change) {
    case Change::added:
        return "added";
    case Change::removed:
        return "removed";
    case Change::renamed:
        return "renamed";
    case Change::moved:
        return "moved";
    case Change::turned:
        return "turned";
    case Change::changed:
        return "changed";
    }
    return {};
}

std::string_view name_of(ThingKind kind) {
    switch (kind) {
    case ThingKind::room:
        return "room";
    case ThingKind::wall:
        return "wall";
    case ThingKind::opening:
        return "opening";
    case ThingKind::grid:
        return "grid";
    case ThingKind::pipe:
        return "pipe";
    case ThingKind::scenery:
        return "scenery";
    case ThingKind::person:
        return "person";
    case ThingKind::beat:
        return "beat";
    case ThingKind::mark:
        return "mark";
    case ThingKind::camera:
        return "camera";
    case ThingKind::shot:
        return "shot";
    case ThingKind::boom:
        return "boom";
    case ThingKind::lamp:
        return "lamp";
    case ThingKind::circuit:
        return "circuit";
    case ThingKind::production:
        return "production";
    case ThingKind::site:
        return "site";
    case ThingKind::survey:
        return "survey";
    case ThingKind::underlay:
        return "underlay";
    case ThingKind::kit_item:
        return "kit item";
    case ThingKind::targets:
        return "targets";
    case ThingKind::acceptance:
        return "accepted finding";
    }
    return {};
}

} // namespace throwline::plan
