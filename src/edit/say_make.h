#pragma once

#include "edit/say_heard.h"

#include <functional>

/// What the families of sayings make their steps with.
namespace throwline::edit {

Result<Said> as_said(Result<Step> step);

/// One after the other, each on what the ones before it made, as one step of the first's name; of a
/// name for all where there are several.
Result<Step>
each_in_turn(const Context& context, std::span<const Thing> things, const std::string& verb,
             const std::function<Result<Step>(const Context& context, const Thing& thing)>& change);

/// The unit direction of "left", "right", "up" or "down" the sheet.
Vec2 direction_of(const std::string& word);
/// Middle of the box around the places of things that are on the floor now.
Result<Vec2> middle_of(const Context& context, std::span<const Thing> things);
/// The camera's place now is that of this shot; an error when it waits at home.
Result<plan::Id<plan::Shot>> shot_of(const Context& context, const Thing& camera);
/// A name that ends up in capitals, as positions of the grid are written.
std::string in_capitals(std::string text);

} // namespace throwline::edit
