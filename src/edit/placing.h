#pragma once

#include "base/result.h"
#include "edit/thing.h"
#include "plan/isometry.h"

#include <span>

/// How each kind of thing is put elsewhere; shared by all edits that move.
namespace throwline::edit {

/// What is done to places of things: the isometry, and whether directions and aims go with it.
struct Placing {
    plan::Isometry to;
    /// Turns and mirrors take aims at places along; a plain move leaves them where they are.
    bool with_aims = false;
};

/// Puts one thing elsewhere in `plan`, which starts as that of the context. Errors: it cannot be
/// moved, or not there.
Result<void> put(plan::Plan& plan, const Context& context, const Thing& thing,
                 const Placing& placing);

/// The opening that is where another would be; null when none is. Both may share a millimetre.
const plan::Opening* in_the_way(const plan::Room& room, const plan::Opening& opening);
/// Puts the middle of an opening as near to a place as the walls allow, keeping clear of others.
Result<void> put_opening(plan::Plan& plan, const std::string& name, const Vec2& middle);
/// The mount with its turning point as near to a place as what holds the lamp allows.
plan::LampMount mount_near(const plan::Plan& plan, const plan::LampMount& mount, const Vec2& at);
/// Whether walls are a room after an edit of their corners: one sentence when not.
Result<void> check_walls(const plan::Plan& plan);
/// Lamps clamped to a wall that became shorter stay on it, at its end.
void keep_lamps_on_walls(plan::Plan& plan);

/// Errors: one of these walls, counted round the room from any number, is locked.
Result<void> check_unlocked_walls(const plan::Plan& plan, std::initializer_list<int> walls);
/// Errors: nothing is chosen, or something that is not there any more.
Result<void> check_there(const plan::Plan& plan, std::span<const Thing> things);
/// The same, and nothing chosen is locked.
Result<void> check_movable(const plan::Plan& plan, std::span<const Thing> things);
/// "camera 2", "3 things": what a step is about.
std::string words_for(std::span<const Thing> things);

/// The place of the thing in its list; null when there is none.
plan::Scenery* find(plan::Plan& plan, const plan::Id<plan::Scenery>& id);
plan::Person* find(plan::Plan& plan, const plan::Id<plan::Person>& id);
plan::Camera* find(plan::Plan& plan, const plan::Id<plan::Camera>& id);
plan::Lamp* find(plan::Plan& plan, const plan::Id<plan::Lamp>& id);
plan::Boom* find(plan::Plan& plan, const plan::Id<plan::Boom>& id);
plan::Pipe* find(plan::Plan& plan, const plan::Id<plan::Pipe>& id);
plan::Circuit* find(plan::Plan& plan, const plan::Id<plan::Circuit>& id);
plan::Beat* find(plan::Plan& plan, const plan::Id<plan::Beat>& id);
plan::Shot* find(plan::Plan& plan, const plan::Id<plan::Shot>& id);
plan::Opening* find(plan::Plan& plan, const plan::Id<plan::Opening>& id);

/// Somebody's mark in a beat, made from what they carried on when the beat had none of its own;
/// null when they are not on the floor in it.
plan::Mark* own_mark(plan::Plan& plan, const plan::Id<plan::Person>& person,
                     const plan::Id<plan::Beat>& beat);

} // namespace throwline::edit
