#include "checks/floor_checks.h"
#include "support/floor_case.h"

#include <gtest/gtest.h>
#include <memory>

namespace throwline::checks {

using namespace support;

namespace {

/// A way out along y = 0 from x = 4 to 5 m; the plan asks for 0.9 m.
plan::Plan room_to_leave() {
    plan::Plan plan = small_room();
    put_door(plan, "dock").way_out = true;
    return plan;
}

/// A crate that stands in front of it from an x on, to the right, as deep as 0.5 m.
plan::Plan crate_from(double left_x_m) {
    plan::Plan plan = room_to_leave();
    put_box(plan, "crate", {left_x_m + 0.5, 0.6}, {1.0, 0.5, 1.0});
    return plan;
}

} // namespace

TEST(WayOut, AClearOneIsNotMentioned) {
    EXPECT_TRUE(found_by(way_out, room_to_leave()).empty());
}

TEST(WayOut, ACrateThatNarrowsItIsFound) {
    const auto findings = found_by(way_out, crate_from(4.6));
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].check, "way-out");
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"dock", "crate"}));
    EXPECT_LT((findings[0].at - Vec2{4.5, 0.6}).norm(), 1e-9);
    EXPECT_EQ(findings[0].message, "The way out dock is narrowed to 0.60 m by crate; the venue and "
                                   "local code say what must stay clear.");
}

// 0.60 m = 23.62 in.
TEST(WayOut, AnImperialPlanIsToldInFeet) {
    plan::Plan plan = crate_from(4.6);
    plan.units = UnitSystem::imperial;
    const auto findings = found_by(way_out, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_TRUE(says(findings[0].message, "1'-11 1/2\"")) << findings[0].message;
}

TEST(WayOut, TheWidthAskedForIsTheLimit) {
    EXPECT_TRUE(found_by(way_out, crate_from(4.9)).empty());
    EXPECT_EQ(found_by(way_out, crate_from(4.89)).size(), 1U);
    plan::Plan plan = crate_from(4.6);
    plan.targets.way_out_width = Length::metres(0.6);
    EXPECT_TRUE(found_by(way_out, plan).empty());
    plan.targets.way_out_width = Length::metres(0.61);
    EXPECT_EQ(found_by(way_out, plan).size(), 1U);
}

TEST(WayOut, ANarrowOpeningStaysClearAsWideAsItIs) {
    plan::Plan plan = crate_from(4.8);
    plan.room.openings[0].width = Length::metres(0.8);
    EXPECT_TRUE(found_by(way_out, plan).empty());
    std::get<plan::BoxPiece>(plan.scenery[0].shape).at.x() -= 0.02;
    EXPECT_EQ(found_by(way_out, plan).size(), 1U);
}

// 4.0 .. 4.2 and 4.6 .. 5.0 are taken.
TEST(WayOut, TheWidestGapCounts) {
    plan::Plan plan = crate_from(4.6);
    put_box(plan, "case", {3.7, 1.0}, {1.0, 0.3, 1.0});
    const auto findings = found_by(way_out, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"dock", "case", "crate"}));
    EXPECT_TRUE(says(findings[0].message, "narrowed to 0.40 m by case and crate"))
        << findings[0].message;
}

TEST(WayOut, WhatStandsAcrossItLeavesNothing) {
    const auto findings = found_by(way_out, crate_from(4.0));
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_TRUE(says(findings[0].message, "narrowed to 0.00 m")) << findings[0].message;
}

// The approach is 1.2 m deep.
TEST(WayOut, WhatStandsFartherAwayIsNotInIt) {
    plan::Plan plan = crate_from(4.0);
    std::get<plan::BoxPiece>(plan.scenery[0].shape).at.y() = 1.46;
    EXPECT_TRUE(found_by(way_out, plan).empty());
    std::get<plan::BoxPiece>(plan.scenery[0].shape).at.y() = 1.44;
    EXPECT_EQ(found_by(way_out, plan).size(), 1U);
}

TEST(WayOut, ARoomWalkedClockwiseHasTheSameWaysOut) {
    const auto findings = found_by(way_out, walked_clockwise(crate_from(4.6)));
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_TRUE(says(findings[0].message, "narrowed to 0.60 m")) << findings[0].message;
    EXPECT_LT((findings[0].at - Vec2{4.5, 0.6}).norm(), 1e-9);
    EXPECT_TRUE(found_by(way_out, walked_clockwise(crate_from(4.9))).empty());
}

TEST(WayOut, WhatHangsOverItOrLiesFlatIsNotInTheWay) {
    plan::Plan plan = crate_from(4.0);
    plan.scenery[0].elevation = Length::metres(2.1);
    EXPECT_TRUE(found_by(way_out, plan).empty());
    plan.scenery.clear();
    put_box(plan, "rug", {4.5, 0.6}, {1.0, 1.0, 0.02});
    EXPECT_TRUE(found_by(way_out, plan).empty());
}

TEST(WayOut, PeopleWalkAwayByThemselves) {
    plan::Plan plan = room_to_leave();
    put_person(plan, "bo", {4.5, 0.6}, Angle::degrees(90.0));
    EXPECT_TRUE(found_by(way_out, plan).empty());
    put_lamp_stand(plan, "1", {4.5, 0.6});
    EXPECT_EQ(things_of(found_by(way_out, plan)), (std::vector<std::string>{"dock", "1"}));
}

TEST(WayOut, ADoorThatNobodyCountsOnMayBeShutIn) {
    plan::Plan plan = crate_from(4.0);
    plan.room.openings[0].way_out = false;
    EXPECT_TRUE(found_by(way_out, plan).empty());
}

// A support of 0.3 m radius takes 4.0 .. 4.2 m in shot 1A and 4.0 .. 4.6 m in shot 1B.
TEST(WayOut, TheShotThatLeavesTheLeastIsTold) {
    plan::Plan plan = room_to_leave();
    put_shot(plan, "1A", {3.9, 0.6}, 20.0).aim = Vec3{3.9, 5.0, 1.5};
    put_shot(plan, "1B", {4.3, 0.6}, 20.0).aim = Vec3{4.3, 5.0, 1.5};
    const auto findings = found_by(way_out, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].shot, shot_id("1B"));
    EXPECT_TRUE(says(findings[0].message, "narrowed to 0.40 m by camera 1")) << findings[0].message;
}

TEST(WayOut, APlanWithoutBeatsIsLookedAtAllTheSame) {
    plan::Plan plan = crate_from(4.6);
    plan.people.clear();
    plan.beats.clear();
    const Analysis analysis =
        analyse(std::make_shared<const plan::Plan>(plan), test_catalogue()).value();
    EXPECT_TRUE(says(messages(analysis.findings), "narrowed to 0.60 m by crate"))
        << messages(analysis.findings);
    EXPECT_TRUE(says(messages(analysis.findings), "Door dock opens only"));
}

} // namespace throwline::checks
