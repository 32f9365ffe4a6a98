#include "optics/composition.h"

#include <cmath>

namespace throwline::optics {

double headroom_share(double crown_v) {
    return (1.0 - crown_v) / 2.0;
}

ShareRange usual_headroom(ShotSize size) {
    switch (size) {
    case ShotSize::extreme_close_up:
    case ShotSize::big_close_up:
        return {-1.0, 0.02};
    case ShotSize::close_up:
        return {-0.10, 0.12};
    case ShotSize::medium_close_up:
    case ShotSize::medium:
    case ShotSize::medium_long:
    case ShotSize::medium_long_knee:
    case ShotSize::full:
        return {0.03, 0.15};
    case ShotSize::wide:
    case ShotSize::very_wide:
        return {0.03, 1.0};
    }
    return {};
}

std::optional<double> lead_room(double nose_u, LookSide side) {
    const double ahead = side == LookSide::right ? 1.0 - nose_u : 1.0 + nose_u;
    const double behind = 2.0 - ahead;
    if (behind <= 0.0) {
        return std::nullopt;
    }
    return ahead / behind;
}

double distance_from_thirds(const Vec2& frame_point) {
    return std::hypot(std::abs(frame_point.x()) - kThirdLine,
                      std::abs(frame_point.y()) - kThirdLine);
}

} // namespace throwline::optics
