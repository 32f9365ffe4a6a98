#include "edit/new_names.h"
#include "edit/put_parts.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>

namespace throwline::edit {

namespace {

/// The name that most of some things have; empty when there are none.
template <class Entity, class Name>
std::string most_used(const std::vector<Entity>& entities, const Name& name) {
    std::map<std::string, int> counts;
    std::string most;
    for (const Entity& entity : entities) {
        const std::string& used = name(entity);
        if (++counts[used] > (most.empty() ? 0 : counts[most])) {
            most = used;
        }
    }
    return most;
}

/// The named lens; of a camera that is like the others when there is no name.
const catalogue::Lens* lens_for(const Context& context, const std::string& name) {
    const catalogue::Catalogue& catalogue = context.catalogue;
    if (!name.empty()) {
        return catalogue.lens(name);
    }
    const catalogue::Lens* most = catalogue.lens(most_used(
        context.plan.cameras, [](const plan::Camera& c) -> const std::string& { return c.lens; }));
    return most == nullptr && !catalogue.lenses.empty() ? &catalogue.lenses.front() : most;
}

/// What speaks for a sensor behind a lens, the weightiest first.
struct SensorMerit {
    bool is_covered = false;
    int cameras_with_it = 0;
    bool is_in_kit = false;
    bool is_16_to_9 = false;
    Length diagonal;

    auto operator<=>(const SensorMerit&) const = default;
};

SensorMerit merit_of(const plan::Plan& plan, const catalogue::SensorMode& sensor,
                     const catalogue::Lens& lens) {
    SensorMerit merit;
    merit.is_covered = sensor.diagonal() <= lens.image_circle && sensor.squeeze == lens.squeeze;
    merit.cameras_with_it = static_cast<int>(
        std::count_if(plan.cameras.begin(), plan.cameras.end(),
                      [&](const plan::Camera& other) { return other.sensor == sensor.name; }));
    merit.is_in_kit = std::any_of(plan.kit.begin(), plan.kit.end(), [&](const plan::KitItem& own) {
        return own.item == sensor.name && own.count > 0;
    });
    // Half a percent: chips are named by what they are nearest to.
    merit.is_16_to_9 = std::abs(sensor.width / sensor.height / (16.0 / 9.0) - 1.0) < 0.005;
    merit.diagonal = sensor.diagonal();
    return merit;
}

/// The sensor that most cameras have, of those that the lens covers; else one of the kit, else the
/// largest of 16:9 that it covers.
const catalogue::SensorMode* usual_sensor(const Context& context, const catalogue::Lens& lens) {
    const catalogue::SensorMode* best = nullptr;
    SensorMerit most;
    for (const catalogue::SensorMode& sensor : context.catalogue.sensors) {
        const SensorMerit merit = merit_of(context.plan, sensor, lens);
        if (best == nullptr || merit > most) {
            best = &sensor;
            most = merit;
        }
    }
    return best;
}

} // namespace

Result<Step> put_camera(const Context& context, const std::string& lens_name, const Vec2& at) {
    const catalogue::Lens* lens = lens_for(context, lens_name);
    if (lens == nullptr) {
        return failure(fmt::format("the Stores have no lens {}", lens_name));
    }
    const catalogue::SensorMode* sensor = usual_sensor(context, *lens);
    const catalogue::Support* support = context.catalogue.support("tripod");
    if (sensor == nullptr || support == nullptr) {
        return failure("the Stores have no sensor or no tripod");
    }
    plan::Camera camera;
    camera.id.name = new_name(context.plan, "camera 1");
    camera.lens = lens->name;
    camera.sensor = sensor->name;
    camera.support = support->name;
    camera.eye_height = std::clamp(camera.eye_height, support->height_min, support->height_max);
    camera.home = at;
    Step step{fmt::format("Put down {}", camera.id.name),
              context.plan,
              {{Kind::camera, camera.id.name, 0}}};
    step.plan.cameras.push_back(std::move(camera));
    return step;
}

} // namespace throwline::edit
