#include "edit/moves.h"
#include "edit/placing.h"
#include "edit/shot_ends.h"
#include "plan/places.h"
#include "stage/moment.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// Takes things off a plan, with every mention.
class Removing {
  public:
    Removing(const Context& context, plan::Plan& plan)
        : moment_{context.plan, context.catalogue, context.now.beat, context.now.shot},
          plan_{plan} {}

    Result<void> remove(const Thing& thing);

  private:
    /// Aims and facings at a name become the places that these had.
    void look_elsewhere(const std::string& name);
    void forget(const std::string& name);
    void remove_person(const plan::Id<plan::Person>& person);
    void remove_camera(const plan::Id<plan::Camera>& camera);
    Result<void> remove_pipe(const plan::Id<plan::Pipe>& pipe);
    Result<void> remove_wall(int wall);

    stage::Moment moment_;
    plan::Plan& plan_;
};

template <class Entity>
void erase(std::vector<Entity>& entities, const std::string& name) {
    std::erase_if(entities, [&](const Entity& entity) { return entity.id.name == name; });
}

void Removing::look_elsewhere(const std::string& name) {
    const std::optional<Vec3> place = stage::look_place(moment_, name);
    const auto turn = [&](plan::Aim& aim) {
        const auto* named = std::get_if<plan::ThingName>(&aim);
        if (named != nullptr && named->name == name) {
            aim = place ? plan::Aim{*place} : plan::Aim{};
        }
    };
    for (plan::Shot& shot : plan_.shots) {
        turn(shot.aim);
    }
    for (plan::Lamp& lamp : plan_.lamps) {
        turn(lamp.aim);
    }
    for (plan::Beat& beat : plan_.beats) {
        for (auto& [person, change] : beat.marks) {
            auto* mark = std::get_if<plan::Mark>(&change);
            const auto* named =
                mark == nullptr ? nullptr : std::get_if<plan::ThingName>(&mark->faces);
            if (named != nullptr && named->name == name) {
                mark->faces = place ? plan::Facing{floor_of(*place)} : plan::Facing{Angle{}};
            }
        }
    }
}

void Removing::forget(const std::string& name) {
    look_elsewhere(name);
    std::erase_if(plan_.accepted, [&](const plan::Acceptance& acceptance) {
        return std::find(acceptance.things.begin(), acceptance.things.end(), name)
               != acceptance.things.end();
    });
    std::erase(plan_.arrangement.locked, name);
    std::erase(plan_.arrangement.hidden, name);
    for (plan::Group& group : plan_.arrangement.groups) {
        std::erase(group.things, name);
    }
    std::erase_if(plan_.arrangement.groups,
                  [](const plan::Group& group) { return group.things.size() < 2; });
}

void Removing::remove_person(const plan::Id<plan::Person>& person) {
    for (plan::Beat& beat : plan_.beats) {
        beat.marks.erase(person);
    }
    for (plan::Shot& shot : plan_.shots) {
        std::erase(shot.subjects, person);
    }
    erase(plan_.people, person.name);
}

void Removing::remove_camera(const plan::Id<plan::Camera>& camera) {
    std::vector<plan::Id<plan::Shot>> shots;
    for (const plan::Shot& shot : plan_.shots) {
        if (shot.camera == camera) {
            shots.push_back(shot.id);
        }
    }
    for (const plan::Id<plan::Shot>& shot : shots) {
        end_shot(plan_, shot);
    }
    erase(plan_.cameras, camera.name);
}

Result<void> Removing::remove_pipe(const plan::Id<plan::Pipe>& pipe) {
    for (const plan::Lamp& lamp : plan_.lamps) {
        const auto* hang = std::get_if<plan::PipeHang>(&lamp.mount);
        if (hang != nullptr && hang->pipe == pipe) {
            return failure(
                fmt::format("{} hangs from {}; hang it elsewhere first", lamp.id.name, pipe.name));
        }
    }
    erase(plan_.pipes, pipe.name);
    return {};
}

/// The wall's first corner goes, so that it and the wall before it become one.
Result<void> Removing::remove_wall(int wall) {
    plan::Room& room = plan_.room;
    if (room.outline.size() <= 3) {
        return failure("a room has three walls or more; draw the room anew instead");
    }
    const int last = static_cast<int>(room.outline.size()) - 1;
    const int before = wall == 0 ? last : wall - 1;
    for (const plan::Opening& opening : room.openings) {
        if (opening.wall == wall || opening.wall == before) {
            return failure(fmt::format("{} is in that wall or the one before it; take it away "
                                       "first",
                                       opening.id.name));
        }
    }
    for (const plan::Lamp& lamp : plan_.lamps) {
        if (std::holds_alternative<plan::WallMount>(lamp.mount)) {
            return failure(
                fmt::format("{} is clamped to a wall; mount it otherwise first", lamp.id.name));
        }
    }
    room.outline.erase(room.outline.begin() + wall);
    room.walls.erase(room.walls.begin() + wall);
    for (plan::Opening& opening : room.openings) {
        opening.wall -= opening.wall > wall ? 1 : 0;
    }
    return check_walls(plan_);
}

Result<void> Removing::remove(const Thing& thing) {
    if (!exists(plan_, thing)) {
        return failure(fmt::format("{} is not there any more", name_of(thing)));
    }
    forget(name_of(thing));
    switch (thing.kind) {
    case Kind::wall:
        return remove_wall(thing.index);
    case Kind::opening:
        erase(plan_.room.openings, thing.name);
        return {};
    case Kind::pipe:
        return remove_pipe({thing.name});
    case Kind::scenery:
        erase(plan_.scenery, thing.name);
        return {};
    case Kind::person:
        remove_person({thing.name});
        return {};
    case Kind::camera:
        remove_camera({thing.name});
        return {};
    case Kind::lamp:
        erase(plan_.lamps, thing.name);
        return {};
    case Kind::boom:
        erase(plan_.booms, thing.name);
        return {};
    case Kind::outlet: {
        auto& outlets = find(plan_, plan::Id<plan::Circuit>{thing.name})->outlets;
        outlets.erase(outlets.begin() + thing.index);
        return {};
    }
    }
    return {};
}

/// From this beat on; their mark in later beats, if any, brings them back.
Result<void> send_off(plan::Plan& plan, const Context& context, const Thing& thing) {
    plan::Beat* beat = find(plan, context.now.beat);
    if (thing.kind != Kind::person || beat == nullptr) {
        return failure("only people come and go between beats");
    }
    beat->marks.insert_or_assign(plan::Id<plan::Person>{thing.name}, plan::OffFloor{});
    return {};
}

} // namespace

void end_shot(plan::Plan& plan, const plan::Id<plan::Shot>& id) {
    for (plan::Shot& shot : plan.shots) {
        std::erase(shot.cuts_to, id);
    }
    std::erase_if(plan.accepted,
                  [&](const plan::Acceptance& acceptance) { return acceptance.shot == id; });
    std::erase_if(plan.shots, [&](const plan::Shot& shot) { return shot.id == id; });
}

Result<Step> removed(const Context& context, std::span<const Thing> things, bool from_beat_only) {
    if (const auto movable = check_movable(context.plan, things); !movable) {
        return tl::unexpected{movable.error()};
    }
    Step step{fmt::format("{} {}", from_beat_only ? "Send off" : "Take away", words_for(things)),
              context.plan,
              {}};
    // The last of walls and outlets first, so that the numbers of the others still hold; pipes
    // after the lamps that may hang from them.
    std::vector<Thing> order{things.begin(), things.end()};
    std::stable_sort(order.begin(), order.end(), [](const Thing& a, const Thing& b) {
        return std::pair{a.kind == Kind::pipe, -a.index}
               < std::pair{b.kind == Kind::pipe, -b.index};
    });
    Removing removing{context, step.plan};
    for (const Thing& thing : order) {
        const auto done =
            from_beat_only ? send_off(step.plan, context, thing) : removing.remove(thing);
        if (!done) {
            return tl::unexpected{done.error()};
        }
    }
    return step;
}

} // namespace throwline::edit
