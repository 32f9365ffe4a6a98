#pragma once

#include "base/result.h"
#include "edit/thing.h"

#include <string>

/// The scanned plan beneath everything: laid down, put in its place by what is known of it, taken
/// away.
namespace throwline::edit {

/// Lays a picture beneath the plan, instead of the one there was: upright, around the middle of the
/// room (of the origin without one), with its longer side as long as the room's (10 m without one).
/// How large it truly is, is for underlay_placed() to say. `file` is as the plan's file names it;
/// both sizes in pixels, 2 or more.
Result<Step> underlay_laid(const Context& context, const std::string& file, int width_px,
                           int height_px);
/// What lies at `from` of the picture stays there, what lies at `to` comes to `true_to`: its size
/// and its turn follow. Errors: no picture, one point instead of two, or a place off the paper.
Result<Step> underlay_placed(const Context& context, const Vec2& from, const Vec2& to,
                             const Vec2& true_to);
/// By a shift, metres. Errors: no picture, or a place off the paper.
Result<Step> underlay_moved(const Context& context, const Vec2& by);
/// An error when there is none.
Result<Step> underlay_removed(const Context& context);

} // namespace throwline::edit
