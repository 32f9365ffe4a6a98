#include "edit/beat_names.h"
#include "edit/lamp_stand.h"
#include "edit/make.h"
#include "edit/new_names.h"
#include "edit/on_paper.h"
#include "edit/placing.h"
#include "plan/places.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <map>
#include <numbers>

namespace throwline::edit {

namespace {

/// Furniture nearer to a wall than this, from its back, is turned along it.
constexpr double kAlongWall_m = 0.6;
/// A pipe holds a lamp that is put down no farther from it, where there is no grid.
constexpr double kPipeReach_m = 0.75;
constexpr Length kUsualDrop = Length::metres(0.3);
/// A lamp on a stand with nobody to light is aimed this far up the page, at the height of a face.
constexpr double kAhead_m = 3.0;
constexpr double kFaceHeight_m = 1.5;

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

/// A turn that sets the back of a thing to the wall it stands near.
Angle turn_at(const plan::Plan& plan, const Vec2& at, double depth_m) {
    const Polygon& outline = plan.room.outline;
    double least_m = kAlongWall_m + depth_m / 2.0;
    Angle turn;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Vec2& from = outline[i];
        const Vec2& to = outline[(i + 1) % outline.size()];
        const double away_m = distance_to_segment(at, from, to);
        if (away_m < least_m) {
            least_m = away_m;
            const bool inside_left = signed_area(outline) > 0.0;
            const double along_rad = angle_of(inside_left ? Vec2{to - from} : Vec2{from - to});
            // With the room to the left of the wall, a piece turned half about it has its back, +y
            // of its own, to the wall.
            turn = Angle::radians(wrapped(along_rad + std::numbers::pi));
        }
    }
    return turn;
}

/// The person nearest to a place in a beat.
std::optional<std::string> nearest_person(const plan::Plan& plan, const plan::Id<plan::Beat>& beat,
                                          const Vec2& at) {
    std::optional<std::string> nearest;
    double least_m = 0.0;
    for (const auto& [person, mark] : plan::marks_at(plan, beat)) {
        const plan::Person* who = plan::find(plan, person);
        const double away_m = (mark.at - at).norm();
        const bool is_cast = who != nullptr && who->kind == plan::PersonKind::cast;
        if (is_cast && (!nearest || away_m < least_m)) {
            nearest = person.name;
            least_m = away_m;
        }
    }
    return nearest;
}

Result<Step> put_stock(const Context& context, const std::string& name, const Vec2& at) {
    const catalogue::StockItem* item = context.catalogue.stock_item(name);
    if (item == nullptr) {
        return failure(fmt::format("the Stores have no {}", name));
    }
    Step step{{}, context.plan, {}};
    plan::Scenery piece;
    piece.shape = plan::StockPiece{item->name, at, turn_at(context.plan, at, item->depth.m())};
    piece.id.name = new_name(context.plan, item->name);
    step.name = fmt::format("Put down {}", piece.id.name);
    step.made = {{Kind::scenery, piece.id.name, 0}};
    step.plan.scenery.push_back(std::move(piece));
    return step;
}

Result<Step> put_person(const Context& context, bool crew, const Vec2& at) {
    Step step{{}, context.plan, {}};
    plan::Plan& plan = step.plan;
    if (plan.beats.empty()) {
        plan::Beat first;
        first.id.name = next_beat_name(plan);
        plan.beats.push_back(first);
    }
    plan::Beat* beat = find(plan, context.now.beat);
    beat = beat == nullptr ? &plan.beats.front() : beat;
    plan::Person person;
    person.id.name = new_name(plan, crew ? "crew" : "person");
    person.kind = crew ? plan::PersonKind::crew : plan::PersonKind::cast;
    plan::Mark mark;
    mark.at = at;
    // Down the page, to where cameras mostly stand.
    mark.faces = Angle::degrees(-90);
    beat->marks.emplace(person.id, mark);
    step.name = fmt::format("Put {} on a mark", person.id.name);
    step.made = {{Kind::person, person.id.name, 0}};
    plan.people.push_back(std::move(person));
    return step;
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

/// The place on the grid in whose square a lamp was put, or the pipe that is near enough to hold
/// it; of both the nearer. Nothing when neither is.
std::optional<plan::LampMount> hung_near(const plan::Plan& plan, const Vec2& at) {
    std::optional<plan::LampMount> best;
    double least_m = kPipeReach_m;
    for (const plan::Pipe& pipe : plan.pipes) {
        const double away_m = distance_to_segment(at, pipe.from, pipe.to);
        if (away_m <= least_m) {
            least_m = away_m;
            best = mount_near(
                plan, plan::PipeHang{pipe.id, {}, std::min(kUsualDrop, pipe.height / 2.0)}, at);
        }
    }
    if (!plan.grid) {
        return best;
    }
    const plan::GridHang any{plan::grid_name(0, 0), std::min(kUsualDrop, plan.grid->height / 2.0)};
    const plan::LampMount hung = mount_near(plan, any, at);
    const auto point = plan::grid_point(*plan.grid, std::get<plan::GridHang>(hung).position);
    if (!point) {
        return best;
    }
    // Half a pitch each way, however the grid is turned.
    const double half_square_m = std::hypot(plan.grid->pitch_x.m(), plan.grid->pitch_y.m()) / 2.0;
    const double away_m = (*point - at).norm();
    return away_m <= half_square_m && (!best || away_m <= least_m) ? hung : best;
}

Result<plan::LampMount> mount_for(const Context& context, const catalogue::Instrument& instrument,
                                  const Vec2& at) {
    if (instrument.kind == catalogue::InstrumentKind::practical) {
        return plan::PracticalMount{at, Length::metres(1.0)};
    }
    if (const auto hung = hung_near(context.plan, at)) {
        return *hung;
    }
    if (const auto stand = stand_at(context.catalogue, at)) {
        return *stand;
    }
    return failure("the Stores have no stand for a lamp; hang it from a pipe");
}

/// At the nearest of the cast; with nobody there, straight ahead from a stand, straight down from a
/// pipe.
plan::Aim aim_for(const Context& context, const plan::LampMount& mount, const Vec2& at) {
    if (std::holds_alternative<plan::PracticalMount>(mount)) {
        return {};
    }
    if (const auto person = nearest_person(context.plan, context.now.beat, at)) {
        return plan::ThingName{*person};
    }
    const Vec2 ahead = at + Vec2{0.0, kAhead_m};
    return std::holds_alternative<plan::StandMount>(mount) && is_on_paper(ahead)
               ? plan::Aim{raised(ahead, kFaceHeight_m)}
               : plan::Aim{};
}

Result<Step> put_lamp(const Context& context, const std::string& name, const Vec2& at) {
    const catalogue::Instrument* instrument = context.catalogue.instrument(name);
    if (instrument == nullptr) {
        return failure(fmt::format("the Stores have no lamp {}", name));
    }
    const Result<plan::LampMount> mount = mount_for(context, *instrument, at);
    if (!mount) {
        return tl::unexpected{mount.error()};
    }
    plan::Lamp lamp;
    lamp.id.name = new_name(context.plan, "lamp 1");
    lamp.instrument = instrument->name;
    lamp.mount = *mount;
    lamp.aim = aim_for(context, *mount, at);
    if (std::holds_alternative<plan::PracticalMount>(*mount)) {
        lamp.role = plan::LampRole::practical;
    }
    const bool hangs = std::holds_alternative<plan::GridHang>(*mount)
                       || std::holds_alternative<plan::PipeHang>(*mount);
    Step step{fmt::format("{} {}", hangs ? "Hang" : "Put down", lamp.id.name),
              context.plan,
              {{Kind::lamp, lamp.id.name, 0}}};
    step.plan.lamps.push_back(std::move(lamp));
    return step;
}

Result<Step> put_boom(const Context& context, const Vec2& at) {
    plan::Boom boom;
    boom.id.name = new_name(context.plan, "boom");
    boom.operator_at = at;
    const auto person = nearest_person(context.plan, context.now.beat, at);
    const auto marks = plan::marks_at(context.plan, context.now.beat);
    const Vec2 to =
        person ? marks.at(plan::Id<plan::Person>{*person}).at : Vec2{at.x(), at.y() + 2.0};
    const Vec2 way = to - at;
    // Towards the nearest person, as far as the pole reaches held a little upwards.
    const double reach_m = std::min(way.norm(), 0.9 * boom.pole.m());
    boom.microphone = at + (way.norm() > 0.0 ? Vec2{way.normalized() * reach_m} : Vec2::Zero());
    if (!is_on_paper(boom.microphone)) {
        return failure(std::string{kOffPaper});
    }
    Step step{
        fmt::format("Put down {}", boom.id.name), context.plan, {{Kind::boom, boom.id.name, 0}}};
    step.plan.booms.push_back(std::move(boom));
    return step;
}

Result<Step> put_outlet(const Context& context, const std::string& circuit, const Vec2& at) {
    Step step{{}, context.plan, {}};
    std::string name = circuit;
    if (name.empty()) {
        name = new_name(context.plan, "circuit 1");
        plan::Circuit made;
        made.id.name = name;
        if (context.plan.units == UnitSystem::imperial) {
            made.volts = 120.0;
            made.breaker_amps = 20.0;
        }
        step.plan.circuits.push_back(made);
    }
    plan::Circuit* into = find(step.plan, plan::Id<plan::Circuit>{name});
    if (into == nullptr) {
        return failure(fmt::format("there is no circuit {}", name));
    }
    into->outlets.push_back(at);
    step.name = fmt::format("New outlet of {}", name);
    step.made = {{Kind::outlet, name, static_cast<int>(into->outlets.size()) - 1}};
    return step;
}

} // namespace

Result<Step> put_down(const Context& context, const StoreItem& item, const Vec2& at) {
    if (!is_on_paper(at)) {
        return failure(std::string{kOffPaper});
    }
    switch (item.shelf) {
    case Shelf::stock:
        return put_stock(context, item.item, at);
    case Shelf::person:
        return put_person(context, item.item == "crew", at);
    case Shelf::camera:
        return put_camera(context, item.item, at);
    case Shelf::lamp:
        return put_lamp(context, item.item, at);
    case Shelf::boom:
        return put_boom(context, at);
    case Shelf::outlet:
        return put_outlet(context, item.item, at);
    }
    return failure("there is no such shelf");
}

} // namespace throwline::edit
