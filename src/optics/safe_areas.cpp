#include "optics/safe_areas.h"

#include <cmath>

namespace throwline::optics {

SafeBox safe_box(double raster_width_px, double raster_height_px, double share) {
    return {raster_width_px * share, raster_height_px * share,
            raster_width_px * (1.0 - share) / 2.0, raster_height_px * (1.0 - share) / 2.0};
}

bool in_safe_area(const Vec2& frame_point, double share) {
    return std::abs(frame_point.x()) <= share && std::abs(frame_point.y()) <= share;
}

} // namespace throwline::optics
