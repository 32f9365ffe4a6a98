#include "edit/aim.h"
#include "edit/seen_thing.h"
#include "support/demo_plan.h"

#include <gtest/gtest.h>
#include <numbers>

namespace throwline::edit {
namespace {

using support::demo_plan;
using support::shipped_catalogue;

/// The cookery with one of its shots held.
struct HeldShot {
    plan::Plan plan = demo_plan("cookery.json");
    Context context{plan, shipped_catalogue(), {{"2"}, {"2A"}}};
    HeldAim held;

    explicit HeldShot(const std::string& shot = "2A") {
        context.now = {plan::find(plan, plan::Id<plan::Shot>{shot})->beats.front(), {shot}};
        held = held_aim(plan, view_in(plan));
    }
    stage::ShotView view_in(const plan::Plan& other) const {
        const stage::Stage stage =
            stage::raise(other, shipped_catalogue(), context.now.beat, context.now.shot);
        return *stage::view_of(other, shipped_catalogue(), stage,
                               *plan::find(other, context.now.shot));
    }
};

TEST(ShotLookedAt, IsThatOfTheChosenCamera) {
    const HeldShot shot;
    const std::vector<Thing> camera{{Kind::camera, "camera 3", 0}};
    EXPECT_EQ(shot_looked_at(shot.context, {}).name, "2A");
    EXPECT_EQ(shot_looked_at(shot.context, camera).name, "2B");
    const std::vector<Thing> lamp{{Kind::lamp, "lamp 1", 0}};
    EXPECT_EQ(shot_looked_at(shot.context, lamp).name, "2A");
}

TEST(ShotLookedAt, IsTheFirstOfTheBeatBetweenShots) {
    HeldShot shot;
    shot.context.now.shot = {};
    EXPECT_EQ(shot_looked_at(shot.context, {}).name, "2A");
    shot.context.now.beat = {};
    EXPECT_TRUE(shot_looked_at(shot.context, {}).empty());
}

TEST(CameraWithoutShot, IsTheOneAskedAbout) {
    HeldShot shot;
    plan::Camera spare = shot.plan.cameras.front();
    spare.id = {"camera 9"};
    spare.home = Vec2{1.0, 1.0};
    shot.plan.cameras.push_back(spare);
    const std::vector<Thing> camera{{Kind::camera, "camera 9", 0}};
    EXPECT_EQ(camera_without_shot(shot.context, camera).name, "camera 9");
    EXPECT_TRUE(shot_looked_at(shot.context, camera).empty());
    EXPECT_TRUE(camera_without_shot(shot.context, {}).empty());
}

TEST(AimedTowards, KeepsTheDistance) {
    const HeldShot shot;
    const Result<Step> step = aimed_towards(shot.context, shot.held, {3.0, 4.0, 0.0});
    ASSERT_TRUE(step);
    EXPECT_EQ(step->name, "Aim camera 2 in shot 2A");
    const Vec3 aim = std::get<Vec3>(plan::find(step->plan, plan::Id<plan::Shot>{"2A"})->aim);
    EXPECT_NEAR((aim - shot.held.view.pose.lens).norm(), shot.held.distance_m, 1e-9);
    EXPECT_NEAR(shot.view_in(step->plan).pose.pan.rad(), std::atan2(4.0, 3.0), 1e-9);
}

TEST(AimedTowards, RefusesStraightUp) {
    const HeldShot shot;
    EXPECT_FALSE(aimed_towards(shot.context, shot.held, Vec3::UnitZ()));
    EXPECT_FALSE(aimed_towards(shot.context, shot.held, Vec3::Zero()));
}

TEST(AimedOff, PansAndTiltsByWhatIsAsked) {
    const HeldShot shot;
    const Result<Step> step =
        aimed_off(shot.context, shot.held, Angle::degrees(3.0), Angle::degrees(-2.0));
    ASSERT_TRUE(step);
    const stage::ShotView after = shot.view_in(step->plan);
    EXPECT_NEAR(after.pose.pan.deg(), shot.held.view.pose.pan.deg() + 3.0, 1e-9);
    EXPECT_NEAR(after.pose.tilt.deg(), shot.held.view.pose.tilt.deg() - 2.0, 1e-9);
}

TEST(AimedOff, StopsShortOfStraightUp) {
    const HeldShot shot;
    const Result<Step> step = aimed_off(shot.context, shot.held, {}, Angle::degrees(170.0));
    ASSERT_TRUE(step);
    EXPECT_NEAR(shot.view_in(step->plan).pose.tilt.deg(), 85.0, 1e-6);
}

TEST(DirectionForDrag, BringsWhatWasTakenHoldOfUnderThePointer) {
    HeldShot shot;
    shot.held.view.pose.tilt = {};
    shot.held.view.frame = optics::Frame{shot.held.view.pose, shot.held.view.angle};
    const Vec2 from{0.2, 0.0};
    const Vec2 to{-0.5, 0.0};
    const Vec3 held = shot.held.view.frame.ray_direction(from);
    const Vec3 aim = direction_for_drag(shot.held.view, from, to);
    optics::CameraPose turned = shot.held.view.pose;
    turned.pan = Angle::radians(angle_of(floor_of(aim)));
    const optics::Frame frame{turned, shot.held.view.angle};
    EXPECT_NEAR((*frame.project(turned.lens + held) - to).norm(), 0.0, 1e-9);
}

TEST(DirectionForDrag, StayingIsNoTurn) {
    const HeldShot shot;
    const Vec3 aim = direction_for_drag(shot.held.view, {0.3, -0.4}, {0.3, -0.4});
    EXPECT_NEAR((aim - shot.held.view.frame.axes().forward).norm(), 0.0, 1e-9);
}

TEST(Zoomed, StaysWithinTheLens) {
    const HeldShot shot;
    const Result<Step> step = zoomed(shot.context, shot.held, 1e6);
    ASSERT_TRUE(step);
    const stage::ShotView after = shot.view_in(step->plan);
    EXPECT_EQ(after.focal, after.lens->focal_max);
    HeldAim at_end = shot.held;
    at_end.view = after;
    EXPECT_FALSE(zoomed(shot.context, at_end, 1.1));
}

TEST(Zoomed, SetsTheFocalLength) {
    const HeldShot shot;
    const Result<Step> step = zoomed(shot.context, shot.held, 1.25);
    ASSERT_TRUE(step);
    EXPECT_NEAR(shot.view_in(step->plan).focal.mm(), shot.held.view.focal.mm() * 1.25, 0.051);
    EXPECT_EQ(step->name.substr(0, 12), "Set shot 2A ");
}

TEST(Zoomed, APrimeSaysSo) {
    HeldShot shot;
    catalogue::Lens prime = *shot.held.view.lens;
    prime.focal_min = prime.focal_max = Length::millimetres(35.0);
    shot.held.view.lens = &prime;
    const Result<Step> step = zoomed(shot.context, shot.held, 1.1);
    ASSERT_FALSE(step);
    EXPECT_NE(step.error().message.find("35 mm and no other"), std::string::npos);
}

TEST(SeenThing, NamesWhatCanBeTakenHoldOf) {
    const plan::Plan plan = demo_plan("cookery.json");
    EXPECT_EQ(seen_thing(plan, {stage::OwnerKind::room, "wall 2"}), (Thing{Kind::wall, {}, 1}));
    EXPECT_EQ(seen_thing(plan, {stage::OwnerKind::room, plan.room.openings.front().id.name}),
              (Thing{Kind::opening, plan.room.openings.front().id.name, 0}));
    EXPECT_EQ(seen_thing(plan, {stage::OwnerKind::room, "floor"}), std::nullopt);
    EXPECT_EQ(seen_thing(plan, {stage::OwnerKind::cast, "Mara"}), (Thing{Kind::person, "Mara", 0}));
    EXPECT_EQ(seen_thing(plan, {stage::OwnerKind::boom, "boom"}), (Thing{Kind::boom, "boom", 0}));
}

} // namespace
} // namespace throwline::edit
