#include "plan/renames.h"

#include "plan/arrangement.h"
#include "plan/differences.h"
#include "plan/thing_pairs.h"

#include <algorithm>
#include <map>

namespace throwline::plan {

namespace {

/// Newer names by older ones, of one kind.
using NewNames = std::map<std::string, std::string>;

void rename(const NewNames& names, std::string& name) {
    if (const auto found = names.find(name); found != names.end()) {
        name = found->second;
    }
}

template <class Thing>
void rename(const NewNames& names, Id<Thing>& id) {
    rename(names, id.name);
}

template <class Thing>
void rename(const NewNames& names, std::vector<Id<Thing>>& ids) {
    for (Id<Thing>& id : ids) {
        rename(names, id.name);
    }
}

/// A Facing or an Aim.
template <class... Kinds>
void rename_thing(const NewNames& names, std::variant<Kinds...>& target) {
    if (auto* thing = std::get_if<ThingName>(&target)) {
        rename(names, thing->name);
    }
}

/// Newer names of what else nothing in the plan is called: a pipe may share the name of a piece of
/// scenery, which keeps it.
NewNames unshared(NewNames names, const std::vector<std::string>& kept) {
    for (const std::string& name : kept) {
        names.erase(name);
    }
    return names;
}

/// Wherever anything that is on the floor, or named in a finding, stands by its name. The thing
/// itself has the newer one.
void rename_mentions(const NewNames& names, Plan& plan) {
    std::vector<std::string> kept = names_on_floor(plan);
    rename_held(plan.arrangement, unshared(names, kept));
    for (const Circuit& circuit : plan.circuits) {
        kept.push_back(circuit.id.name);
    }
    const NewNames own = unshared(names, kept);
    for (Acceptance& acceptance : plan.accepted) {
        for (std::string& thing : acceptance.things) {
            rename(own, thing);
        }
    }
}

/// The same, and wherever somebody or something is turned to it.
void rename_aimable(const NewNames& names, Plan& plan) {
    for (Beat& beat : plan.beats) {
        for (auto& [person, change] : beat.marks) {
            if (auto* mark = std::get_if<Mark>(&change)) {
                rename_thing(names, mark->faces);
            }
        }
    }
    for (Shot& shot : plan.shots) {
        rename_thing(names, shot.aim);
    }
    for (Lamp& lamp : plan.lamps) {
        rename_thing(names, lamp.aim);
    }
    rename_mentions(names, plan);
}

/// What the outlets of renamed circuits are called now, by what they were.
NewNames outlet_names(const NewNames& names, const Plan& plan) {
    NewNames outlets;
    for (const auto& [before, now] : names) {
        const Circuit* circuit = find(plan, Id<Circuit>{now});
        for (std::size_t i = 0; circuit != nullptr && i < circuit->outlets.size(); ++i) {
            const auto outlet = static_cast<int>(i);
            outlets.emplace(name_on_floor(Id<Circuit>{before}, outlet),
                            name_on_floor(circuit->id, outlet));
        }
    }
    return outlets;
}

// Ids of one kind, wherever they stand; the things themselves are renamed by `renamed_in`.

void rename_ids(Plan& plan, const NewNames& names, const Person*) {
    for (Beat& beat : plan.beats) {
        decltype(beat.marks) marks;
        for (const auto& [person, change] : beat.marks) {
            Id<Person> id = person;
            rename(names, id);
            marks.emplace(id, change);
        }
        beat.marks = std::move(marks);
    }
    for (Shot& shot : plan.shots) {
        rename(names, shot.subjects);
    }
    rename_aimable(names, plan);
}

void rename_ids(Plan& plan, const NewNames& names, const Beat*) {
    for (Shot& shot : plan.shots) {
        rename(names, shot.beats);
    }
    for (Boom& boom : plan.booms) {
        rename(names, boom.beats);
    }
    for (Lamp& lamp : plan.lamps) {
        rename(names, lamp.beats);
        rename(names, lamp.aim_beat);
    }
}

void rename_ids(Plan& plan, const NewNames& names, const Camera*) {
    for (Shot& shot : plan.shots) {
        rename(names, shot.camera);
    }
    rename_aimable(names, plan);
}

void rename_ids(Plan& plan, const NewNames& names, const Shot*) {
    for (Shot& shot : plan.shots) {
        rename(names, shot.cuts_to);
    }
    for (Acceptance& acceptance : plan.accepted) {
        rename(names, acceptance.shot);
    }
}

void rename_ids(Plan& plan, const NewNames& names, const Circuit*) {
    for (Lamp& lamp : plan.lamps) {
        rename(names, lamp.circuit);
    }
    rename_mentions(names, plan);
    rename_held(plan.arrangement, outlet_names(names, plan));
}

void rename_ids(Plan& plan, const NewNames& names, const Pipe*) {
    for (Lamp& lamp : plan.lamps) {
        if (auto* hang = std::get_if<PipeHang>(&lamp.mount)) {
            rename(names, hang->pipe);
        }
    }
    rename_mentions(names, plan);
}

void rename_ids(Plan& plan, const NewNames& names, const Opening*) {
    rename_mentions(names, plan);
}
void rename_ids(Plan& plan, const NewNames& names, const Scenery*) {
    rename_aimable(names, plan);
}
void rename_ids(Plan& plan, const NewNames& names, const Boom*) {
    rename_aimable(names, plan);
}
void rename_ids(Plan& plan, const NewNames& names, const Lamp*) {
    rename_aimable(names, plan);
}

/// Equal but for the name.
template <class Thing>
bool alike(Thing before, const Thing& now) {
    before.id = now.id;
    return before == now;
}

/// Finds what was renamed in one list of the plan, and gives it and what refers to it the newer
/// name. Each name that is gone is tried with each that came, in their order.
template <class Thing>
void find_renames(Renames& renames, ThingKind kind, std::vector<Thing>& old,
                  const std::vector<Thing>& now) {
    const ThingPairs pairs = paired_by_id(old, now);
    std::vector<std::size_t> come = pairs.come;
    NewNames names;
    for (const std::size_t gone : pairs.gone) {
        const auto same = std::find_if(come.begin(), come.end(), [&](std::size_t index) {
            return alike(old[gone], now[index]);
        });
        if (same == come.end()) {
            continue;
        }
        renames.list.push_back({kind, old[gone].id.name, now[*same].id.name});
        names.emplace(old[gone].id.name, now[*same].id.name);
        old[gone].id = now[*same].id;
        come.erase(same);
    }
    if (!names.empty()) {
        rename_ids(renames.renamed, names, static_cast<const Thing*>(nullptr));
    }
}

} // namespace

Renames renames_between(const Plan& old, const Plan& now) {
    Renames renames{{}, old};
    Plan& plan = renames.renamed;
    // What refers to nothing comes first, so that what refers to it can be seen to be alike.
    find_renames(renames, ThingKind::opening, plan.room.openings, now.room.openings);
    find_renames(renames, ThingKind::pipe, plan.pipes, now.pipes);
    find_renames(renames, ThingKind::circuit, plan.circuits, now.circuits);
    find_renames(renames, ThingKind::scenery, plan.scenery, now.scenery);
    find_renames(renames, ThingKind::person, plan.people, now.people);
    find_renames(renames, ThingKind::camera, plan.cameras, now.cameras);
    find_renames(renames, ThingKind::beat, plan.beats, now.beats);
    find_renames(renames, ThingKind::boom, plan.booms, now.booms);
    find_renames(renames, ThingKind::lamp, plan.lamps, now.lamps);
    find_renames(renames, ThingKind::shot, plan.shots, now.shots);
    return renames;
}

namespace {

template <class Thing>
void give_name(Plan& plan, std::vector<Thing>& things, const Id<Thing>& id,
               const std::string& name) {
    for (Thing& thing : things) {
        if (thing.id == id) {
            thing.id.name = name;
            rename_ids(plan, {{id.name, name}}, static_cast<const Thing*>(nullptr));
            return;
        }
    }
}

} // namespace

void rename(Plan& plan, const Id<Opening>& id, const std::string& name) {
    give_name(plan, plan.room.openings, id, name);
}
void rename(Plan& plan, const Id<Pipe>& id, const std::string& name) {
    give_name(plan, plan.pipes, id, name);
}
void rename(Plan& plan, const Id<Circuit>& id, const std::string& name) {
    give_name(plan, plan.circuits, id, name);
}
void rename(Plan& plan, const Id<Scenery>& id, const std::string& name) {
    give_name(plan, plan.scenery, id, name);
}
void rename(Plan& plan, const Id<Person>& id, const std::string& name) {
    give_name(plan, plan.people, id, name);
}
void rename(Plan& plan, const Id<Camera>& id, const std::string& name) {
    give_name(plan, plan.cameras, id, name);
}
void rename(Plan& plan, const Id<Beat>& id, const std::string& name) {
    give_name(plan, plan.beats, id, name);
}
void rename(Plan& plan, const Id<Boom>& id, const std::string& name) {
    give_name(plan, plan.booms, id, name);
}
void rename(Plan& plan, const Id<Lamp>& id, const std::string& name) {
    give_name(plan, plan.lamps, id, name);
}
void rename(Plan& plan, const Id<Shot>& id, const std::string& name) {
    give_name(plan, plan.shots, id, name);
}

} // namespace throwline::plan
