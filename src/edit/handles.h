#pragma once

#include "base/result.h"
#include "edit/thing.h"

#include <vector>

namespace throwline::edit {

/// What a handle of a chosen thing means when it is dragged.
enum class HandleKind {
    /// A corner of the room or of a prism: moves the corner. An end of a pipe, a point of a drape:
    /// moves it. An end of a run of flats: turns the run about its other end, and puts flats on or
    /// takes them off there, so that it comes nearest to reaching the place. `index` counts them.
    corner,
    /// Aims a camera (in its shot) or a lamp: at the person or thing under the pointer, else at the
    /// place, at the height that it had.
    aim,
    /// Left and right edge of a camera's coverage, at the distance of its subject: the focal length
    /// within the lens.
    coverage_left,
    coverage_right,
    /// Rim of a lamp's pool: flood or spot, where the instrument can; its middle is `aim`.
    pool,
    /// Which way a person looks; turns scenery.
    turn,
    /// Microphone of a boom.
    microphone,
    /// A point of a person's path or of a camera's moves. `index` counts them.
    path,
    /// The edge of an opening nearer its wall's start, and the other.
    edge
};

struct Handle {
    Thing thing;
    HandleKind kind = HandleKind::corner;
    int index = 0;
    Vec2 at = Vec2::Zero();
};

/// Handles of one thing as it is now, none for a locked or hidden one.
std::vector<Handle> handles_of(const Context& context, const Thing& thing);

/// What dragging a handle to a place gives. `onto` is the thing under the pointer, for aiming.
/// Within what the thing can do: a zoom stops at its ends.
Result<Step> dragged(const Context& context, const Handle& handle, const Vec2& to,
                     const std::optional<Thing>& onto = std::nullopt);

/// In words and figures what the drag sets, to be shown beside the pointer: "35 mm", "2.40 m",
/// "turn 15°"; and what a typed text sets in its place: a focal length for coverage (a bare number
/// is mm), a direction for a turn (anticlockwise from the right of the page), the width of a pool,
/// for the others a length in the direction that the handle has: of a corner, an edge or a place of
/// a way from the one before it, of an aim from the thing, of a microphone from the operator.
/// Errors: a text that is none, or out of range.
std::string value_shown(const Context& context, const Handle& handle);
Result<Step> typed(const Context& context, const Handle& handle, const std::string& text);

} // namespace throwline::edit
