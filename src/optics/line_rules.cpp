#include "optics/line_rules.h"

#include "base/length_text.h"

#include <cmath>
#include <fmt/format.h>

namespace throwline::optics {

LineSide side_of_line(const Vec2& first, const Vec2& second, const Vec2& camera) {
    const Vec2 line = second - first;
    if (line.norm() == 0.0) {
        return LineSide::on_line;
    }
    const double off_line_m = cross(line, camera - first) / line.norm();
    if (std::abs(off_line_m) <= kOnLine_m) {
        return LineSide::on_line;
    }
    return off_line_m > 0.0 ? LineSide::left : LineSide::right;
}

bool crosses_line(const Vec2& first, const Vec2& second, const Vec2& camera_a,
                  const Vec2& camera_b) {
    const LineSide a = side_of_line(first, second, camera_a);
    const LineSide b = side_of_line(first, second, camera_b);
    return a != LineSide::on_line && b != LineSide::on_line && a != b;
}

std::optional<Angle> angle_between_cameras(const Vec2& subject, const Vec2& camera_a,
                                           const Vec2& camera_b) {
    const Vec2 a = camera_a - subject;
    const Vec2 b = camera_b - subject;
    if (a.norm() == 0.0 || b.norm() == 0.0) {
        return std::nullopt;
    }
    return Angle::radians(std::abs(std::atan2(cross(a, b), a.dot(b))));
}

bool cut_is_clear(Angle turn, ShotSize before, ShotSize after) {
    return turn >= kLeastTurn || steps_between(before, after) >= kLeastSizeSteps;
}

Working angle_between_cameras_working(const Vec2& subject, const Vec2& camera_a,
                                      const Vec2& camera_b) {
    const auto point_text = [](const Vec2& point) {
        return fmt::format("({}, {}) m", fixed(point.x(), 2), fixed(point.y(), 2));
    };
    const std::optional<Angle> turn = angle_between_cameras(subject, camera_a, camera_b);
    return {"angle between the directions from S to A and from S to B",
            {{"S", "subject", point_text(subject)},
             {"A", "camera before the cut", point_text(camera_a)},
             {"B", "camera after the cut", point_text(camera_b)}},
            turn ? degrees_text(*turn, 1) : "none: a camera stands on the subject",
            "common practice, no source: 30 degrees or two sizes at least"};
}

} // namespace throwline::optics
