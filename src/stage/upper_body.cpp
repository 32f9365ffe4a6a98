#include "stage/body_frame.h"
#include "stage/mesh.h"

#include <algorithm>
#include <cmath>

namespace throwline::stage {

namespace {

/// Upright profile of the head: |radius|^k + |height|^k = 1. A bluff egg that fills as much of its
/// rectangle as a head with hair does; own choice.
constexpr double kHeadBluffness = 5.0;

double head_profile(double height) {
    const double rest = 1.0 - std::pow(std::min(std::abs(height), 1.0), kHeadBluffness);
    return std::pow(rest, 1.0 / kHeadBluffness);
}

/// A level ellipse of the body; half breadth, half depth and places as shares of stature.
struct Slice {
    double height;
    double half_breadth;
    double half_depth;
};

Mesh stacked(const BodyFrame& frame, double to_right, std::span<const Slice> slices) {
    std::vector<Ring> rings;
    for (const Slice& slice : slices) {
        rings.push_back({frame.at(to_right, 0.0, slice.height),
                         frame.right * (slice.half_breadth * frame.stature_m),
                         frame.forward * (slice.half_depth * frame.stature_m)});
    }
    return loft(rings);
}

Mesh head(const BodyFrame& frame, const Proportions& shares) {
    const double middle = (1.0 + shares.chin) / 2.0;
    const double half_height = (1.0 - shares.chin) / 2.0;
    std::vector<Slice> slices;
    for (const double height : {-1.0, -0.97, -0.85, -0.5, 0.0, 0.5, 0.85, 0.97, 1.0}) {
        const double share = head_profile(height);
        slices.push_back({middle + height * half_height, share * shares.head_breadth / 2.0,
                          share * kHeadLength / 2.0});
    }
    return stacked(frame, 0.0, slices);
}

/// Up into the head and down into the torso, so that no gap shows.
Mesh neck(const BodyFrame& frame, const Proportions& shares) {
    constexpr double kHalfBreadth = 0.035;
    constexpr double kHalfDepth = 0.033;
    const std::array slices{Slice{shares.acromion - 0.01, kHalfBreadth, kHalfDepth},
                            Slice{shares.chin + 0.02, kHalfBreadth, kHalfDepth}};
    return stacked(frame, 0.0, slices);
}

/// Shares between the landmarks are own choices that leave room for arms beside the chest.
Mesh torso(const BodyFrame& frame, const Proportions& shares) {
    const double half_chest_depth = shares.chest_depth / 2.0;
    const std::array slices{
        Slice{shares.crotch, 0.46 * shares.hip_breadth, 0.95 * half_chest_depth},
        Slice{shares.hip, shares.hip_breadth / 2.0, 0.97 * half_chest_depth},
        Slice{shares.waist, 0.31 * shares.shoulder_breadth, 0.84 * half_chest_depth},
        Slice{shares.chest, 0.35 * shares.shoulder_breadth, half_chest_depth},
        Slice{shares.acromion - 0.03, 0.41 * shares.shoulder_breadth, 0.8 * half_chest_depth},
        Slice{shares.acromion, 0.37 * shares.shoulder_breadth, 0.6 * half_chest_depth},
        Slice{shares.acromion + 0.01, 0.12 * shares.shoulder_breadth, 0.4 * half_chest_depth}};
    return stacked(frame, 0.0, slices);
}

constexpr double kUpperArmRadius = 0.026;
constexpr double kForearmRadius = 0.020;
constexpr double kHandRadius = 0.017;
/// Radius to fingertips: a hand hangs this far below the wrist (common practice in figure drawing).
constexpr double kHandLength = 0.09;

Mesh arm(const BodyFrame& frame, const Proportions& shares, double side, bool forward) {
    const double out = shares.shoulder_breadth / 2.0 - kUpperArmRadius;
    const double elbow = (shares.acromion + shares.wrist) / 2.0 - 0.02;
    const Vec3 shoulder = frame.at(side * out, 0.0, shares.acromion - kUpperArmRadius);
    const Vec3 bend = frame.at(side * out, 0.0, elbow);
    const Vec3 wrist = forward ? frame.at(side * 0.09, 0.13, shares.crotch + 0.125)
                               : frame.at(side * out, 0.01, shares.wrist);
    const Vec3 tip = forward ? frame.at(side * 0.08, 0.2, shares.crotch + 0.12)
                             : frame.at(side * out, 0.02, shares.wrist - kHandLength);
    Mesh mesh = capsule(shoulder, bend, kUpperArmRadius * frame.stature_m);
    mesh.append(capsule(bend, wrist, kForearmRadius * frame.stature_m));
    mesh.append(capsule(wrist, tip, kHandRadius * frame.stature_m));
    return mesh;
}

} // namespace

double face_front(const Proportions& shares, double height) {
    const double middle = (1.0 + shares.chin) / 2.0;
    return kHeadLength / 2.0 * head_profile((height - middle) / (1.0 - middle));
}

BodyFrame BodyFrame::lowered_by(double metres) const {
    BodyFrame frame = *this;
    frame.origin -= metres * up;
    return frame;
}

Proportions proportions_of(const catalogue::Catalogue& catalogue) {
    const auto share = [&](std::string_view name) { return catalogue.landmark(name); };
    return {share("eye"),
            share("chin"),
            share("acromion"),
            share("chest"),
            share("waist"),
            share("hip"),
            share("wrist"),
            share("crotch"),
            share("knee"),
            share("ankle"),
            share("shoulder_breadth"),
            share("hip_breadth"),
            share("head_breadth"),
            share("chest_depth"),
            share("sitting_height"),
            share("popliteal")};
}

std::vector<FigurePart> upper_body(const BodyFrame& frame, const Proportions& shares,
                                   bool arms_forward) {
    Mesh arms = arm(frame, shares, -1.0, arms_forward);
    arms.append(arm(frame, shares, 1.0, arms_forward));
    return {{Part::head, head(frame, shares)},
            {Part::neck, neck(frame, shares)},
            {Part::torso, torso(frame, shares)},
            {Part::arms, std::move(arms)}};
}

} // namespace throwline::stage
