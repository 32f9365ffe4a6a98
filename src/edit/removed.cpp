#include "edit/moves.h"
#include "edit/placing.h"
#include "edit/shot_ends.h"
#include "plan/arrangement.h"
#include "plan/places.h"
#include "stage/moment.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace throwline::edit {

namespace {

/// Takes things off a plan, with every mention.
class Removing {
  public:
    Removing(const Context& context, plan::Plan& plan)
        : moment_{context.plan, context.catalogue, context.now.beat, context.now.shot},
          plan_{plan} {}

    Result<void> remove(const Thing& thing);
    /// What is left that names what is gone.
    void forget();

  private:
    /// Aims and facings at a name become the places that these had when they were looked at.
    void look_elsewhere(const std::string& name);
    void turn_marks(const std::string& name);
    void remove_person(const plan::Id<plan::Person>& person);
    void remove_camera(const plan::Id<plan::Camera>& camera);
    Result<void> remove_pipe(const plan::Id<plan::Pipe>& pipe);
    Result<void> remove_wall(int wall);
    void remove_outlet(const Thing& outlet);

    /// Before anything was removed.
    stage::Moment moment_;
    plan::Plan& plan_;
    std::vector<std::string> gone_;
};

template <class Entity>
void erase(std::vector<Entity>& entities, const std::string& name) {
    std::erase_if(entities, [&](const Entity& entity) { return entity.id.name == name; });
}

template <class... Kinds>
bool is_at(const std::variant<Kinds...>& target, const std::string& name) {
    const auto* named = std::get_if<plan::ThingName>(&target);
    return named != nullptr && named->name == name;
}

plan::Aim aim_at(const std::optional<Vec3>& place) {
    return place ? plan::Aim{*place} : plan::Aim{};
}

void Removing::turn_marks(const std::string& name) {
    for (plan::Beat& beat : plan_.beats) {
        const stage::Moment then{moment_.plan, moment_.catalogue, beat.id, {}};
        for (auto& [person, change] : beat.marks) {
            auto* mark = std::get_if<plan::Mark>(&change);
            if (mark == nullptr || !is_at(mark->faces, name)) {
                continue;
            }
            const std::optional<Vec2> place = stage::floor_place(then, name);
            mark->faces = place ? plan::Facing{*place} : plan::Facing{Angle{}};
        }
    }
}

void Removing::look_elsewhere(const std::string& name) {
    for (plan::Shot& shot : plan_.shots) {
        if (is_at(shot.aim, name)) {
            const stage::Moment then{moment_.plan, moment_.catalogue, shot.beats.front(), shot.id};
            shot.aim = aim_at(stage::look_place(then, name));
        }
    }
    for (plan::Lamp& lamp : plan_.lamps) {
        if (is_at(lamp.aim, name)) {
            lamp.aim = aim_at(stage::lamp_target(moment_, lamp));
        }
    }
    turn_marks(name);
}

void Removing::forget() {
    const std::vector<std::string> left = plan::names_on_floor(plan_);
    // A pipe may have had the name of a piece of scenery that stays.
    std::erase_if(gone_, [&](const std::string& name) {
        return std::find(left.begin(), left.end(), name) != left.end();
    });
    const auto is_gone = [&](const std::string& name) {
        return std::find(gone_.begin(), gone_.end(), name) != gone_.end();
    };
    std::erase_if(plan_.accepted, [&](const plan::Acceptance& acceptance) {
        return std::any_of(acceptance.things.begin(), acceptance.things.end(), is_gone);
    });
    plan::forget_gone(plan_);
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

/// Those behind one that is gone move up; nothing is held of that one any more.
void renumber(plan::Arrangement& arrangement, const Thing& gone, int count) {
    std::map<std::string, std::string> names{{name_of(gone), ""}};
    for (int i = gone.index + 1; i < count; ++i) {
        names.emplace(name_of(Thing{gone.kind, gone.name, i}),
                      name_of(Thing{gone.kind, gone.name, i - 1}));
    }
    plan::rename_held(arrangement, names);
}

/// The wall's first corner goes, so that it and the wall before it become one.
Result<void> Removing::remove_wall(int wall) {
    plan::Room& room = plan_.room;
    const int walls = static_cast<int>(room.outline.size());
    if (walls <= 3) {
        return failure("a room has three walls or more; draw the room anew instead");
    }
    if (auto beside = check_unlocked_walls(plan_, {wall - 1}); !beside) {
        return beside;
    }
    const int before = wall == 0 ? walls - 1 : wall - 1;
    const auto becomes_one = [&](int other) { return other == wall || other == before; };
    for (plan::Opening& opening : room.openings) {
        if (becomes_one(opening.wall)) {
            return failure(fmt::format("{} is in that wall or the one before it; take it away "
                                       "first",
                                       opening.id.name));
        }
        opening.wall -= opening.wall > wall ? 1 : 0;
    }
    for (plan::Lamp& lamp : plan_.lamps) {
        auto* mount = std::get_if<plan::WallMount>(&lamp.mount);
        if (mount != nullptr && becomes_one(mount->wall)) {
            return failure(fmt::format("{} is clamped to that wall or the one before it; mount it "
                                       "otherwise first",
                                       lamp.id.name));
        }
        if (mount != nullptr) {
            mount->wall -= mount->wall > wall ? 1 : 0;
        }
    }
    room.outline.erase(room.outline.begin() + wall);
    room.walls.erase(room.walls.begin() + wall);
    renumber(plan_.arrangement, {Kind::wall, {}, wall}, walls);
    return check_walls(plan_);
}

void Removing::remove_outlet(const Thing& outlet) {
    auto& outlets = find(plan_, plan::Id<plan::Circuit>{outlet.name})->outlets;
    renumber(plan_.arrangement, outlet, static_cast<int>(outlets.size()));
    outlets.erase(outlets.begin() + outlet.index);
}

Result<void> Removing::remove(const Thing& thing) {
    if (!exists(plan_, thing)) {
        return failure(fmt::format("{} is not there any more", name_of(thing)));
    }
    switch (thing.kind) {
    case Kind::wall:
        return remove_wall(thing.index);
    case Kind::outlet:
        remove_outlet(thing);
        return {};
    case Kind::pipe:
        gone_.push_back(thing.name);
        return remove_pipe({thing.name});
    case Kind::opening:
        gone_.push_back(thing.name);
        erase(plan_.room.openings, thing.name);
        return {};
    case Kind::scenery:
    case Kind::person:
    case Kind::camera:
    case Kind::lamp:
    case Kind::boom:
        break;
    }
    // No two of these share a name.
    gone_.push_back(thing.name);
    look_elsewhere(thing.name);
    erase(plan_.scenery, thing.name);
    erase(plan_.lamps, thing.name);
    erase(plan_.booms, thing.name);
    remove_camera({thing.name});
    remove_person({thing.name});
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
    removing.forget();
    return step;
}

} // namespace throwline::edit
