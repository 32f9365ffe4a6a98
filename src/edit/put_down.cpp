#include "edit/make.h"
#include "edit/new_names.h"
#include "edit/placing.h"
#include "plan/places.h"

#include <algorithm>
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
constexpr Length kUsualStand = Length::metres(2.4);

Length usual_stature() {
    return Length::metres(1.70);
}

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
            // Along the wall with the room to the left: the back, +y of the piece, is to the right.
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
        first.id.name = new_name(plan, "1");
        plan.beats.push_back(first);
    }
    plan::Beat* beat = find(plan, context.now.beat);
    beat = beat == nullptr ? &plan.beats.front() : beat;
    plan::Person person;
    person.id.name = new_name(plan, crew ? "crew" : "person");
    person.kind = crew ? plan::PersonKind::crew : plan::PersonKind::cast;
    person.stature = usual_stature();
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

Result<Step> put_camera(const Context& context, const std::string& lens, const Vec2& at) {
    const catalogue::Catalogue& catalogue = context.catalogue;
    const plan::Plan& plan = context.plan;
    plan::Camera camera;
    camera.id.name = new_name(plan, plan.cameras.empty() ? "camera 1" : "camera");
    if (camera.id.name == "camera") {
        std::set<std::string> taken = taken_names(plan);
        camera.id.name = new_name(taken, "camera 1");
    }
    const catalogue::Lens* found =
        lens.empty() ? catalogue.lens(most_used(
                           plan.cameras, [](const auto& c) -> const auto& { return c.lens; }))
                     : catalogue.lens(lens);
    if (found == nullptr && lens.empty() && !catalogue.lenses.empty()) {
        found = &catalogue.lenses.front();
    }
    const std::string sensor =
        most_used(plan.cameras, [](const auto& c) -> const auto& { return c.sensor; });
    const catalogue::SensorMode* mode = catalogue.sensor(sensor.empty() ? "Super 35 16:9" : sensor);
    if (mode == nullptr && !catalogue.sensors.empty()) {
        mode = &catalogue.sensors.front();
    }
    const catalogue::Support* support = catalogue.support("tripod");
    if (found == nullptr || mode == nullptr || support == nullptr) {
        return failure(fmt::format("the Stores have no lens {}, or no sensor or tripod", lens));
    }
    camera.lens = found->name;
    camera.sensor = mode->name;
    camera.support = support->name;
    camera.home = at;
    Step step{
        fmt::format("Put down {}", camera.id.name), plan, {{Kind::camera, camera.id.name, 0}}};
    step.plan.cameras.push_back(std::move(camera));
    return step;
}

/// The grid position or pipe that is near enough to hold a lamp; else nothing.
std::optional<plan::LampMount> hung_near(const plan::Plan& plan, const Vec2& at) {
    if (plan.grid) {
        const auto mount = mount_near(plan, plan::GridHang{"A1", kUsualDrop}, at);
        const auto& hang = std::get<plan::GridHang>(mount);
        const auto point = plan::grid_point(*plan.grid, hang.position);
        const double reach_m =
            0.75 * std::max(std::abs(plan.grid->pitch_x.m()), std::abs(plan.grid->pitch_y.m()));
        if (point && (*point - at).norm() <= reach_m) {
            return mount;
        }
    }
    for (const plan::Pipe& pipe : plan.pipes) {
        if (distance_to_segment(at, pipe.from, pipe.to) <= kPipeReach_m) {
            return mount_near(plan, plan::PipeHang{pipe.id, {}, kUsualDrop}, at);
        }
    }
    return std::nullopt;
}

const catalogue::Support* usual_lamp_stand(const catalogue::Catalogue& catalogue) {
    const catalogue::Support* stand = catalogue.support("medium light stand");
    for (const catalogue::Support& support : catalogue.supports) {
        stand = stand == nullptr && !support.for_camera ? &support : stand;
    }
    return stand;
}

Result<Step> put_lamp(const Context& context, const std::string& name, const Vec2& at) {
    const catalogue::Instrument* instrument = context.catalogue.instrument(name);
    const catalogue::Support* stand = usual_lamp_stand(context.catalogue);
    if (instrument == nullptr || stand == nullptr) {
        return failure(fmt::format("the Stores have no lamp {}", name));
    }
    plan::Lamp lamp;
    std::set<std::string> taken = taken_names(context.plan);
    lamp.id.name = new_name(taken, "lamp 1");
    lamp.instrument = instrument->name;
    if (instrument->kind == catalogue::InstrumentKind::practical) {
        lamp.mount = plan::PracticalMount{at, Length::metres(1.0)};
        lamp.role = plan::LampRole::practical;
    } else if (auto hung = hung_near(context.plan, at)) {
        lamp.mount = *hung;
    } else {
        lamp.mount = plan::StandMount{
            at, std::clamp(kUsualStand, stand->height_min, stand->height_max), stand->name};
    }
    if (const auto person = nearest_person(context.plan, context.now.beat, at);
        person && lamp.role != plan::LampRole::practical) {
        lamp.aim = plan::ThingName{*person};
    }
    Step step{fmt::format("{} {}",
                          std::holds_alternative<plan::GridHang>(lamp.mount) ? "Hang" : "Put down",
                          lamp.id.name),
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
    Step step{
        fmt::format("Put down {}", boom.id.name), context.plan, {{Kind::boom, boom.id.name, 0}}};
    step.plan.booms.push_back(std::move(boom));
    return step;
}

Result<Step> put_outlet(const Context& context, const std::string& circuit, const Vec2& at) {
    Step step{{}, context.plan, {}};
    std::string name = circuit;
    if (name.empty()) {
        std::set<std::string> taken = taken_names(context.plan);
        name = new_name(taken, "circuit 1");
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
