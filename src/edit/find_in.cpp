#include "edit/placing.h"
#include "plan/places.h"

namespace throwline::edit {

namespace {

template <class Entity>
Entity* find_in(std::vector<Entity>& entities, const plan::Id<Entity>& id) {
    for (Entity& entity : entities) {
        if (entity.id == id) {
            return &entity;
        }
    }
    return nullptr;
}

} // namespace

plan::Scenery* find(plan::Plan& plan, const plan::Id<plan::Scenery>& id) {
    return find_in(plan.scenery, id);
}
plan::Person* find(plan::Plan& plan, const plan::Id<plan::Person>& id) {
    return find_in(plan.people, id);
}
plan::Camera* find(plan::Plan& plan, const plan::Id<plan::Camera>& id) {
    return find_in(plan.cameras, id);
}
plan::Lamp* find(plan::Plan& plan, const plan::Id<plan::Lamp>& id) {
    return find_in(plan.lamps, id);
}
plan::Boom* find(plan::Plan& plan, const plan::Id<plan::Boom>& id) {
    return find_in(plan.booms, id);
}
plan::Pipe* find(plan::Plan& plan, const plan::Id<plan::Pipe>& id) {
    return find_in(plan.pipes, id);
}
plan::Circuit* find(plan::Plan& plan, const plan::Id<plan::Circuit>& id) {
    return find_in(plan.circuits, id);
}
plan::Beat* find(plan::Plan& plan, const plan::Id<plan::Beat>& id) {
    return find_in(plan.beats, id);
}
plan::Shot* find(plan::Plan& plan, const plan::Id<plan::Shot>& id) {
    return find_in(plan.shots, id);
}
plan::Opening* find(plan::Plan& plan, const plan::Id<plan::Opening>& id) {
    return find_in(plan.room.openings, id);
}

plan::Mark* own_mark(plan::Plan& plan, const plan::Id<plan::Person>& person,
                     const plan::Id<plan::Beat>& beat) {
    plan::Beat* in = find(plan, beat);
    if (in == nullptr) {
        return nullptr;
    }
    const auto found = in->marks.find(person);
    if (found != in->marks.end()) {
        return std::get_if<plan::Mark>(&found->second);
    }
    const auto marks = plan::marks_at(plan, beat);
    const auto carried = marks.find(person);
    if (carried == marks.end()) {
        return nullptr;
    }
    plan::Mark mark = carried->second;
    mark.path.clear();
    return std::get_if<plan::Mark>(&in->marks.emplace(person, mark).first->second);
}

} // namespace throwline::edit
