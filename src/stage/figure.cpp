#include "stage/figure.h"

#include "stage/body_frame.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace throwline::stage {

namespace {

/// Height of the seat of somebody who crouches, share of stature (own choice).
constexpr double kCrouchSeat = 0.17;
/// Feet of somebody who crouches stand this far in front of the body's middle (own choice).
constexpr double kCrouchFeetForward = 0.08;
/// Between the pupils, share of stature (ANSUR II means, from memory: 63 mm).
constexpr double kEyesApart = 0.037;
/// A whisker in front of the skin, so that the points are never inside their own mesh.
constexpr double kBeforeSkin_m = 0.0005;
/// Feet of somebody who sits stand below the knees.
constexpr double kSittingFeetForward = 0.24;

/// How a pose holds the body.
struct Posture {
    BodyFrame whole;
    /// The same, let down for who sits or crouches.
    BodyFrame upper;
    double lowered_m = 0.0;
};

BodyFrame upright(const Vec3& base, Angle facing, double stature_m) {
    const Vec3 forward = raised(unit_at(facing.rad()), 0.0);
    return {base, forward.cross(Vec3::UnitZ()), forward, Vec3::UnitZ(), stature_m};
}

/// On the back, feet towards the facing, face up, middle of the body over the mark.
BodyFrame on_back(const Vec3& base, Angle facing, double stature_m, const Proportions& shares) {
    const Vec3 ahead = raised(unit_at(facing.rad()), 0.0);
    const double half_depth_m = shares.chest_depth / 2.0 * stature_m;
    const Vec3 soles = base + ahead * (stature_m / 2.0) + Vec3::UnitZ() * half_depth_m;
    return {soles, ahead.cross(Vec3::UnitZ()), Vec3::UnitZ(), -ahead, stature_m};
}

Posture lowered(const BodyFrame& frame, double seat_height_m, const Proportions& shares) {
    const double standing_seat_m = (1.0 - shares.sitting_height) * frame.stature_m;
    const double lowered_m = standing_seat_m - seat_height_m;
    return {frame, frame.lowered_by(lowered_m), lowered_m};
}

Posture posture_of(const Figure& figure, double seat_height_m, const Proportions& shares) {
    const double stature_m = figure.stature.m();
    const BodyFrame frame = upright(figure.base, figure.facing, stature_m);
    switch (figure.pose) {
    case plan::Pose::stand:
        return {frame, frame, 0.0};
    case plan::Pose::sit:
        return lowered(frame, seat_height_m, shares);
    case plan::Pose::crouch:
        return lowered(frame, kCrouchSeat * stature_m, shares);
    case plan::Pose::lie: {
        const BodyFrame lying = on_back(figure.base, figure.facing, stature_m, shares);
        return {lying, lying, 0.0};
    }
    }
    return {frame, frame, 0.0};
}

void set_points(Figure& figure, const BodyFrame& frame, const Proportions& shares) {
    const double whisker = kBeforeSkin_m / frame.stature_m;
    const double eye_front = face_front(shares, shares.eye);
    const double half_apart = kEyesApart / 2.0;
    // The head is round seen from above, so eyes to the side lie further back.
    const double aside = half_apart / (shares.head_breadth / 2.0);
    const double side_front = eye_front * std::sqrt(1.0 - aside * aside) + whisker;
    const double face_height = (shares.eye + shares.chin) / 2.0;
    figure.crown = frame.at(0.0, 0.0, 1.0);
    figure.eyes = frame.at(0.0, eye_front + whisker, shares.eye);
    figure.left_eye = frame.at(-half_apart, side_front, shares.eye);
    figure.right_eye = frame.at(half_apart, side_front, shares.eye);
    // The jaw's lower edge; the egg of the head ends in a point there, a jaw does not.
    figure.chin = frame.at(0.0, face_front(shares, shares.chin + 0.01) + whisker, shares.chin);
    figure.face = frame.at(0.0, face_front(shares, face_height) + whisker, face_height);
    figure.chest = frame.at(0.0, shares.chest_depth / 2.0 + whisker, shares.chest);
}

std::vector<FigurePart> legs_of(const Figure& figure, const Posture& posture, double seat_height_m,
                                const Proportions& shares) {
    const double stature_m = figure.stature.m();
    switch (figure.pose) {
    case plan::Pose::stand:
    case plan::Pose::lie:
        return straight_legs(posture.whole, shares);
    case plan::Pose::sit:
        return bent_legs(posture.whole, shares, {seat_height_m / stature_m, kSittingFeetForward});
    case plan::Pose::crouch:
        return bent_legs(posture.whole, shares, {kCrouchSeat, kCrouchFeetForward});
    }
    return {};
}

} // namespace

double Figure::landmark_z_m(double share_of_stature) const {
    const double stature_m = stature.m();
    if (pose == plan::Pose::lie) {
        const double lift = std::clamp(share_of_stature, 0.0, 1.0);
        return soles_z_m + lift * (chest.z() - soles_z_m);
    }
    // What is below the seat of who sits takes the height that is left there, in proportion.
    const double standing_seat = std::max(seat_share, 0.0);
    if (share_of_stature < 0.0 || lowered_m == 0.0) {
        return soles_z_m + share_of_stature * stature_m;
    }
    if (share_of_stature < standing_seat) {
        const double seat_m = standing_seat * stature_m - lowered_m;
        return soles_z_m + share_of_stature / standing_seat * seat_m;
    }
    return soles_z_m + share_of_stature * stature_m - lowered_m;
}

Body raise_figure(const plan::Person& person, const plan::Mark& mark, Angle facing,
                  double soles_z_m, double seat_z_m, const catalogue::Catalogue& catalogue) {
    const Proportions shares = proportions_of(catalogue);
    const bool lies = mark.pose == plan::Pose::lie;
    const double seat_height_m = seat_z_m - soles_z_m;
    Body body;
    Figure& figure = body.figure;
    figure.person = person.id;
    figure.kind = person.kind;
    figure.pose = mark.pose;
    figure.stature = person.stature;
    figure.facing = facing;
    figure.soles_z_m = lies ? seat_z_m : soles_z_m;
    figure.seat_share = 1.0 - shares.sitting_height;
    figure.base = raised(mark.at, figure.soles_z_m);
    const Posture posture = posture_of(figure, seat_height_m, shares);
    figure.lowered_m = posture.lowered_m;
    set_points(figure, posture.upper, shares);
    const bool arms_forward = mark.pose == plan::Pose::sit || mark.pose == plan::Pose::crouch;
    body.parts = upper_body(posture.upper, shares, arms_forward);
    std::vector<FigurePart> legs = legs_of(figure, posture, seat_height_m, shares);
    std::move(legs.begin(), legs.end(), std::back_inserter(body.parts));
    return body;
}

double fitting_seat_m(Length stature, const catalogue::Catalogue& catalogue) {
    return catalogue.landmark("popliteal") * stature.m();
}

} // namespace throwline::stage
