#include "edit/handles.h"

#include "base/length_text.h"
#include "edit/camera_handles.h"
#include "edit/moves.h"
#include "edit/pick.h"
#include "edit/placing.h"
#include "plan/places.h"
#include "stage/moment.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::edit {

namespace {

/// How far from somebody's middle the handle stands that turns them.
constexpr double kTurnReach_m = 0.6;
constexpr double kLeastLength_m = 0.02;

const plan::Opening* opening_of(const plan::Plan& plan, const std::string& name) {
    for (const plan::Opening& opening : plan.room.openings) {
        if (opening.id.name == name) {
            return &opening;
        }
    }
    return nullptr;
}

/// Turn of a piece of scenery; nothing for one that has ends or is round.
std::optional<Angle> turn_of(const plan::SceneryShape& shape) {
    if (const auto* piece = std::get_if<plan::StockPiece>(&shape)) {
        return piece->turn;
    }
    if (const auto* box = std::get_if<plan::BoxPiece>(&shape)) {
        return box->turn;
    }
    if (const auto* riser = std::get_if<plan::Riser>(&shape)) {
        return riser->turn;
    }
    return std::nullopt;
}

Vec2 run_end(const plan::FlatRun& run) {
    return run.from + unit_at(run.heading.rad()) * run.total_width().m();
}

std::vector<Vec2> corners_of(const plan::SceneryShape& shape) {
    if (const auto* run = std::get_if<plan::FlatRun>(&shape)) {
        return {run->from, run_end(*run)};
    }
    if (const auto* drape = std::get_if<plan::Drape>(&shape)) {
        return drape->along;
    }
    if (const auto* prism = std::get_if<plan::PrismPiece>(&shape)) {
        return prism->outline;
    }
    return {};
}

void add_corners(std::vector<Handle>& handles, const Thing& thing,
                 const std::vector<Vec2>& corners) {
    for (std::size_t i = 0; i < corners.size(); ++i) {
        handles.push_back({thing, HandleKind::corner, static_cast<int>(i), corners[i]});
    }
}

std::vector<Handle> scenery_handles(const Context& context, const Thing& thing) {
    std::vector<Handle> handles;
    const plan::Scenery* piece = plan::find(context.plan, plan::Id<plan::Scenery>{thing.name});
    if (piece == nullptr) {
        return handles;
    }
    add_corners(handles, thing, corners_of(piece->shape));
    const std::optional<Angle> turn = turn_of(piece->shape);
    const Polygon outline = plan::footprint(*piece, context.catalogue);
    if (turn && outline.size() == 4) {
        // Ahead of the middle of its front, which looks to -y of its own.
        const double half_m = (outline[3] - outline[0]).norm() / 2.0;
        const Vec2 front = unit_at(turn->rad() - std::numbers::pi / 2.0);
        handles.push_back({thing, HandleKind::turn, 0, centroid(outline) + front * (half_m + 0.3)});
    }
    return handles;
}

std::vector<Handle> person_handles(const Context& context, const Thing& thing) {
    const auto marks = plan::marks_at(context.plan, context.now.beat);
    const auto mark = marks.find(plan::Id<plan::Person>{thing.name});
    if (mark == marks.end()) {
        return {};
    }
    const stage::Moment moment{context.plan, context.catalogue, context.now.beat, context.now.shot};
    const double facing_rad = stage::facing_of(moment, mark->second).rad();
    std::vector<Handle> handles{
        {thing, HandleKind::turn, 0, mark->second.at + kTurnReach_m * unit_at(facing_rad)}};
    const plan::Beat* beat = plan::find(context.plan, context.now.beat);
    if (beat != nullptr && beat->marks.contains(mark->first)) {
        for (std::size_t i = 0; i < mark->second.path.size(); ++i) {
            handles.push_back({thing, HandleKind::path, static_cast<int>(i), mark->second.path[i]});
        }
    }
    return handles;
}

std::vector<Handle> wall_handles(const plan::Plan& plan, const Thing& thing) {
    const Polygon& outline = plan.room.outline;
    const auto count = static_cast<int>(outline.size());
    if (thing.index < 0 || thing.index >= count) {
        return {};
    }
    const int next = (thing.index + 1) % count;
    return {
        {thing, HandleKind::corner, thing.index, outline[static_cast<std::size_t>(thing.index)]},
        {thing, HandleKind::corner, next, outline[static_cast<std::size_t>(next)]}};
}

std::vector<Handle> opening_handles(const plan::Plan& plan, const Thing& thing) {
    const plan::Opening* opening = opening_of(plan, thing.name);
    if (opening == nullptr || static_cast<std::size_t>(opening->wall) >= plan.room.outline.size()) {
        return {};
    }
    const Polygon& outline = plan.room.outline;
    const auto wall = static_cast<std::size_t>(opening->wall);
    const Vec2 from = outline[wall];
    const Vec2 along = (outline[(wall + 1) % outline.size()] - from).normalized();
    const Vec2 near = from + along * opening->from_start.m();
    return {{thing, HandleKind::edge, 0, near},
            {thing, HandleKind::edge, 1, near + along * opening->width.m()}};
}

// What dragging gives.

Result<Step> drag_scenery_corner(const Context& context, const Handle& handle, const Vec2& to) {
    Step step{fmt::format("Change {}", handle.thing.name), context.plan, {}};
    plan::Scenery* piece = find(step.plan, plan::Id<plan::Scenery>{handle.thing.name});
    if (piece == nullptr) {
        return failure(fmt::format("{} is not there any more", handle.thing.name));
    }
    const auto index = static_cast<std::size_t>(handle.index);
    if (auto* run = std::get_if<plan::FlatRun>(&piece->shape)) {
        // Flats keep their widths: one end stays, the run turns about it.
        const Vec2 fixed = handle.index == 0 ? run_end(*run) : run->from;
        const Vec2 way = handle.index == 0 ? Vec2{fixed - to} : Vec2{to - fixed};
        if (way.norm() < kLeastLength_m) {
            return failure("drag farther from the other end");
        }
        run->heading = Angle::radians(angle_of(way));
        run->from = handle.index == 0
                        ? Vec2{fixed - unit_at(run->heading.rad()) * run->total_width().m()}
                        : fixed;
        return step;
    }
    std::vector<Vec2>* corners = nullptr;
    if (auto* drape = std::get_if<plan::Drape>(&piece->shape)) {
        corners = &drape->along;
    } else if (auto* prism = std::get_if<plan::PrismPiece>(&piece->shape)) {
        corners = &prism->outline;
    }
    if (corners == nullptr || index >= corners->size()) {
        return failure("that corner is not there any more");
    }
    (*corners)[index] = to;
    if (std::holds_alternative<plan::PrismPiece>(piece->shape)
        && (crosses_itself(*corners) || area(*corners) < 1e-4)) {
        return failure("its sides would cross");
    }
    return step;
}

Result<Step> drag_corner(const Context& context, const Handle& handle, const Vec2& to) {
    Step step{fmt::format("Move a corner of {}", name_of(handle.thing)), context.plan, {}};
    const auto index = static_cast<std::size_t>(handle.index);
    if (handle.thing.kind == Kind::wall) {
        if (index >= step.plan.room.outline.size()) {
            return failure("that corner is not there any more");
        }
        step.plan.room.outline[index] = to;
        const auto sound = check_walls(step.plan);
        return sound ? Result<Step>{std::move(step)} : tl::unexpected{sound.error()};
    }
    if (handle.thing.kind == Kind::pipe) {
        plan::Pipe* pipe = find(step.plan, plan::Id<plan::Pipe>{handle.thing.name});
        (handle.index == 0 ? pipe->from : pipe->to) = to;
        const double length_m = (pipe->to - pipe->from).norm();
        if (length_m < kLeastLength_m) {
            return failure("the pipe would have no length");
        }
        for (plan::Lamp& lamp : step.plan.lamps) {
            auto* hang = std::get_if<plan::PipeHang>(&lamp.mount);
            if (hang != nullptr && hang->pipe == pipe->id) {
                hang->along = std::min(hang->along, Length::metres(length_m));
            }
        }
        return step;
    }
    return drag_scenery_corner(context, handle, to);
}

Result<Step> set_direction(const Context& context, const Thing& thing, Angle direction) {
    Step step{fmt::format("Turn {}", thing.name), context.plan, {}};
    if (thing.kind == Kind::person) {
        plan::Mark* mark =
            own_mark(step.plan, plan::Id<plan::Person>{thing.name}, context.now.beat);
        if (mark == nullptr) {
            return failure(fmt::format("{} is not on the floor in this beat", thing.name));
        }
        mark->faces = direction;
        return step;
    }
    plan::Scenery* piece = find(step.plan, plan::Id<plan::Scenery>{thing.name});
    if (piece == nullptr) {
        return failure(fmt::format("{} is not there any more", thing.name));
    }
    const Angle turn = Angle::radians(wrapped(direction.rad() + std::numbers::pi / 2.0));
    if (auto* stock = std::get_if<plan::StockPiece>(&piece->shape)) {
        stock->turn = turn;
    } else if (auto* box = std::get_if<plan::BoxPiece>(&piece->shape)) {
        box->turn = turn;
    } else if (auto* riser = std::get_if<plan::Riser>(&piece->shape)) {
        riser->turn = turn;
    }
    return step;
}

Result<Step> drag_turn(const Context& context, const Handle& handle, const Vec2& to,
                       const std::optional<Thing>& onto) {
    const std::optional<Vec2> at = place_of(context, handle.thing);
    if (!at || (to - *at).norm() < 0.01) {
        return failure("drag the handle away from the middle");
    }
    if (handle.thing.kind == Kind::person && onto && onto->kind != Kind::wall
        && onto->kind != Kind::opening && onto->kind != Kind::pipe && onto->kind != Kind::outlet
        && onto->name != handle.thing.name) {
        Step step{fmt::format("Turn {} to {}", handle.thing.name, onto->name), context.plan, {}};
        if (plan::Mark* mark =
                own_mark(step.plan, plan::Id<plan::Person>{handle.thing.name}, context.now.beat)) {
            mark->faces = plan::ThingName{onto->name};
            return step;
        }
    }
    return set_direction(context, handle.thing, Angle::radians(angle_of(to - *at)));
}

Result<Step> drag_edge(const Context& context, const Handle& handle, const Vec2& to) {
    Step step{fmt::format("Change {}", handle.thing.name), context.plan, {}};
    plan::Opening* opening = find(step.plan, plan::Id<plan::Opening>{handle.thing.name});
    const Polygon& outline = context.plan.room.outline;
    const auto wall = static_cast<std::size_t>(opening->wall);
    const Vec2 from = outline[wall];
    const Vec2 side = outline[(wall + 1) % outline.size()] - from;
    const double along_m = std::clamp((to - from).dot(side.normalized()), 0.0, side.norm());
    const double end_m = (opening->from_start + opening->width).m();
    const double begin_m = opening->from_start.m();
    const double low_m = handle.index == 0 ? along_m : begin_m;
    const double high_m = handle.index == 0 ? end_m : along_m;
    if (high_m - low_m < 0.1) {
        return failure("an opening is 10 cm wide or more");
    }
    opening->from_start = Length::metres(low_m);
    opening->width = Length::metres(high_m - low_m);
    for (const plan::Opening& other : step.plan.room.openings) {
        const bool level = opening->sill < other.head && other.sill < opening->head;
        if (other.id != opening->id && other.wall == opening->wall && level
            && low_m < (other.from_start + other.width).m() - 0.001
            && other.from_start.m() < high_m - 0.001) {
            return failure(fmt::format("{} is there", other.id.name));
        }
    }
    return step;
}

Result<Step> drag_path(const Context& context, const Handle& handle, const Vec2& to) {
    Step step{fmt::format("Change the way of {}", handle.thing.name), context.plan, {}};
    plan::Mark* mark =
        own_mark(step.plan, plan::Id<plan::Person>{handle.thing.name}, context.now.beat);
    const auto index = static_cast<std::size_t>(handle.index);
    if (mark == nullptr || index >= mark->path.size()) {
        return failure("that place of the way is not there any more");
    }
    mark->path[index] = to;
    return step;
}

/// The other end of what a corner handle is an end of.
std::optional<Vec2> far_end(const Context& context, const Handle& handle) {
    const std::vector<Handle> all = handles_of(context, handle.thing);
    for (const Handle& other : all) {
        if (other.kind == handle.kind && other.index != handle.index) {
            return other.at;
        }
    }
    return std::nullopt;
}

} // namespace

std::vector<Handle> handles_of(const Context& context, const Thing& thing) {
    if (is_locked(context.plan, thing) || is_hidden(context.plan, thing)) {
        return {};
    }
    switch (thing.kind) {
    case Kind::wall:
        return wall_handles(context.plan, thing);
    case Kind::opening:
        return opening_handles(context.plan, thing);
    case Kind::pipe: {
        const plan::Pipe* pipe = plan::find(context.plan, plan::Id<plan::Pipe>{thing.name});
        std::vector<Handle> handles;
        if (pipe != nullptr) {
            add_corners(handles, thing, {pipe->from, pipe->to});
        }
        return handles;
    }
    case Kind::scenery:
        return scenery_handles(context, thing);
    case Kind::person:
        return person_handles(context, thing);
    case Kind::camera:
        return camera_handles(context, thing);
    case Kind::lamp:
        return lamp_handles(context, thing);
    case Kind::boom: {
        const plan::Boom* boom = plan::find(context.plan, plan::Id<plan::Boom>{thing.name});
        return boom == nullptr
                   ? std::vector<Handle>{}
                   : std::vector<Handle>{{thing, HandleKind::microphone, 0, boom->microphone}};
    }
    case Kind::outlet:
        return {};
    }
    return {};
}

Result<Step> dragged(const Context& context, const Handle& handle, const Vec2& to,
                     const std::optional<Thing>& onto) {
    const Thing things[]{handle.thing};
    if (const auto movable = check_movable(context.plan, things); !movable) {
        return tl::unexpected{movable.error()};
    }
    if (handle.thing.kind == Kind::camera) {
        return drag_camera(context, handle, to, onto);
    }
    if (handle.thing.kind == Kind::lamp) {
        return drag_lamp(context, handle, to, onto);
    }
    switch (handle.kind) {
    case HandleKind::corner:
        return drag_corner(context, handle, to);
    case HandleKind::turn:
        return drag_turn(context, handle, to, onto);
    case HandleKind::edge:
        return drag_edge(context, handle, to);
    case HandleKind::path:
        return drag_path(context, handle, to);
    case HandleKind::microphone: {
        Step step{fmt::format("Move the microphone of {}", handle.thing.name), context.plan, {}};
        find(step.plan, plan::Id<plan::Boom>{handle.thing.name})->microphone = to;
        return step;
    }
    case HandleKind::aim:
    case HandleKind::coverage_left:
    case HandleKind::coverage_right:
    case HandleKind::pool:
        break;
    }
    return failure("that cannot be dragged");
}

std::string value_shown(const Context& context, const Handle& handle) {
    const UnitSystem units = context.plan.units;
    switch (handle.kind) {
    case HandleKind::coverage_left:
    case HandleKind::coverage_right: {
        const auto framed = framed_now(context, {handle.thing.name});
        return framed ? fmt::format("{} mm", fixed(framed->framing.focal.mm(), 1)) : std::string{};
    }
    case HandleKind::turn: {
        const std::optional<Vec2> at = place_of(context, handle.thing);
        for (const Handle& other : handles_of(context, handle.thing)) {
            if (at && other.kind == HandleKind::turn) {
                return degrees_text(Angle::radians(angle_of(other.at - *at)), 0);
            }
        }
        return {};
    }
    case HandleKind::pool: {
        const plan::Lamp* lamp = plan::find(context.plan, plan::Id<plan::Lamp>{handle.thing.name});
        const auto aimed = lamp == nullptr ? std::nullopt : aimed_now(context, *lamp);
        return aimed ? shown(Length::metres(2.0 * aimed->radius_m), units) + " across"
                     : std::string{};
    }
    case HandleKind::aim: {
        const std::optional<Vec2> at = place_of(context, handle.thing);
        for (const Handle& other : handles_of(context, handle.thing)) {
            if (at && other.kind == HandleKind::aim) {
                return shown(Length::metres((other.at - *at).norm()), units);
            }
        }
        return {};
    }
    case HandleKind::corner:
    case HandleKind::microphone:
    case HandleKind::path:
    case HandleKind::edge: {
        const std::optional<Vec2> end = far_end(context, handle);
        for (const Handle& other : handles_of(context, handle.thing)) {
            if (end && other.kind == handle.kind && other.index == handle.index) {
                return shown(Length::metres((other.at - *end).norm()), units);
            }
        }
        return {};
    }
    }
    return {};
}

Result<Step> typed(const Context& context, const Handle& handle, const std::string& text) {
    const UnitSystem units = context.plan.units;
    switch (handle.kind) {
    case HandleKind::coverage_left:
    case HandleKind::coverage_right: {
        // A bare number is millimetres, as it is engraved on the lens.
        const bool bare = text.find_first_not_of("0123456789.,+- ") == std::string::npos;
        return parse_length(bare ? text + " mm" : text).and_then([&](Length focal) {
            return focal.m() > 0.0 ? focal_set(context, {handle.thing.name}, focal)
                                   : Result<Step>{failure("a focal length is above 0")};
        });
    }
    case HandleKind::turn:
        return parse_angle(text).and_then(
            [&](Angle direction) { return set_direction(context, handle.thing, direction); });
    case HandleKind::pool: {
        const plan::Lamp* lamp = plan::find(context.plan, plan::Id<plan::Lamp>{handle.thing.name});
        const auto aimed = lamp == nullptr ? std::nullopt : aimed_now(context, *lamp);
        if (!aimed) {
            return failure(fmt::format("{} is not there any more", handle.thing.name));
        }
        return parse_length(text, {.bare_unit = units}).and_then([&](Length across) {
            return dragged(context, handle, floor_of(aimed->target) + Vec2{across.m() / 2.0, 0.0});
        });
    }
    case HandleKind::aim:
    case HandleKind::corner:
    case HandleKind::microphone:
    case HandleKind::path:
    case HandleKind::edge: {
        // A length in the direction that the handle has from the other end, or from the thing.
        const std::optional<Vec2> end = handle.kind == HandleKind::aim
                                            ? place_of(context, handle.thing)
                                            : far_end(context, handle);
        if (!end || (handle.at - *end).norm() < 1e-6) {
            return failure("there is nothing to measure a length from");
        }
        return parse_length(text, {.bare_unit = units}).and_then([&](Length length) {
            return dragged(context, handle, *end + (handle.at - *end).normalized() * length.m());
        });
    }
    }
    return failure("that cannot be typed");
}

} // namespace throwline::edit
