#include "edit/thing.h"

#include "plan/arrangement.h"
#include "plan/places.h"
#include "stage/moment.h"

namespace throwline::edit {

namespace {

template <class Entity>
bool has(const std::vector<Entity>& entities, const std::string& name) {
    for (const Entity& entity : entities) {
        if (entity.id.name == name) {
            return true;
        }
    }
    return false;
}

bool has_index(std::size_t count, int index) {
    return index >= 0 && static_cast<std::size_t>(index) < count;
}

template <class Entity>
void add_all(std::vector<Thing>& things, Kind kind, const std::vector<Entity>& entities) {
    for (const Entity& entity : entities) {
        things.push_back({kind, entity.id.name, 0});
    }
}

void add_moving(std::vector<Thing>& things, const Context& context) {
    const plan::Plan& plan = context.plan;
    const auto marks = plan::marks_at(plan, context.now.beat);
    for (const plan::Person& person : plan.people) {
        if (marks.contains(person.id)) {
            things.push_back({Kind::person, person.id.name, 0});
        }
    }
    for (const plan::Camera& camera : plan.cameras) {
        if (plan::camera_place(plan, camera, context.now.beat, context.now.shot)) {
            things.push_back({Kind::camera, camera.id.name, 0});
        }
    }
    for (const plan::Boom& boom : plan.booms) {
        if (stage::is_on_floor(boom, context.now.beat)) {
            things.push_back({Kind::boom, boom.id.name, 0});
        }
    }
}

} // namespace

std::string_view name_of(Kind kind) {
    switch (kind) {
    case Kind::wall:
        return "wall";
    case Kind::opening:
        return "opening";
    case Kind::pipe:
        return "pipe";
    case Kind::scenery:
        return "scenery";
    case Kind::person:
        return "person";
    case Kind::camera:
        return "camera";
    case Kind::lamp:
        return "lamp";
    case Kind::boom:
        return "boom";
    case Kind::outlet:
        return "outlet";
    }
    return "";
}

std::string name_of(const Thing& thing) {
    switch (thing.kind) {
    case Kind::wall:
        return plan::name_on_floor(thing.index);
    case Kind::outlet:
        return plan::name_on_floor(plan::Id<plan::Circuit>{thing.name}, thing.index);
    case Kind::opening:
    case Kind::pipe:
    case Kind::scenery:
    case Kind::person:
    case Kind::camera:
    case Kind::lamp:
    case Kind::boom:
        return thing.name;
    }
    return thing.name;
}

std::vector<Thing> things_on_floor(const Context& context) {
    const plan::Plan& plan = context.plan;
    std::vector<Thing> things;
    for (std::size_t i = 0; i < plan.room.outline.size(); ++i) {
        things.push_back({Kind::wall, {}, static_cast<int>(i)});
    }
    add_all(things, Kind::opening, plan.room.openings);
    for (const plan::Circuit& circuit : plan.circuits) {
        for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
            things.push_back({Kind::outlet, circuit.id.name, static_cast<int>(i)});
        }
    }
    add_all(things, Kind::pipe, plan.pipes);
    add_all(things, Kind::scenery, plan.scenery);
    add_moving(things, context);
    add_all(things, Kind::lamp, plan.lamps);
    return things;
}

bool exists(const plan::Plan& plan, const Thing& thing) {
    switch (thing.kind) {
    case Kind::wall:
        return has_index(plan.room.outline.size(), thing.index);
    case Kind::opening:
        return has(plan.room.openings, thing.name);
    case Kind::pipe:
        return has(plan.pipes, thing.name);
    case Kind::scenery:
        return has(plan.scenery, thing.name);
    case Kind::person:
        return has(plan.people, thing.name);
    case Kind::camera:
        return has(plan.cameras, thing.name);
    case Kind::lamp:
        return has(plan.lamps, thing.name);
    case Kind::boom:
        return has(plan.booms, thing.name);
    case Kind::outlet: {
        const plan::Circuit* circuit = plan::find(plan, plan::Id<plan::Circuit>{thing.name});
        return circuit != nullptr && has_index(circuit->outlets.size(), thing.index);
    }
    }
    return false;
}

} // namespace throwline::edit
