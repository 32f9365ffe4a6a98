#pragma once

#include "sheet/frame_surfaces.h"

#include <string>

/// What a meter reads where a frame is pointed at.
namespace throwline::sheet {

/// What a frame shows at a place of it, (-1..1, -1..1), right and up; the stage must have rays.
FrameSurface surface_at(const stage::Stage& stage, const stage::ShotView& view, const Vec2& at);

/// Level from all lamps that burn on a surface as it is turned, lux, as in a lit picture but for
/// what the room throws back. 0 where the ray leaves the room.
double level_on_lx(const stage::Stage& stage, const FrameSurface& surface);

/// "exposed for 640 lx"
std::string exposed_words(double needed_lx, UnitSystem units);
/// A level beside the one (> 0) that a stop asks for: "540 lx, 0.3 stops under"; "no light" from
/// ten stops under.
std::string level_words(double level_lx, double needed_lx, UnitSystem units);

} // namespace throwline::sheet
