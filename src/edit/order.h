#pragma once

#include "base/result.h"
#include "edit/thing.h"

#include <optional>
#include <string>
#include <vector>

/// Beats and shots in their order: edits of it, and the moves between beats.
namespace throwline::edit {

/// A beat after another one (at the start when empty), everybody where they were.
Result<Step> beat_added(const Context& context, const plan::Id<plan::Beat>& after,
                        const std::string& name);
/// Marks of the beat that others stand on are carried to the next; shots lose the beat, and go when
/// it was their only one.
Result<Step> beat_removed(const Context& context, const plan::Id<plan::Beat>& beat);
/// To a place among the beats, from 0. Everybody keeps the mark that each beat had.
Result<Step> beat_moved(const Context& context, const plan::Id<plan::Beat>& beat, int to);
Result<Step> beat_renamed(const Context& context, const plan::Id<plan::Beat>& beat,
                          const std::string& id);

/// A shot of the beat by a camera, where the camera is now, of everybody of the cast on the floor;
/// named by the beat and the next letter: "2B".
Result<Step> shot_added(const Context& context, const plan::Id<plan::Beat>& beat,
                        const plan::Id<plan::Camera>& camera);
Result<Step> shot_removed(const Context& context, const plan::Id<plan::Shot>& shot);
/// To a place among all shots, from 0, and into a beat when another than it has is named.
Result<Step> shot_moved(const Context& context, const plan::Id<plan::Shot>& shot, int to,
                        const plan::Id<plan::Beat>& into);
Result<Step> shot_renamed(const Context& context, const plan::Id<plan::Shot>& shot,
                          const std::string& id);

/// Somebody's way from their mark in the beat before to the one in this beat: the points of the
/// path between, both ends included. Empty for who does not move.
struct Walk {
    plan::Id<plan::Person> person;
    std::vector<Vec2> points;
    double length_m = 0.0;
};
std::vector<Walk> walks_into(const plan::Plan& plan, const plan::Id<plan::Beat>& beat);

/// The plan with everybody part of the way (0..1) into a beat from the one before, as if that were
/// the beat: same beats and shots, marks of the beat replaced by where people are on their way,
/// looking where they go. `share` 1 gives the plan itself.
plan::Plan on_the_way(const plan::Plan& plan, const plan::Id<plan::Beat>& beat, double share);

} // namespace throwline::edit
