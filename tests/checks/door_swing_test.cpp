#include "checks/floor_checks.h"
#include "support/floor_case.h"

#include <cmath>
#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

/// The door along y = 0 from x = 4 to 5 m and a post of 10 x 10 cm.
plan::Plan door_and_post(const Vec2& post) {
    plan::Plan plan = small_room();
    put_door(plan, "shop");
    put_box(plan, "post", post, {0.1, 0.1, 1.0});
    return plan;
}

/// So far does a leaf hinged at the origin open before it meets a corner (along the shut leaf, away
/// from the wall).
double opens_deg(double along_m, double away_m) {
    return Angle::radians(std::atan2(away_m, along_m)).deg();
}

/// A comb beyond the leaf's reach with a short, thick tooth near the hinge and a long, thin one far
/// from it.
Polygon comb(bool hinge_at_start) {
    Polygon outline;
    for (const Vec2& corner : {Vec2{0.1, 0.8}, Vec2{0.2, 0.8}, Vec2{0.2, 1.2}, Vec2{0.88, 1.2},
                               Vec2{0.88, 0.3}, Vec2{0.9, 0.3}, Vec2{0.9, 1.3}, Vec2{0.1, 1.3}}) {
        outline.push_back({hinge_at_start ? 4.0 + corner.x() : 5.0 - corner.x(), corner.y()});
    }
    return outline;
}

void expect_opens_to(const plan::Plan& plan, double expected_deg) {
    const auto findings = found_by(door_swing, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"shop", "post"}));
    EXPECT_NEAR(findings[0].weight, 1.0 - expected_deg / 90.0, 1e-6) << findings[0].message;
}

} // namespace

// Its corner nearest to the shut leaf is 0.55 m along it and 0.45 m away: 39.3 degrees.
TEST(DoorSwing, APostInTheSectorStopsTheLeaf) {
    const auto findings = found_by(door_swing, door_and_post({4.5, 0.5}));
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].check, "door-swing");
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].message, "Door shop opens only to 39° of 90° before it meets post.");
    EXPECT_LT((findings[0].at - Vec2{4.5, 0.5}).norm(), 1e-6);
    expect_opens_to(door_and_post({4.5, 0.5}), opens_deg(0.55, 0.45));
}

TEST(DoorSwing, TheHingeDecidesTheAngle) {
    plan::Plan plan = door_and_post({4.3, 0.5});
    expect_opens_to(plan, opens_deg(0.35, 0.45));
    plan.room.openings[0].swing->hinge_at_start = false;
    expect_opens_to(plan, opens_deg(0.75, 0.45));
}

TEST(DoorSwing, ARoomWalkedClockwiseHasTheSameDoors) {
    for (const bool at_start : {true, false}) {
        plan::Plan plan = door_and_post({4.3, 0.5});
        plan.room.openings[0].swing->hinge_at_start = at_start;
        expect_opens_to(walked_clockwise(plan), opens_deg(at_start ? 0.35 : 0.75, 0.45));
    }
}

TEST(DoorSwing, ADoorThatOpensOutMeetsWhatStandsOutside) {
    plan::Plan plan = door_and_post({4.5, 0.5});
    plan.room.openings[0].swing->inward = false;
    EXPECT_TRUE(found_by(door_swing, plan).empty());
    std::get<plan::BoxPiece>(plan.scenery[0].shape).at = {4.5, -0.5};
    expect_opens_to(plan, opens_deg(0.55, 0.45));
    EXPECT_EQ(found_by(door_swing, plan).at(0).severity, Severity::caution);
    plan.room.openings[0].way_out = true;
    EXPECT_EQ(found_by(door_swing, plan).at(0).severity, Severity::error);
    expect_opens_to(walked_clockwise(plan), opens_deg(0.55, 0.45));
}

// Its near corner lies d metres from the hinge along the diagonal.
TEST(DoorSwing, TheLeafReachesAsFarAsItIsWide) {
    const auto at_diagonal = [](double corner_m) {
        const double middle_m = corner_m * std::sqrt(0.5) + 0.05;
        return door_and_post({4.0 + middle_m, middle_m});
    };
    EXPECT_EQ(found_by(door_swing, at_diagonal(0.94)).size(), 1U);
    EXPECT_TRUE(found_by(door_swing, at_diagonal(1.001)).empty());
}

TEST(DoorSwing, ADoorNeedNotOpenFartherThanThePlanSays) {
    plan::Plan plan = door_and_post({4.5, 0.5});
    plan.room.openings[0].swing->widest = Angle::degrees(39.0);
    EXPECT_TRUE(found_by(door_swing, plan).empty());
    plan.room.openings[0].swing->widest = Angle::degrees(50.0);
    EXPECT_EQ(found_by(door_swing, plan).size(), 1U);
}

TEST(DoorSwing, ADoorMayOpenBeyondARightAngle) {
    plan::Plan plan = door_and_post({3.5, 0.5});
    EXPECT_TRUE(found_by(door_swing, plan).empty());
    plan.room.openings[0].swing->widest = Angle::degrees(170.0);
    const auto findings = found_by(door_swing, plan);
    ASSERT_EQ(findings.size(), 1U);
    // Corner at (-0.45, 0.55) from the hinge: 90 + 39.3 degrees.
    EXPECT_TRUE(says(findings[0].message, "only to 129° of 170°")) << findings[0].message;
}

TEST(DoorSwing, ARugAndASignOverTheHeadAreNotMet) {
    plan::Plan plan = door_and_post({4.5, 0.5});
    plan.scenery[0].elevation = Length::metres(2.1);
    EXPECT_TRUE(found_by(door_swing, plan).empty());
    plan.scenery[0].elevation = Length::metres(2.0);
    EXPECT_EQ(found_by(door_swing, plan).size(), 1U);
    plan.scenery.clear();
    put_box(plan, "rug", {4.5, 0.5}, {0.8, 0.8, 0.02});
    EXPECT_TRUE(found_by(door_swing, plan).empty());
    put_riser(plan, "riser", {4.5, 1.5}, 0.2);
    EXPECT_EQ(things_of(found_by(door_swing, plan)), (std::vector<std::string>{"shop", "riser"}));
}

TEST(DoorSwing, AnOpeningWithoutALeafStopsAtNothing) {
    plan::Plan plan = door_and_post({4.5, 0.5});
    plan.room.openings[0].swing.reset();
    EXPECT_TRUE(found_by(door_swing, plan).empty());
}

// The comb's long tooth is 0.88 to 0.9 m from the hinge along the shut leaf and comes down to 0.3
// m: atan(0.3 / 0.9) = 18.4 degrees. That the leaf meets more of the other must not matter.
TEST(DoorSwing, OfAThingMetInTwoPlacesTheNearerCounts) {
    for (const bool at_start : {true, false}) {
        plan::Plan plan = door_and_post({8.0, 6.0});
        plan.room.openings[0].swing->hinge_at_start = at_start;
        plan.scenery[0].shape = plan::PrismPiece{comb(at_start), Length::metres(1.0)};
        expect_opens_to(plan, opens_deg(0.9, 0.3));
    }
}

TEST(DoorSwing, TheBeatThatLeavesTheLeastIsTold) {
    plan::Plan plan = small_room();
    put_door(plan, "shop door");
    std::get<plan::Mark>(plan.beats[0].marks.at(person_id("ada"))).at = {4.3, 0.9};
    walk_ada(plan, {4.8, 0.5});
    const auto findings = found_by(door_swing, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].beat, beat_id("2"));
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"shop door", "ada"}));
    EXPECT_TRUE(says(findings[0].message, "Shop door opens only")) << findings[0].message;
}

TEST(DoorSwing, ACameraInItsWayIsToldWithItsShot) {
    plan::Plan plan = small_room();
    put_door(plan, "shop");
    put_shot(plan, "1A", {2.0, 2.0}, 20.0);
    put_shot(plan, "1B", {4.9, 0.9}, 20.0);
    const auto findings = found_by(door_swing, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].shot, shot_id("1B"));
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"shop", "camera 1"}));
}

} // namespace throwline::checks
