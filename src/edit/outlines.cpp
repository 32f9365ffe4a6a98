#include "edit/outlines.h"

#include "edit/pick.h"
#include "plan/places.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::edit {

namespace {

/// Of an opening, so that it can be taken hold of in a thin wall.
constexpr double kLeastOpeningDepth_m = 0.15;
/// Of a pipe or pole: thicker than it is, for the same reason.
constexpr double kPipeWidth_m = 0.1;
constexpr double kOutletSize_m = 0.2;
constexpr double kLeastLampSize_m = 0.25;
constexpr double kUsualSupport_m = 0.4;
constexpr int kPersonSides = 16;

Polygon band(const Vec2& from, const Vec2& to, double left_m, double right_m) {
    if (from == to) {
        return rectangle(from, left_m + right_m, left_m + right_m, 0.0);
    }
    const Vec2 left = turned_left((to - from).normalized());
    return {from - left * right_m, to - left * right_m, to + left * left_m, from + left * left_m};
}

std::pair<Vec2, Vec2> wall_ends(const plan::Room& room, std::size_t wall) {
    return {room.outline[wall], room.outline[(wall + 1) % room.outline.size()]};
}

/// A strip along a wall, as thick as that on the outside.
Polygon wall_strip(const plan::Room& room, std::size_t wall, const Vec2& from, const Vec2& to,
                   double least_m) {
    const double thickness_m =
        std::max(least_m, wall < room.walls.size() ? room.walls[wall].thickness.m() : 0.0);
    const bool inside_left = signed_area(room.outline) > 0.0;
    return inside_left ? band(from, to, 0.0, thickness_m) : band(from, to, thickness_m, 0.0);
}

Polygon opening_outline(const plan::Room& room, const plan::Opening& opening) {
    const auto wall = static_cast<std::size_t>(opening.wall);
    if (wall >= room.outline.size()) {
        return {};
    }
    const auto [from, to] = wall_ends(room, wall);
    const Vec2 along = (to - from).normalized();
    const Vec2 begin = from + along * opening.from_start.m();
    return wall_strip(room, wall, begin, begin + along * opening.width.m(), kLeastOpeningDepth_m);
}

Polygon person_outline(const Context& context, const stage::Marks& marks,
                       const plan::Person& person) {
    const auto at = marks.find(person.id);
    if (at == marks.end()) {
        return {};
    }
    const stage::Moment moment{context.plan, context.catalogue, context.now.beat, context.now.shot};
    const double facing_rad = stage::facing_of(moment, marks, at->second).rad();
    const double stature_m = person.stature.m();
    const double half_breadth_m = stature_m * context.catalogue.landmark("shoulder_breadth") / 2.0;
    const double half_depth_m = stature_m * context.catalogue.landmark("chest_depth") / 2.0;
    Polygon outline;
    for (int i = 0; i < kPersonSides; ++i) {
        const double turn_rad = 2.0 * std::numbers::pi * i / kPersonSides;
        outline.push_back(
            at->second.at
            + rotated({half_depth_m * std::cos(turn_rad), half_breadth_m * std::sin(turn_rad)},
                      facing_rad));
    }
    return outline;
}

Polygon camera_outline(const Context& context, const plan::Camera& camera) {
    const auto place = plan::camera_place(context.plan, camera, context.now.beat, context.now.shot);
    if (!place) {
        return {};
    }
    const catalogue::Support* support = context.catalogue.support(camera.support);
    const double radius_m = support == nullptr ? kUsualSupport_m : support->footprint_radius.m();
    return circle(place->at, std::max(radius_m, kUsualSupport_m / 2.0), kPersonSides);
}

Polygon lamp_outline(const Context& context, const plan::Lamp& lamp) {
    const std::optional<Vec3> point = plan::lamp_point(context.plan, lamp);
    if (!point) {
        return {};
    }
    const catalogue::Instrument* instrument = context.catalogue.instrument(lamp.instrument);
    double size_m = kLeastLampSize_m;
    if (instrument != nullptr) {
        size_m = std::max({size_m, instrument->body_width.m(), instrument->body_depth.m()});
    }
    return circle(floor_of(*point), size_m / 2.0, kPersonSides);
}

stage::Marks marks_now(const Context& context) {
    return plan::marks_at(context.plan, context.now.beat);
}

template <class Entity>
Polygon outline_of_named(const Outlines& outlines, const std::vector<Entity>& entities,
                         const std::string& name) {
    for (const Entity& entity : entities) {
        if (entity.id.name == name) {
            return outlines.of(entity);
        }
    }
    return {};
}

} // namespace

Outlines::Outlines(const Context& context) : Outlines{context, marks_now(context)} {}

Polygon Outlines::of_wall(std::size_t wall) const {
    const plan::Room& room = context_.plan.room;
    const auto [from, to] = wall_ends(room, wall);
    return wall_strip(room, wall, from, to, kPipeWidth_m);
}

Polygon Outlines::of_outlet(const Vec2& outlet) const {
    return rectangle(outlet, kOutletSize_m, kOutletSize_m, 0.0);
}

Polygon Outlines::of(const plan::Opening& opening) const {
    return opening_outline(context_.plan.room, opening);
}

Polygon Outlines::of(const plan::Pipe& pipe) const {
    return band(pipe.from, pipe.to, kPipeWidth_m / 2.0, kPipeWidth_m / 2.0);
}

Polygon Outlines::of(const plan::Scenery& piece) const {
    return plan::footprint(piece, context_.catalogue);
}

Polygon Outlines::of(const plan::Person& person) const {
    return person_outline(context_, marks_, person);
}

Polygon Outlines::of(const plan::Camera& camera) const {
    return camera_outline(context_, camera);
}

Polygon Outlines::of(const plan::Boom& boom) const {
    return stage::is_on_floor(boom, context_.now.beat)
               ? band(boom.operator_at, boom.microphone, kPipeWidth_m, kPipeWidth_m)
               : Polygon{};
}

Polygon Outlines::of(const plan::Lamp& lamp) const {
    return lamp_outline(context_, lamp);
}

Polygon outline_of(const Context& context, const Thing& thing) {
    const plan::Plan& plan = context.plan;
    const Outlines outlines{context,
                            thing.kind == Kind::person ? marks_now(context) : stage::Marks{}};
    const auto index = static_cast<std::size_t>(thing.index);
    switch (thing.kind) {
    case Kind::wall:
        return exists(plan, thing) ? outlines.of_wall(index) : Polygon{};
    case Kind::opening:
        return outline_of_named(outlines, plan.room.openings, thing.name);
    case Kind::pipe:
        return outline_of_named(outlines, plan.pipes, thing.name);
    case Kind::scenery:
        return outline_of_named(outlines, plan.scenery, thing.name);
    case Kind::person:
        return outline_of_named(outlines, plan.people, thing.name);
    case Kind::camera:
        return outline_of_named(outlines, plan.cameras, thing.name);
    case Kind::lamp:
        return outline_of_named(outlines, plan.lamps, thing.name);
    case Kind::boom:
        return outline_of_named(outlines, plan.booms, thing.name);
    case Kind::outlet:
        break;
    }
    const plan::Circuit* circuit = plan::find(plan, plan::Id<plan::Circuit>{thing.name});
    return exists(plan, thing) ? outlines.of_outlet(circuit->outlets[index]) : Polygon{};
}

std::optional<Vec2> place_of(const Context& context, const Thing& thing) {
    const plan::Plan& plan = context.plan;
    if (thing.kind == Kind::person) {
        const auto marks = plan::marks_at(plan, context.now.beat);
        const auto at = marks.find(plan::Id<plan::Person>{thing.name});
        return at == marks.end() ? std::nullopt : std::optional{at->second.at};
    }
    if (thing.kind == Kind::boom) {
        const plan::Boom* boom = plan::find(plan, plan::Id<plan::Boom>{thing.name});
        return boom == nullptr || !stage::is_on_floor(*boom, context.now.beat)
                   ? std::nullopt
                   : std::optional{boom->microphone};
    }
    if (thing.kind == Kind::wall && exists(plan, thing)) {
        const auto [from, to] = wall_ends(plan.room, static_cast<std::size_t>(thing.index));
        return (from + to) / 2.0;
    }
    const Polygon outline = outline_of(context, thing);
    return outline.empty() ? std::nullopt : std::optional{centroid(outline)};
}

} // namespace throwline::edit
