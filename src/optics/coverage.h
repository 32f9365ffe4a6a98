#pragma once

#include "base/quantity.h"
#include "base/working.h"
#include "optics/picture_area.h"

#include <optional>

namespace throwline::optics {

/// What a square-on plane at a distance shows of itself.
struct Coverage {
    Length width;
    Length height;
};

/// Pinhole model: side x distance / focal, distance from the entrance pupil; the squeeze widens the
/// width. It is wide by focal / distance of itself against the thin lens. Plain geometry.
Coverage coverage(const PictureArea& area, Length focal, Length distance);
/// Thin lens focused on the plane: side (u - f) / f. Empty when distance <= focal.
std::optional<Coverage> coverage_focused(const PictureArea& area, Length focal, Length distance);

/// Focal length for which the pinhole coverage has this width or height. wanted > 0, distance > 0.
Length focal_for_width(const PictureArea& area, Length wanted_width, Length distance);
Length focal_for_height(const PictureArea& area, Length wanted_height, Length distance);

/// Distance at which the pinhole coverage has this width or height.
Length distance_for_width(const PictureArea& area, Length focal, Length wanted_width);
Length distance_for_height(const PictureArea& area, Length focal, Length wanted_height);

Working coverage_working(const PictureArea& area, Length focal, Length distance);
Working distance_for_height_working(const PictureArea& area, Length focal, Length wanted_height);

} // namespace throwline::optics
