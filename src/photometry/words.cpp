#include "photometry/words.h"

#include "base/length_text.h"

#include <fmt/format.h>

namespace throwline::photometry {

std::string distance_text(Length length) {
    return fixed(length.m(), 3) + " m";
}

std::string point_text(const Vec3& point) {
    return fmt::format("({}, {}, {}) m", fixed(point.x(), 2), fixed(point.y(), 2),
                       fixed(point.z(), 2));
}

std::string lux_text(double illuminance_lx) {
    return fixed(illuminance_lx, illuminance_lx < 100.0 ? 1 : 0) + " lx";
}

std::string candela_text(double intensity_cd) {
    return fixed(intensity_cd, 0) + " cd";
}

} // namespace throwline::photometry
