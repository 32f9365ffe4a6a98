#include "photometry/soft_source.h"

#include "base/length_text.h"
#include "photometry/words.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::photometry {

namespace {

Vec3 cross_of(const Vec3& a, const Vec3& b) {
    return {a.y() * b.z() - a.z() * b.y(), a.z() * b.x() - a.x() * b.z(),
            a.x() * b.y() - a.y() * b.x()};
}

/// Angle between two sights times the share of their common normal that lies along `normal`.
double edge_term(const Vec3& from, const Vec3& to, const Vec3& normal) {
    const Vec3 common = cross_of(from, to);
    const double sine = common.norm();
    if (sine == 0.0) {
        return 0.0;
    }
    return std::atan2(sine, from.dot(to)) * normal.dot(common) / sine;
}

/// Adds up the edges of a polygon whose corners are given one after the other.
class EdgeSum {
  public:
    explicit EdgeSum(const Vec3& normal) : normal_{normal} {}

    void add_corner(const Vec3& sight) {
        if (any_) {
            sum_ += edge_term(last_, sight, normal_);
        } else {
            first_ = sight;
        }
        last_ = sight;
        any_ = true;
    }
    double closed() const { return any_ ? sum_ + edge_term(last_, first_, normal_) : 0.0; }

  private:
    Vec3 normal_;
    Vec3 first_ = Vec3::Zero();
    Vec3 last_ = Vec3::Zero();
    double sum_ = 0.0;
    bool any_ = false;
};

Vec3 level_up(const Vec3& facing) {
    const Vec3 up = Vec3::UnitZ() - facing * facing.z();
    // A face that looks straight up or down has no level edge of its own; +y serves.
    constexpr double kLeastLength = 1e-9;
    return up.norm() > kLeastLength ? Vec3(up.normalized()) : Vec3(Vec3::UnitY());
}

} // namespace

double polygon_illuminance_lx(double luminance_cd_m2, std::span<const Vec3> corners,
                              const Vec3& receiver, const Vec3& normal) {
    EdgeSum sum(normal);
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Vec3 a = corners[i] - receiver;
        const Vec3 b = corners[(i + 1) % corners.size()] - receiver;
        const double height_a = normal.dot(a);
        const double height_b = normal.dot(b);
        if (height_a >= 0.0) {
            sum.add_corner(a);
        }
        if ((height_a > 0.0 && height_b < 0.0) || (height_a < 0.0 && height_b > 0.0)) {
            sum.add_corner(a + (b - a) * (height_a / (height_a - height_b)));
        }
    }
    return luminance_cd_m2 / 2.0 * std::abs(sum.closed());
}

double face_area_m2(const SoftPanel& panel) {
    const double box_m2 = panel.width.m() * panel.height.m();
    return panel.round ? box_m2 * std::numbers::pi / 4.0 : box_m2;
}

SoftPanel soft_panel(const catalogue::Instrument& instrument, double peak_cd, const Vec3& centre,
                     const Vec3& facing) {
    SoftPanel panel{centre,
                    facing,
                    level_up(facing),
                    instrument.face_width,
                    instrument.face_height,
                    instrument.round_face,
                    0.0};
    const double area_m2 = face_area_m2(panel);
    panel.luminance_cd_m2 = area_m2 > 0.0 ? peak_cd / area_m2 : 0.0;
    return panel;
}

std::vector<Vec3> face_corners(const SoftPanel& panel, int round_sides) {
    const Vec3 across = cross_of(panel.up, panel.facing) * (panel.width.m() / 2.0);
    const Vec3 along = panel.up * (panel.height.m() / 2.0);
    if (!panel.round) {
        return {panel.centre - across - along, panel.centre + across - along,
                panel.centre + across + along, panel.centre - across + along};
    }
    const double step_rad = 2.0 * std::numbers::pi / round_sides;
    // Area of a regular polygon is n/2 r^2 sin(step); the factor brings it to pi r^2.
    const double stretch = std::sqrt(step_rad / std::sin(step_rad));
    std::vector<Vec3> corners;
    for (int i = 0; i < round_sides; ++i) {
        const double turn_rad = i * step_rad;
        corners.push_back(panel.centre + across * (stretch * std::cos(turn_rad))
                          + along * (stretch * std::sin(turn_rad)));
    }
    return corners;
}

double soft_illuminance_lx(const SoftPanel& panel, const Vec3& receiver, const Vec3& normal) {
    if (panel.facing.dot(receiver - panel.centre) <= 0.0) {
        return 0.0;
    }
    return polygon_illuminance_lx(panel.luminance_cd_m2, face_corners(panel), receiver, normal);
}

double corner_factor_parallel(double a, double b, double d) {
    const double x = a / d;
    const double y = b / d;
    const double root_x = std::sqrt(1.0 + x * x);
    const double root_y = std::sqrt(1.0 + y * y);
    return (x / root_x * std::atan(y / root_x) + y / root_y * std::atan(x / root_y))
           / (2.0 * std::numbers::pi);
}

double corner_factor_square(double a, double b, double d) {
    const double x = a / d;
    const double y = b / d;
    const double root_y = std::sqrt(1.0 + y * y);
    return (std::atan(x) - std::atan(x / root_y) / root_y) / (2.0 * std::numbers::pi);
}

Working soft_illuminance_working(const SoftPanel& panel, const Vec3& receiver, const Vec3& normal) {
    return {
        "E = L / 2 |sum over the edges of angle x (n . edge normal)|, above the receiver's horizon",
        {{"L", "luminance of the face", fixed(panel.luminance_cd_m2, 0) + " cd/m2"},
         {"", "face", distance_text(panel.width) + " x " + distance_text(panel.height)},
         {"", "middle of the face", point_text(panel.centre)},
         {"", "receiver", point_text(receiver)},
         {"n", "receiver's normal", point_text(normal)}},
        lux_text(soft_illuminance_lx(panel, receiver, normal)),
        "Lambert's polygon formula; configuration-factor literature, from memory"};
}

} // namespace throwline::photometry
