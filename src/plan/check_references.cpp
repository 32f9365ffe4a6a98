#include "plan/check_names.h"
#include "plan/check_plan.h"

#include "base/utf8.h"
#include "plan/places.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <set>

namespace throwline::plan {

namespace {

/// Everything that a plan's names can be names of.
struct PlanNames {
    explicit PlanNames(const Plan& plan);

    KnownNames people;
    KnownNames beats;
    KnownNames cameras;
    KnownNames shots;
    KnownNames pipes;
    KnownNames circuits;
    /// Places of the beats in the running order.
    std::map<std::string, std::size_t> beat_order;
    KnownNames aimable{"person, camera, lamp, boom or piece of scenery"};
};

template <class Thing>
void add_all(KnownNames& names, const std::vector<Thing>& things) {
    for (const Thing& thing : things) {
        names.add(thing.id.name);
    }
}

PlanNames::PlanNames(const Plan& plan)
    : people{known_ids("person", plan.people)}, beats{known_ids("beat", plan.beats)},
      cameras{known_ids("camera", plan.cameras)}, shots{known_ids("shot", plan.shots)},
      pipes{known_ids("pipe", plan.pipes)}, circuits{known_ids("circuit", plan.circuits)} {
    for (std::size_t i = 0; i < plan.beats.size(); ++i) {
        beat_order.try_emplace(plan.beats[i].id.name, i);
    }
    add_all(aimable, plan.people);
    add_all(aimable, plan.cameras);
    add_all(aimable, plan.lamps);
    add_all(aimable, plan.scenery);
    add_all(aimable, plan.booms);
}

/// A thing that somebody or something is turned to; it cannot be `self`.
void check_target(Reading& reading, const Value& value, const ThingName& target,
                  const std::string& self, const PlanNames& names) {
    names.aimable.expect(reading, value, target.name);
    if (!self.empty() && target.name == self) {
        reading.wrong(value, fmt::format("{} cannot be turned to itself", in_quotes(self)));
    }
}

template <class Thing>
void check_ids(Reading& reading, const Value& list, const std::vector<Id<Thing>>& ids,
               const KnownNames& names) {
    for (std::size_t i = 0; i < ids.size(); ++i) {
        names.expect(reading, list.item(i), ids[i].name);
    }
}

template <class Thing>
void check_no_repeats(Reading& reading, const Value& list, const std::vector<Id<Thing>>& ids) {
    std::set<std::string> seen;
    for (std::size_t i = 0; i < ids.size(); ++i) {
        if (!ids[i].empty() && !seen.insert(ids[i].name).second) {
            reading.wrong(list.item(i), fmt::format("{} is listed twice", in_quotes(ids[i].name)));
        }
    }
}

/// Beats of a shot or boom are there, each once, and in the order of the plan.
void check_beats(Reading& reading, const Value& list, const std::vector<Id<Beat>>& ids,
                 const PlanNames& names) {
    check_ids(reading, list, ids, names.beats);
    check_no_repeats(reading, list, ids);
    auto before = names.beat_order.end();
    for (std::size_t i = 0; i < ids.size(); ++i) {
        const auto beat = names.beat_order.find(ids[i].name);
        if (beat == names.beat_order.end()) {
            continue;
        }
        if (before != names.beat_order.end() && beat->second < before->second) {
            reading.wrong(list.item(i),
                          fmt::format("beat {} comes before beat {} in the plan",
                                      in_quotes(beat->first), in_quotes(before->first)));
        }
        before = beat;
    }
}

/// The person whose mark it is, by the key that it stands under.
void check_whose(Reading& reading, const Value& marks, const std::string& person,
                 const PlanNames& names) {
    if (names.people.has(person)) {
        return;
    }
    std::string message = reading.is_full() ? std::string{} : names.people.complaint(person);
    const auto& members = marks.node->members;
    const auto member =
        std::find_if(members.begin(), members.end(),
                     [&](const catalogue::JsonMember& each) { return each.key == person; });
    if (member != members.end()) {
        reading.wrong_key(marks, *member, std::move(message));
    } else {
        reading.wrong(marks, std::move(message));
    }
}

void check_beat(Reading& reading, const Value& value, const Beat& beat, const PlanNames& names) {
    const Value marks = value.at("marks");
    for (const auto& [person, change] : beat.marks) {
        check_whose(reading, marks, person.name, names);
        const auto* mark = std::get_if<Mark>(&change);
        const auto* thing = mark == nullptr ? nullptr : std::get_if<ThingName>(&mark->faces);
        if (thing != nullptr) {
            check_target(reading, marks.at(person.name).at("faces"), *thing, person.name, names);
        }
    }
}

void check_shot(Reading& reading, const Value& value, const Shot& shot, const PlanNames& names) {
    check_beats(reading, value.at("beats"), shot.beats, names);
    names.cameras.expect(reading, value.at("camera"), shot.camera.name);
    if (const auto* thing = std::get_if<ThingName>(&shot.aim)) {
        check_target(reading, value.at("aim"), *thing, shot.camera.name, names);
    }
    check_ids(reading, value.at("subjects"), shot.subjects, names.people);
    check_no_repeats(reading, value.at("subjects"), shot.subjects);
    check_ids(reading, value.at("cuts_to"), shot.cuts_to, names.shots);
    check_no_repeats(reading, value.at("cuts_to"), shot.cuts_to);
    for (std::size_t i = 0; i < shot.cuts_to.size(); ++i) {
        if (!shot.id.empty() && shot.cuts_to[i] == shot.id) {
            reading.wrong(value.at("cuts_to").item(i), "a shot cannot be cut to itself");
        }
    }
}

void check_grid_position(Reading& reading, const Value& value, const std::string& position,
                         const Plan& plan) {
    if (!plan.grid) {
        reading.wrong(value, "the plan has no grid to hang from");
    } else if (!grid_point(*plan.grid, position)) {
        reading.wrong(value, fmt::format("{} is no place on the grid; it has A1 to {}",
                                         in_quotes(position),
                                         grid_name(plan.grid->columns - 1, plan.grid->rows - 1)));
    }
}

void check_wall(Reading& reading, const Value& value, int wall, const Plan& plan,
                const Value& root) {
    const int walls = static_cast<int>(plan.room.outline.size());
    if (!root.member("room")) {
        reading.wrong(value, "the plan has no room, and so no walls");
    } else if (wall >= walls && walls > 0) {
        reading.wrong(value, fmt::format("there is no wall {}; the room has walls 1 to {}",
                                         number_of_wall(wall), walls));
    }
}

void check_lamp(Reading& reading, const Value& value, const Lamp& lamp, const Plan& plan,
                const Value& root, const PlanNames& names) {
    if (const auto* hang = std::get_if<GridHang>(&lamp.mount)) {
        if (!hang->position.empty() && !reading.is_spoilt(root.at("grid"))) {
            check_grid_position(reading, value.at("hang"), hang->position, plan);
        }
    } else if (const auto* pipe = std::get_if<PipeHang>(&lamp.mount)) {
        names.pipes.expect(reading, value.at("pipe"), pipe->pipe.name);
    } else if (const auto* mount = std::get_if<WallMount>(&lamp.mount)) {
        check_wall(reading, value.at("wall"), mount->wall, plan, root);
    }
    if (const auto* thing = std::get_if<ThingName>(&lamp.aim)) {
        check_target(reading, value.at("aim"), *thing, lamp.id.name, names);
    }
    names.beats.expect(reading, value.at("aim_beat"), lamp.aim_beat.name);
    check_beats(reading, value.at("beats"), lamp.beats, names);
    names.circuits.expect(reading, value.at("circuit"), lamp.circuit.name);
}

} // namespace

void check_references(Reading& reading, const Value& root, const Plan& plan) {
    const PlanNames names{plan};
    each(root, "beats", plan.beats,
         [&](const Value& value, const Beat& beat) { check_beat(reading, value, beat, names); });
    each(root, "shots", plan.shots,
         [&](const Value& value, const Shot& shot) { check_shot(reading, value, shot, names); });
    each(root, "booms", plan.booms, [&](const Value& value, const Boom& boom) {
        check_beats(reading, value.at("beats"), boom.beats, names);
    });
    each(root, "lamps", plan.lamps, [&](const Value& value, const Lamp& lamp) {
        check_lamp(reading, value, lamp, plan, root, names);
    });
    each(root.at("room"), "openings", plan.room.openings,
         [&](const Value& value, const Opening& opening) {
             check_wall(reading, value.at("wall"), opening.wall, plan, root);
         });
    each(root, "accepted", plan.accepted, [&](const Value& value, const Acceptance& acceptance) {
        names.shots.expect(reading, value.at("shot"), acceptance.shot.name);
    });
}

} // namespace throwline::plan
