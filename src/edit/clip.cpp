#include "edit/clip.h"

#include "plan/places.h"
#include "plan/read_plan.h"
#include "stage/moment.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace throwline::edit {

namespace {

bool travels(Kind kind) {
    switch (kind) {
    case Kind::pipe:
    case Kind::scenery:
    case Kind::person:
    case Kind::camera:
    case Kind::lamp:
    case Kind::boom:
        return true;
    case Kind::wall:
    case Kind::opening:
    case Kind::outlet:
        return false;
    }
    return false;
}

/// What is being packed, and where everything stands now.
struct Packing {
    const Context& context;
    stage::Moment moment;
    std::set<std::string> names;
    plan::Plan packed;
};

/// Names that stay behind become the places they stand for.
plan::Aim packed_aim(const Packing& packing, const plan::Aim& aim) {
    const auto* named = std::get_if<plan::ThingName>(&aim);
    if (named == nullptr || packing.names.contains(named->name)) {
        return aim;
    }
    const std::optional<Vec3> place = stage::aim_point(packing.moment, aim);
    return place ? plan::Aim{*place} : plan::Aim{};
}

void pack_person(Packing& packing, const plan::Person& person) {
    const auto marks = plan::marks_at(packing.context.plan, packing.context.now.beat);
    const auto at = marks.find(person.id);
    if (at == marks.end()) {
        return;
    }
    plan::Mark mark = at->second;
    mark.path.clear();
    const auto* named = std::get_if<plan::ThingName>(&mark.faces);
    if (named != nullptr && !packing.names.contains(named->name)) {
        mark.faces = stage::facing_of(packing.moment, mark);
    }
    packing.packed.people.push_back(person);
    packing.packed.beats.front().marks.emplace(person.id, mark);
}

void pack_camera(Packing& packing, const plan::Camera& camera) {
    plan::Camera packed = camera;
    const plan::Plan& plan = packing.context.plan;
    if (const auto place =
            plan::camera_place(plan, camera, packing.context.now.beat, packing.context.now.shot)) {
        packed.home = place->at;
        packed.eye_height = place->lens_height;
    }
    packing.packed.cameras.push_back(std::move(packed));
}

void pack_lamp(Packing& packing, const plan::Lamp& lamp) {
    plan::Lamp packed = lamp;
    packed.aim = packed_aim(packing, lamp.aim);
    packed.aim_beat = {};
    packed.beats.clear();
    packed.circuit = {};
    packing.packed.lamps.push_back(std::move(packed));
}

/// The pipes that packed lamps hang from come along, so that the text can be read by itself.
void pack_rig(Packing& packing) {
    const plan::Plan& plan = packing.context.plan;
    packing.packed.grid = plan.grid;
    for (const plan::Pipe& pipe : plan.pipes) {
        const bool holds = std::any_of(
            packing.packed.lamps.begin(), packing.packed.lamps.end(), [&](const plan::Lamp& lamp) {
                const auto* hang = std::get_if<plan::PipeHang>(&lamp.mount);
                return hang != nullptr && hang->pipe == pipe.id;
            });
        if (holds || packing.names.contains(pipe.id.name)) {
            packing.packed.pipes.push_back(pipe);
        }
    }
    const bool on_wall = std::any_of(
        packing.packed.lamps.begin(), packing.packed.lamps.end(),
        [](const plan::Lamp& lamp) { return std::holds_alternative<plan::WallMount>(lamp.mount); });
    if (on_wall) {
        packing.packed.room = plan.room;
        packing.packed.room.openings.clear();
    }
}

void pack(Packing& packing, const Thing& thing) {
    const plan::Plan& plan = packing.context.plan;
    switch (thing.kind) {
    case Kind::scenery:
        packing.packed.scenery.push_back(*plan::find(plan, plan::Id<plan::Scenery>{thing.name}));
        return;
    case Kind::person:
        pack_person(packing, *plan::find(plan, plan::Id<plan::Person>{thing.name}));
        return;
    case Kind::camera:
        pack_camera(packing, *plan::find(plan, plan::Id<plan::Camera>{thing.name}));
        return;
    case Kind::lamp:
        pack_lamp(packing, *plan::find(plan, plan::Id<plan::Lamp>{thing.name}));
        return;
    case Kind::boom:
        packing.packed.booms.push_back(*plan::find(plan, plan::Id<plan::Boom>{thing.name}));
        packing.packed.booms.back().beats.clear();
        return;
    case Kind::pipe:
    case Kind::wall:
    case Kind::opening:
    case Kind::outlet:
        return;
    }
}

} // namespace

std::vector<Thing> travelling(const Context& context, std::span<const Thing> things) {
    std::vector<Thing> found;
    std::copy_if(things.begin(), things.end(), std::back_inserter(found), [&](const Thing& thing) {
        return travels(thing.kind) && exists(context.plan, thing);
    });
    return found;
}

std::string clipped(const Context& context, std::span<const Thing> things) {
    Packing packing{
        context, {context.plan, context.catalogue, context.now.beat, context.now.shot}, {}, {}};
    for (const Thing& thing : travelling(context, things)) {
        packing.names.insert(thing.name);
    }
    if (packing.names.empty()) {
        return {};
    }
    packing.packed.title = context.plan.title;
    packing.packed.units = context.plan.units;
    packing.packed.beats.push_back({{"1"}, {}, {}, {}});
    for (const Thing& thing : things) {
        if (packing.names.contains(thing.name)) {
            pack(packing, thing);
        }
    }
    pack_rig(packing);
    return plan::written(packing.packed);
}

} // namespace throwline::edit
