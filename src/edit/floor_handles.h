#pragma once

#include "edit/handles.h"

/// Handles of the room, scenery and people, kind by kind; handles.cpp is the way in. What is
/// dragged is there, and not locked.
namespace throwline::edit {

std::vector<Handle> wall_handles(const plan::Plan& plan, const Thing& thing);
std::vector<Handle> opening_handles(const plan::Plan& plan, const Thing& thing);
std::vector<Handle> pipe_handles(const plan::Plan& plan, const Thing& thing);
std::vector<Handle> scenery_handles(const Context& context, const Thing& thing);
std::vector<Handle> person_handles(const Context& context, const Thing& thing);

Result<Step> drag_room_corner(const Context& context, const Handle& handle, const Vec2& to);
Result<Step> drag_edge(const Context& context, const Handle& handle, const Vec2& to);
Result<Step> drag_pipe_end(const Context& context, const Handle& handle, const Vec2& to);
/// Flats keep their widths; as many are put on or taken off at the dragged end as come nearest the
/// new length.
Result<Step> drag_scenery_corner(const Context& context, const Handle& handle, const Vec2& to);
Result<Step> drag_path(const Context& context, const Handle& handle, const Vec2& to);

/// Where a person looks, or the front of scenery.
Result<Step> direction_set(const Context& context, const Thing& thing, Angle direction);
/// A person is turned to the thing under the pointer, where it can be faced.
Result<Step> drag_turn(const Context& context, const Handle& handle, const Vec2& to,
                       const std::optional<Thing>& onto);

/// Whether an aim or somebody's look can follow a thing by its name.
bool can_be_followed(const Thing& thing);

} // namespace throwline::edit
