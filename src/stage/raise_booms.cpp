#include "stage/raising.h"

namespace throwline::stage {

namespace {

/// Hands of an operator who holds the pole above the head, over the floor they stand on (common
/// practice, no source).
constexpr double kRaisedHands_m = 2.1;
/// A microphone in its windshield, hanging (common practice, no source).
constexpr double kMicrophoneLength_m = 0.25;
constexpr double kMicrophoneWidth_m = 0.06;
constexpr double kPoleRadius_m = 0.015;
/// Room that an operator takes on the floor (common practice, no source).
constexpr double kOperatorRadius_m = 0.3;

void raise_boom(Raising& raising, const plan::Boom& boom) {
    const Moment& moment = raising.moment;
    PlacedBoom placed;
    placed.boom = boom.id;
    placed.owner = raising.owner(OwnerKind::boom, boom.id.name);
    placed.microphone = raised(boom.microphone, boom.height.m());
    const double floor_m =
        plan::floor_height_at(moment.plan, moment.catalogue, boom.operator_at).m();
    placed.hands = raised(boom.operator_at, floor_m + kRaisedHands_m);
    placed.operator_outline = circle(boom.operator_at, kOperatorRadius_m, 16);
    const Angle facing = Angle::radians(angle_of(boom.microphone - boom.operator_at));
    Body body = standing_crew(moment, boom.operator_at, facing);
    for (FigurePart& part : body.parts) {
        raising.add(placed.owner, Part::boom_operator, std::move(part.mesh),
                    {kPersonReflectance, false});
    }
    const Surface black{kEquipmentReflectance, false};
    const double top_m = placed.microphone.z() + kMicrophoneLength_m;
    const Vec3 tip = raised(boom.microphone, top_m);
    raising.add(placed.owner, Part::pole, rod(placed.hands, tip, kPoleRadius_m, kPoleRadius_m, 6),
                black);
    raising.add(placed.owner, Part::microphone,
                upright_box(boom.microphone, kMicrophoneWidth_m, kMicrophoneWidth_m, facing.rad(),
                            placed.microphone.z(), top_m),
                black);
    raising.stage.booms.push_back(std::move(placed));
}

} // namespace

void raise_booms(Raising& raising) {
    for (const plan::Boom& boom : raising.moment.plan.booms) {
        if (is_on_floor(boom, raising.moment.beat)) {
            raise_boom(raising, boom);
        }
    }
}

} // namespace throwline::stage
