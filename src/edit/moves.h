#pragma once

#include "base/result.h"
#include "edit/thing.h"

#include <span>

/// Edits of what is chosen. Every function leaves the plan it is given alone and returns a step, or
/// one sentence that says why not and what to do ("camera 2 is locked; unlock it first"). Locked
/// things are never changed. Groups: callers widen a choice with whole_groups() first.
///
/// Where a thing moves, and in which beat or shot: a person's mark in the beat of now (a new mark
/// there when the person was carried on from an earlier beat; the path is dropped); a camera where
/// it is now (the shot that camera_place() names, else its home); lamps along what holds them (the
/// nearest grid position, along a pipe, along the walls); openings along their wall or onto another
/// that has room; a wall square to itself, with its corners; everything else freely.
namespace throwline::edit {

Result<Step> moved(const Context& context, std::span<const Thing> things, const Vec2& by_m);
/// Anticlockwise about a point. People turn their facing too, unless they face a thing by name.
/// Walls, openings and hung lamps do not turn; alone they are an error, among others left alone.
Result<Step> turned(const Context& context, std::span<const Thing> things, const Vec2& about,
                    Angle by);
/// Mirrored in the line through `on` at `direction`. Runs of flats keep their dressed face towards
/// the same side of the set as seen in the mirror.
Result<Step> mirrored(const Context& context, std::span<const Thing> things, const Vec2& on,
                      Angle direction);
/// Copies `by_m` away from the originals, with new names ("chair 2" after "chair"). People, cameras
/// with their shots' places, lamps, scenery, booms, pipes, openings, outlets; walls are an error.
Result<Step> copied(const Context& context, std::span<const Thing> things, const Vec2& by_m);
/// Rows and columns of copies; counts include the originals: 1 x 1 is an error.
struct Array {
    int columns = 1;
    int rows = 1;
    Vec2 column_step_m = Vec2::UnitX();
    Vec2 row_step_m = Vec2::UnitY();
};
Result<Step> arrayed(const Context& context, std::span<const Thing> things, const Array& array);

/// Which line of the things' boxes is brought together.
enum class AlignTo { left, middle_across, right, top, middle_up, bottom };
Result<Step> aligned(const Context& context, std::span<const Thing> things, AlignTo to);
/// Equal gaps between the boxes' middles; the outermost stay. Three things or more.
enum class DistributeAlong { across, up };
Result<Step> distributed(const Context& context, std::span<const Thing> things,
                         DistributeAlong along);

/// Takes things off the plan, and every mention of them: a person's marks and subject entries, a
/// camera's shots, a lamp's aim at it (falls back to the place it had). People leave the floor of
/// this beat only when `from_beat_only`.
Result<Step> removed(const Context& context, std::span<const Thing> things,
                     bool from_beat_only = false);
/// Every mention follows. Errors: a name that is empty or taken.
Result<Step> renamed(const Context& context, const Thing& thing, const std::string& name);

/// Arrangement: kept in the plan's file (plan::Arrangement).
Result<Step> locked(const Context& context, std::span<const Thing> things, bool lock);
Result<Step> hidden(const Context& context, std::span<const Thing> things, bool hide);
Result<Step> everything_shown(const Context& context);
Result<Step> grouped(const Context& context, std::span<const Thing> things);
Result<Step> ungrouped(const Context& context, std::span<const Thing> things);
bool is_locked(const plan::Plan& plan, const Thing& thing);
bool is_hidden(const plan::Plan& plan, const Thing& thing);
/// The things with all that are grouped with them, in the order of things_on_floor().
std::vector<Thing> whole_groups(const Context& context, std::span<const Thing> things);

} // namespace throwline::edit
