#include "plan/plan.h"

#include <algorithm>

namespace throwline::plan {

namespace {

template <class Thing>
const Thing* found(const std::vector<Thing>& things, const Id<Thing>& id) {
    const auto at = std::find_if(things.begin(), things.end(),
                                 [&](const Thing& thing) { return thing.id == id; });
    return at == things.end() ? nullptr : &*at;
}

} // namespace

const Person* find(const Plan& plan, const Id<Person>& id) {
    return found(plan.people, id);
}
const Beat* find(const Plan& plan, const Id<Beat>& id) {
    return found(plan.beats, id);
}
const Camera* find(const Plan& plan, const Id<Camera>& id) {
    return found(plan.cameras, id);
}
const Shot* find(const Plan& plan, const Id<Shot>& id) {
    return found(plan.shots, id);
}
const Lamp* find(const Plan& plan, const Id<Lamp>& id) {
    return found(plan.lamps, id);
}
const Scenery* find(const Plan& plan, const Id<Scenery>& id) {
    return found(plan.scenery, id);
}
const Circuit* find(const Plan& plan, const Id<Circuit>& id) {
    return found(plan.circuits, id);
}
const Pipe* find(const Plan& plan, const Id<Pipe>& id) {
    return found(plan.pipes, id);
}
const Boom* find(const Plan& plan, const Id<Boom>& id) {
    return found(plan.booms, id);
}

bool is_lit(const Lamp& lamp, const Id<Beat>& beat) {
    return lamp.beats.empty()
           || std::find(lamp.beats.begin(), lamp.beats.end(), beat) != lamp.beats.end();
}

} // namespace throwline::plan
