#pragma once

#include "edit/make.h"

#include <optional>
#include <string>

/// What put_down() does with each shelf that takes more than a few lines.
namespace throwline::edit {

/// A camera with the named lens (that of the other cameras when empty).
Result<Step> put_camera(const Context& context, const std::string& lens_name, const Vec2& at);
Result<Step> put_lamp(const Context& context, const std::string& instrument, const Vec2& at);

/// Who of the cast is nearest to a place in a beat; nothing when nobody is on the floor.
std::optional<std::string> nearest_of_cast(const plan::Plan& plan, const plan::Id<plan::Beat>& beat,
                                           const Vec2& at);

} // namespace throwline::edit
