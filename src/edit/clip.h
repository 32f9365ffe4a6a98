#pragma once

#include "base/result.h"
#include "edit/thing.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Things on their way from one plan into another, or into the same one once more.
namespace throwline::edit {

/// Scenery, people with their marks of now, cameras where they are now, lamps, booms and pipes, as
/// the text of a plan that holds nothing else. What they are aimed at or face and is not among them
/// becomes a place. Empty when none of the things can travel: walls, openings and outlets cannot.
std::string clipped(const Context& context, std::span<const Thing> things);

/// Those of the things that clipped() takes along.
std::vector<Thing> travelling(const Context& context, std::span<const Thing> things);

/// What was clipped put into a plan under names of its own: with its middle at `middle`, else half
/// a metre from where it was. Lamps that hung where this plan has no pipe come to stand on a stand.
/// Errors: a text that is no clip.
Result<Step> pasted(const Context& context, std::string_view text,
                    const std::optional<Vec2>& middle);

} // namespace throwline::edit
