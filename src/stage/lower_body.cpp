#include "stage/body_frame.h"
#include "stage/mesh.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace throwline::stage {

namespace {

/// Breadths of dressed legs and feet as shares of stature; own choice, made so that the silhouette
/// from the front is that of two legs which fill the hips' breadth.
constexpr double kLegApart = 0.052;
constexpr double kThighRadius = 0.05;
constexpr double kShinRadius = 0.042;
/// Knee to ankle, axis to axis; and with the foot stretched, before it leaves the floor.
constexpr double kShinLength = 0.245;
constexpr double kStretchedShin = 0.285;
constexpr double kThighLength = 0.24;
/// Foot length: 0.152 of stature (ANSUR II means, from memory).
constexpr double kHalfFoot = 0.076;
constexpr double kHalfFootBreadth = 0.05;

Mesh straight_leg(const BodyFrame& frame, const Proportions& shares, double side) {
    const auto ring = [&](double height, double half_breadth, double half_depth) {
        return Ring{frame.at(side * kLegApart, 0.0, height),
                    frame.right * (half_breadth * frame.stature_m),
                    frame.forward * (half_depth * frame.stature_m)};
    };
    const double top_breadth = shares.hip_breadth / 4.0;
    const std::array rings{ring(shares.ankle - 0.02, 0.045, 0.048), ring(shares.knee, 0.05, 0.052),
                           ring((shares.knee + 2.0 * shares.crotch) / 3.0, top_breadth, 0.065),
                           ring(shares.crotch + 0.01, top_breadth, 0.068)};
    return loft(rings);
}

/// A foot whose sole is at `sole` and whose heel lies below the ankle.
Mesh foot(const BodyFrame& frame, const Proportions& shares, double side, double ankle_forward,
          double sole) {
    const auto ring = [&](double forward, double height, double half_breadth, double half_length) {
        return Ring{frame.at(side * kLegApart, ankle_forward + forward, height),
                    frame.right * (half_breadth * frame.stature_m),
                    frame.forward * (half_length * frame.stature_m)};
    };
    const double lead = 0.5 * kHalfFoot;
    const std::array rings{ring(lead, sole, kHalfFootBreadth, kHalfFoot),
                           ring(lead, sole + 0.5 * shares.ankle, kHalfFootBreadth, kHalfFoot),
                           ring(0.1 * kHalfFoot, sole + shares.ankle, 0.044, 0.05)};
    return loft(rings, 12);
}

/// Where the joints of bent legs are, shares of stature.
struct Joints {
    double hip_height, knee_forward, knee_height, ankle_height;
};

Joints joints_of(const Proportions& shares, const BentLegs& bend) {
    Joints joints{};
    joints.hip_height = bend.seat + kThighRadius;
    // On a low seat the shins hold the knees up.
    joints.knee_height = std::max(joints.hip_height, shares.ankle + kShinLength);
    const double rise = std::min(joints.knee_height - joints.hip_height, kThighLength);
    joints.knee_forward = std::sqrt(kThighLength * kThighLength - rise * rise);
    joints.ankle_height = std::max(shares.ankle, joints.knee_height - kStretchedShin);
    return joints;
}

} // namespace

std::vector<FigurePart> straight_legs(const BodyFrame& frame, const Proportions& shares) {
    Mesh legs;
    Mesh feet;
    for (const double side : {-1.0, 1.0}) {
        legs.append(straight_leg(frame, shares, side));
        feet.append(foot(frame, shares, side, 0.0, 0.0));
    }
    return {{Part::legs, std::move(legs)}, {Part::feet, std::move(feet)}};
}

std::vector<FigurePart> bent_legs(const BodyFrame& frame, const Proportions& shares,
                                  const BentLegs& bend) {
    const Joints joints = joints_of(shares, bend);
    Mesh legs;
    Mesh feet;
    for (const double side : {-1.0, 1.0}) {
        const double out = side * kLegApart;
        const Vec3 hip = frame.at(out, 0.0, joints.hip_height);
        const Vec3 knee = frame.at(out, joints.knee_forward, joints.knee_height);
        // The round end of the shin stays within the foot.
        const Vec3 ankle = frame.at(out, bend.feet_forward, joints.ankle_height + 0.01);
        legs.append(capsule(hip, knee, kThighRadius * frame.stature_m, 12));
        legs.append(capsule(knee, ankle, kShinRadius * frame.stature_m, 12));
        feet.append(
            foot(frame, shares, side, bend.feet_forward, joints.ankle_height - shares.ankle));
    }
    return {{Part::legs, std::move(legs)}, {Part::feet, std::move(feet)}};
}

} // namespace throwline::stage
