#include "edit/handles.h"

#include "edit/camera_handles.h"
#include "edit/floor_handles.h"
#include "edit/moves.h"
#include "edit/on_paper.h"
#include "edit/placing.h"

#include <fmt/format.h>

namespace throwline::edit {

namespace {

Result<Step> drag_corner(const Context& context, const Handle& handle, const Vec2& to) {
    switch (handle.thing.kind) {
    case Kind::wall:
        return drag_room_corner(context, handle, to);
    case Kind::pipe:
        return drag_pipe_end(context, handle, to);
    case Kind::scenery:
        return drag_scenery_corner(context, handle, to);
    case Kind::opening:
    case Kind::person:
    case Kind::camera:
    case Kind::lamp:
    case Kind::boom:
    case Kind::outlet:
        break;
    }
    return failure(fmt::format("{} has no corners to drag", name_of(handle.thing)));
}

std::vector<Handle> boom_handles(const plan::Plan& plan, const Thing& thing) {
    const plan::Boom* boom = plan::find(plan, plan::Id<plan::Boom>{thing.name});
    if (boom == nullptr) {
        return {};
    }
    return {{thing, HandleKind::microphone, 0, boom->microphone}};
}

Result<Step> drag_microphone(const Context& context, const Handle& handle, const Vec2& to) {
    Step step{fmt::format("Move the microphone of {}", handle.thing.name), context.plan, {}};
    plan::Boom* boom = find(step.plan, plan::Id<plan::Boom>{handle.thing.name});
    if (boom == nullptr) {
        return failure(fmt::format("{} has no microphone", name_of(handle.thing)));
    }
    boom->microphone = to;
    return step;
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
    case Kind::pipe:
        return pipe_handles(context.plan, thing);
    case Kind::scenery:
        return scenery_handles(context, thing);
    case Kind::person:
        return person_handles(context, thing);
    case Kind::camera:
        return camera_handles(context, thing);
    case Kind::lamp:
        return lamp_handles(context, thing);
    case Kind::boom:
        return boom_handles(context.plan, thing);
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
    if (!is_on_paper(to)) {
        return failure(std::string{kOffPaper});
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
    case HandleKind::microphone:
        return drag_microphone(context, handle, to);
    case HandleKind::aim:
    case HandleKind::coverage_left:
    case HandleKind::coverage_right:
    case HandleKind::pool:
        break;
    }
    return failure("that cannot be dragged");
}

} // namespace throwline::edit
