#include "edit/floor_handles.h"

#include "edit/on_paper.h"
#include "edit/placing.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::edit {

namespace {

/// Shorter than this is a slip of the hand.
constexpr double kLeastLength_m = 0.02;
constexpr double kLeastOpening_m = 0.1;

/// Where an opening's wall begins, and which way and how far it goes.
struct WallLine {
    Vec2 from = Vec2::Zero();
    Vec2 along = Vec2::UnitX();
    double length_m = 0.0;
};

WallLine line_of(const plan::Room& room, int wall) {
    const auto index = static_cast<std::size_t>(wall);
    const Vec2& from = room.outline[index];
    const Vec2 side = room.outline[(index + 1) % room.outline.size()] - from;
    return {from, side.normalized(), side.norm()};
}

} // namespace

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
    for (const plan::Opening& opening : plan.room.openings) {
        if (opening.id.name == thing.name) {
            const WallLine wall = line_of(plan.room, opening.wall);
            const Vec2 near = wall.from + wall.along * opening.from_start.m();
            return {{thing, HandleKind::edge, 0, near},
                    {thing, HandleKind::edge, 1, near + wall.along * opening.width.m()}};
        }
    }
    return {};
}

std::vector<Handle> pipe_handles(const plan::Plan& plan, const Thing& thing) {
    const plan::Pipe* pipe = plan::find(plan, plan::Id<plan::Pipe>{thing.name});
    if (pipe == nullptr) {
        return {};
    }
    return {{thing, HandleKind::corner, 0, pipe->from}, {thing, HandleKind::corner, 1, pipe->to}};
}

Result<Step> drag_room_corner(const Context& context, const Handle& handle, const Vec2& to) {
    Step step{fmt::format("Move a corner of {}", name_of(handle.thing)), context.plan, {}};
    const auto index = static_cast<std::size_t>(handle.index);
    if (handle.index < 0 || index >= step.plan.room.outline.size()) {
        return failure("that corner is not there any more");
    }
    if (const auto free = check_unlocked_walls(context.plan, {handle.index - 1, handle.index});
        !free) {
        return tl::unexpected{free.error()};
    }
    step.plan.room.outline[index] = to;
    keep_lamps_on_walls(step.plan);
    const auto sound = check_walls(step.plan);
    return sound ? Result<Step>{std::move(step)} : tl::unexpected{sound.error()};
}

Result<Step> drag_edge(const Context& context, const Handle& handle, const Vec2& to) {
    Step step{fmt::format("Change {}", handle.thing.name), context.plan, {}};
    plan::Opening& opening = *find(step.plan, plan::Id<plan::Opening>{handle.thing.name});
    const WallLine wall = line_of(step.plan.room, opening.wall);
    const double along_m = std::clamp((to - wall.from).dot(wall.along), 0.0, wall.length_m);
    const double begin_m = handle.index == 0 ? along_m : opening.from_start.m();
    const double end_m = handle.index == 0 ? (opening.from_start + opening.width).m() : along_m;
    if (end_m - begin_m < kLeastOpening_m) {
        return failure("an opening is 10 cm wide or more");
    }
    opening.from_start = Length::metres(begin_m);
    opening.width = Length::metres(end_m - begin_m);
    if (const plan::Opening* other = in_the_way(step.plan.room, opening)) {
        return failure(fmt::format("{} is there", other->id.name));
    }
    return step;
}

Result<Step> drag_pipe_end(const Context& context, const Handle& handle, const Vec2& to) {
    Step step{fmt::format("Move an end of {}", handle.thing.name), context.plan, {}};
    plan::Pipe& pipe = *find(step.plan, plan::Id<plan::Pipe>{handle.thing.name});
    (handle.index == 0 ? pipe.from : pipe.to) = to;
    const double length_m = (pipe.to - pipe.from).norm();
    if (length_m < kLeastLength_m) {
        return failure("drag farther from the other end");
    }
    if (!is_a_size(Length::metres(length_m))) {
        return failure("a pipe is at most 1000 m long");
    }
    for (plan::Lamp& lamp : step.plan.lamps) {
        auto* hang = std::get_if<plan::PipeHang>(&lamp.mount);
        if (hang != nullptr && hang->pipe == pipe.id) {
            hang->along = std::min(hang->along, Length::metres(length_m));
        }
    }
    return step;
}

} // namespace throwline::edit
