#pragma once

#include "base/vec.h"

namespace throwline::optics {

/// Share of the frame's width and height, centred, in which action and titles are kept: SMPTE ST
/// 2046-1:2009. EBU R 95 names the same two boxes as 3.5 % and 5 % from each edge.
inline constexpr double kActionSafeShare = 0.93;
inline constexpr double kTitleSafeShare = 0.90;

/// A centred box in a raster, in pixels, not rounded.
struct SafeBox {
    double width_px = 0.0;
    double height_px = 0.0;
    double margin_x_px = 0.0;
    double margin_y_px = 0.0;
};

SafeBox safe_box(double raster_width_px, double raster_height_px, double share);

/// Whether a frame point (u right, v up, each -1..1 across the frame) lies in the centred box.
bool in_safe_area(const Vec2& frame_point, double share);

} // namespace throwline::optics
