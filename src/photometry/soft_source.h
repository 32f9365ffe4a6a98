#pragma once

#include "base/quantity.h"
#include "base/vec.h"
#include "base/working.h"
#include "catalogue/catalogue.h"

#include <span>
#include <vector>

namespace throwline::photometry {

/// Level from a diffuse polygon of even luminance, by Lambert's polygon formula
/// E = L / 2 |sum angle_k (n . edge normal_k)| after the part below the receiver's horizon is cut
/// off. `corners` in walking order in one plane, either way round; both faces send light, so
/// callers decide whether the receiver is in front. `normal` a unit vector. Configuration-factor
/// literature, from memory.
double polygon_illuminance_lx(double luminance_cd_m2, std::span<const Vec3> corners,
                              const Vec3& receiver, const Vec3& normal);

/// The bright face of a diffuse lamp; it sends light to its front only.
struct SoftPanel {
    Vec3 centre = Vec3::Zero();
    /// Unit vector the face looks along.
    Vec3 facing = -Vec3::UnitZ();
    /// Unit vector along the face's height, square to `facing`.
    Vec3 up = Vec3::UnitX();
    Length width;
    Length height;
    /// An ellipse of this width and height instead of a rectangle.
    bool round = false;
    double luminance_cd_m2 = 0.0;
};

/// Area of the bright face, m^2.
double face_area_m2(const SoftPanel& panel);
/// A panel of an instrument's face size whose intensity on its axis is `peak_cd`: L = peak / area.
/// `up` is level-kept: as near to +z as facing allows. Empty faces give luminance 0.
SoftPanel soft_panel(const catalogue::Instrument& instrument, double peak_cd, const Vec3& centre,
                     const Vec3& facing);

/// Corners of the face; a round one becomes `round_sides` corners around the same area.
std::vector<Vec3> face_corners(const SoftPanel& panel, int round_sides = 48);

/// Level at a receiver with a normal (unit vector); 0 behind the face.
double soft_illuminance_lx(const SoftPanel& panel, const Vec3& receiver, const Vec3& normal);

/// Configuration factors of an a x b rectangle for an element at distance d under one corner:
/// parallel to it, and square to it with its normal along b. E = pi L C. Radiation
/// configuration-factor catalogue, from memory. All > 0.
double corner_factor_parallel(double a, double b, double d);
double corner_factor_square(double a, double b, double d);

Working soft_illuminance_working(const SoftPanel& panel, const Vec3& receiver, const Vec3& normal);

} // namespace throwline::photometry
