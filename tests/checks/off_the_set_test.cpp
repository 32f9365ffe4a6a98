#include "checks/camera_checks.h"
#include "checks/undressed.h"
#include "support/check_case.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

/// One run of flats with its dressed face on the line y = 7, from `right_x` to the left, in a room
/// that may not be seen. Floor and people may.
plan::Plan before_flats(double right_x, double width_m, double height_m,
                        Angle heading = Angle::degrees(180.0)) {
    plan::Plan plan = small_room(12.0);
    for (plan::Wall& wall : plan.room.walls) {
        wall.dressed = false;
    }
    plan.room.ceiling_dressed = false;
    plan::Scenery flats;
    flats.id = {"back wall"};
    plan::FlatRun run;
    run.from = Vec2{right_x, 7.0};
    run.heading = heading;
    run.widths = {Length::metres(width_m)};
    run.height = Length::metres(height_m);
    flats.shape = run;
    plan.scenery.push_back(flats);
    put_shot(plan, "1A", Vec2{5.0, 1.0}, 8.0);
    return plan;
}

std::optional<MoreSet> more_on(const plan::Plan& plan, FrameSide side) {
    const RaisedPlan raised = raised_plan(plan, test_catalogue());
    const ShotScene& scene = raised.shots.at(0);
    return more_set_for(scene, scene.view.value(), undressed_in(scene), side);
}

Undressed seen_undressed(const plan::Plan& plan) {
    const RaisedPlan raised = raised_plan(plan, test_catalogue());
    return undressed_in(raised.shots.at(0));
}

double share_at(const Undressed& undressed, FrameSide side) {
    return undressed.shares[static_cast<std::size_t>(side)];
}

} // namespace

TEST(OffTheSet, ASetThatFillsTheFrameIsNotMentioned) {
    const auto findings = found_by(off_the_set, before_flats(9.0, 8.0, 3.8));
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

// 8 mm on 9.59 x 5.39 mm, flats 6 m away: the frame is 7.19 m wide and 4.04 m high there, so it
// reaches from x = 1.40 to 8.60 m and up to 3.52 m.
TEST(OffTheSet, EachSideSaysHowMuchMoreSetItNeeds) {
    const plan::Plan plan = before_flats(7.0, 4.0, 3.0);
    ASSERT_TRUE(more_on(plan, FrameSide::left).has_value());
    EXPECT_NEAR(more_on(plan, FrameSide::left)->extent.m(), 1.596, 0.01);
    ASSERT_TRUE(more_on(plan, FrameSide::right).has_value());
    EXPECT_NEAR(more_on(plan, FrameSide::right)->extent.m(), 1.596, 0.01);
    ASSERT_TRUE(more_on(plan, FrameSide::top).has_value());
    EXPECT_NEAR(more_on(plan, FrameSide::top)->extent.m(), 0.521, 0.01);
    EXPECT_FALSE(more_on(plan, FrameSide::bottom).has_value());
    const auto findings = found_by(off_the_set, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].things.front(), "back wall");
    EXPECT_TRUE(says(findings[0].message, "at the left (back wall would have to be 1.60 m longer"))
        << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "at the top (back wall would have to be 0.52 m higher)"))
        << findings[0].message;
}

// The gap at the left alone: from x = 1.40 to 3.00 m of 7.19 m, above the floor's far edge.
TEST(OffTheSet, OneOpenSideIsTheOnlyOneNamed) {
    const Undressed undressed = seen_undressed(before_flats(9.0, 6.0, 3.8));
    EXPECT_GT(share_at(undressed, FrameSide::left), 0.1);
    EXPECT_EQ(share_at(undressed, FrameSide::right), 0.0);
    EXPECT_NEAR(share_at(undressed, FrameSide::left), undressed.share, 0.005);
}

TEST(OffTheSet, AGapBetweenFlatsIsInTheMiddle) {
    plan::Plan plan = before_flats(9.0, 3.5, 3.8);
    plan::Scenery second = plan.scenery.front();
    second.id = {"second wall"};
    std::get<plan::FlatRun>(second.shape).from = Vec2{5.2, 7.0};
    std::get<plan::FlatRun>(second.shape).widths = {Length::metres(4.2)};
    plan.scenery.push_back(second);
    const Undressed undressed = seen_undressed(plan);
    EXPECT_GT(undressed.share, 0.01);
    EXPECT_NEAR(share_at(undressed, FrameSide::middle), undressed.share, 0.002);
}

TEST(OffTheSet, TheBackOfAFlatIsNotTheSet) {
    const Undressed undressed = seen_undressed(before_flats(1.0, 8.0, 3.8, Angle::degrees(0.0)));
    EXPECT_GT(undressed.share, 0.5);
}

TEST(OffTheSet, NobodyIsToldToBuildOnToATable) {
    plan::Plan plan = before_flats(7.0, 4.0, 3.0);
    plan.scenery.clear();
    put_box(plan, "table", Vec2{5.0, 6.0}, Vec3{3.0, 0.8, 0.75});
    EXPECT_GT(seen_undressed(plan).share, 0.3);
    for (const FrameSide side : kFrameSides) {
        EXPECT_FALSE(more_on(plan, side).has_value());
    }
}

TEST(OffTheSet, APersonInFrontOfAnOpenWallDoesNotDressIt) {
    plan::Plan plan = before_flats(7.0, 4.0, 3.0);
    const double before = seen_undressed(plan).share;
    put_person(plan, "bo", Vec2{2.2, 6.0}, Angle::degrees(-90.0));
    const auto findings = found_by(off_the_set, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_LT(seen_undressed(plan).share, before);
    EXPECT_NEAR(more_on(plan, FrameSide::left).value().extent.m(), 1.596, 0.01);
}

// What the finding asks for is what clears it, also for a tilted camera and flats that stand askew
// (as far as they can go on before they reach the walls of the room).
RC_GTEST_PROP(OffTheSet, SoMuchMoreSetFillsTheSide, ()) {
    const double turn_deg = *rc::gen::inRange(-8, 21);
    const double aim_z_m = *rc::gen::inRange(80, 160) / 100.0;
    plan::Plan plan = before_flats(9.5, 6.0, 3.9, Angle::degrees(180.0 + turn_deg));
    plan.shots[0].aim = Vec3{5.0, 5.0, aim_z_m};
    const std::optional<MoreSet> more = more_on(plan, FrameSide::left);
    RC_PRE(more.has_value() && share_at(seen_undressed(plan), FrameSide::left) > 0.01);
    auto& run = std::get<plan::FlatRun>(plan.scenery[0].shape);
    run.widths[0] = run.widths[0] + more->extent + Length::millimetres(30.0);
    RC_ASSERT(share_at(seen_undressed(plan), FrameSide::left) < 0.001);
}

} // namespace throwline::checks
