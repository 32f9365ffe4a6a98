#include "stage/stage.h"

#include "stage/raising.h"

#include <algorithm>

namespace throwline::stage {

namespace {

template <class Placed, class Wanted>
const Placed* find_in(const std::vector<Placed>& things, const Wanted& is_wanted) {
    const auto at = std::find_if(things.begin(), things.end(), is_wanted);
    return at == things.end() ? nullptr : &*at;
}

/// Middle of the box around everything that belongs to an owner.
std::optional<Vec3> middle_of(const Stage& stage, int owner) {
    Vec3 low = Vec3::Constant(std::numeric_limits<double>::max());
    Vec3 high = -low;
    for (const Solid& solid : stage.solids) {
        if (solid.owner_index != owner) {
            continue;
        }
        for (const Vec3& vertex : solid.mesh.vertices) {
            low = low.cwiseMin(vertex);
            high = high.cwiseMax(vertex);
        }
    }
    return (low.array() <= high.array()).all() ? std::optional{Vec3{(low + high) / 2.0}}
                                               : std::nullopt;
}

} // namespace

int Raising::owner(OwnerKind kind, std::string name) {
    stage.owners.push_back({kind, std::move(name)});
    return static_cast<int>(stage.owners.size()) - 1;
}

void Raising::add(int owner, Part part, Mesh mesh, const Surface& surface) {
    if (mesh.triangles.empty()) {
        return;
    }
    const Owner& whose = stage.owners[static_cast<std::size_t>(owner)];
    stage.solids.push_back({whose.kind, whose.name, owner, part, std::move(mesh),
                            surface.reflectance, surface.dressed});
}

double Raising::reflectance(const std::string& finish, double fallback) const {
    const catalogue::Finish* found = finish.empty() ? nullptr : moment.catalogue.finish(finish);
    return found == nullptr ? fallback : found->reflectance;
}

const Figure* Stage::figure(const plan::Id<plan::Person>& person) const {
    return find_in(figures, [&](const Figure& figure) { return figure.person == person; });
}

const PlacedCamera* Stage::camera(const plan::Id<plan::Camera>& camera) const {
    return find_in(cameras, [&](const PlacedCamera& placed) { return placed.camera == camera; });
}

const PlacedLamp* Stage::lamp(const plan::Id<plan::Lamp>& lamp) const {
    return find_in(lamps, [&](const PlacedLamp& placed) { return placed.lamp == lamp; });
}

Stage raise_without_rays(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
                         const plan::Id<plan::Beat>& beat, const plan::Id<plan::Shot>& shot) {
    Stage stage;
    stage.beat = beat;
    stage.shot = shot;
    const Moment moment{plan, catalogue, beat, shot};
    Raising raising{moment, stage};
    raise_room(raising);
    raise_scenery(raising);
    raise_people(raising);
    raise_cameras(raising);
    raise_lamps(raising);
    raise_booms(raising);
    return stage;
}

Stage raise(const plan::Plan& plan, const catalogue::Catalogue& catalogue,
            const plan::Id<plan::Beat>& beat, const plan::Id<plan::Shot>& shot) {
    Stage stage = raise_without_rays(plan, catalogue, beat, shot);
    stage.rays = std::make_shared<const RayScene>(stage.solids);
    return stage;
}

std::optional<Vec3> look_point(const Stage& stage, const std::string& name) {
    if (const Figure* figure = stage.figure({name})) {
        return figure->face;
    }
    if (const PlacedCamera* camera = stage.camera({name})) {
        return camera->pose.lens;
    }
    if (const PlacedLamp* lamp = stage.lamp({name})) {
        return lamp->point;
    }
    for (const PlacedBoom& boom : stage.booms) {
        if (boom.boom.name == name) {
            return boom.microphone;
        }
    }
    for (const PlacedScenery& scenery : stage.scenery) {
        if (scenery.scenery.name == name && scenery.outline.size() >= 3) {
            return raised(centroid(scenery.outline), (scenery.bottom_z_m + scenery.top_z_m) / 2.0);
        }
    }
    const Owner* owner =
        find_in(stage.owners, [&](const Owner& whose) { return whose.name == name; });
    return owner == nullptr ? std::nullopt
                            : middle_of(stage, static_cast<int>(owner - stage.owners.data()));
}

} // namespace throwline::stage
