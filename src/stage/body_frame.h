#pragma once

#include "catalogue/catalogue.h"
#include "stage/figure.h"

namespace throwline::stage {

/// Axes fixed to a body, in which places are shares of stature: to the right, forward, up from the
/// soles of the standing body.
struct BodyFrame {
    Vec3 origin = Vec3::Zero();
    Vec3 right = Vec3::UnitX();
    Vec3 forward = Vec3::UnitY();
    Vec3 up = Vec3::UnitZ();
    double stature_m = 1.7;

    Vec3 at(double to_right, double to_front, double upwards) const {
        return origin + stature_m * (to_right * right + to_front * forward + upwards * up);
    }
    /// The same axes moved along `up`.
    BodyFrame lowered_by(double metres) const;
};

/// Heights and breadths as shares of stature; see lensdata for their sources.
struct Proportions {
    double eye, chin, acromion, chest, waist, hip, wrist, crotch, knee, ankle;
    double shoulder_breadth, hip_breadth, head_breadth, chest_depth;
    double sitting_height, popliteal;
};
Proportions proportions_of(const catalogue::Catalogue& catalogue);

/// Distance of the skin of the head in front of its axis at a height, both shares of stature.
double face_front(const Proportions& shares, double height);
/// Length of the head, front to back (ANSUR II means, from memory).
inline constexpr double kHeadLength = 0.112;

/// Head, neck, torso and arms; arms hang, or rest forward on the thighs.
std::vector<FigurePart> upper_body(const BodyFrame& frame, const Proportions& shares,
                                   bool arms_forward);
std::vector<FigurePart> straight_legs(const BodyFrame& frame, const Proportions& shares);
/// Thighs forward from a seat `seat` above the soles, shins down to feet that are `feet_forward` in
/// front of the body's middle. All shares of stature. Feet hang where the shins do not reach down.
struct BentLegs {
    double seat = 0.24;
    double feet_forward = 0.24;
};
std::vector<FigurePart> bent_legs(const BodyFrame& frame, const Proportions& shares,
                                  const BentLegs& bend);

} // namespace throwline::stage
