#include "edit/beat_names.h"
#include "edit/new_names.h"
#include "edit/on_paper.h"
#include "edit/placing.h"
#include "edit/put_parts.h"
#include "plan/isometry.h"
#include "plan/places.h"

#include <algorithm>
#include <fmt/format.h>
#include <numbers>

namespace throwline::edit {

namespace {

/// Furniture nearer to a wall than this, from its back, is turned along it.
constexpr double kAlongWall_m = 0.6;

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

Result<Step> put_boom(const Context& context, const Vec2& at) {
    plan::Boom boom;
    boom.id.name = new_name(context.plan, "boom");
    boom.operator_at = at;
    const auto person = nearest_of_cast(context.plan, context.now.beat, at);
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

std::optional<std::string> nearest_of_cast(const plan::Plan& plan, const plan::Id<plan::Beat>& beat,
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

Result<Step> put_down(const Context& context, const StoreItem& item, const Vec2& place) {
    const Vec2 at = plan::tidied(place);
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
