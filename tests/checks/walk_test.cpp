#include "checks/floor_checks.h"
#include "support/floor_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

/// Half of what ada takes across the shoulders: 0.284 x 1.70 m / 2.
constexpr double kHalfShoulders_m = 0.2414;

/// Ada walks straight from (5, 5) down to (5, 2).
plan::Plan straight_walk() {
    plan::Plan plan = small_room();
    walk_ada(plan, {5.0, 2.0});
    return plan;
}

/// The same with a table of 1 x 1 m whose left edge stands so far right of the walk's middle.
plan::Plan past_table(double left_edge_m) {
    plan::Plan plan = straight_walk();
    put_box(plan, "table", {5.0 + left_edge_m + 0.5, 3.5}, {1.0, 1.0, 0.75});
    return plan;
}

/// The same with a table of 1 x 1 m right across it.
plan::Plan through_table() {
    return past_table(-0.5);
}

} // namespace

// The strip is 0.4828 m wide and the table 1 m deep.
TEST(Walk, ATableInTheWayIsFound) {
    const auto findings = found_by(walk, through_table());
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].check, "walk");
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_EQ(findings[0].beat, beat_id("2"));
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"ada", "table"}));
    EXPECT_NEAR(findings[0].weight, 0.4828, 1e-6);
    EXPECT_LT((findings[0].at - Vec2{5.0, 3.5}).norm(), 1e-6);
    EXPECT_EQ(findings[0].message, "Ada walks through table on the way into beat 2.");
    EXPECT_EQ(findings[0].working.result, "0.48 m² shared");
}

// 0.4828 m² = 5.197 square feet; 0.4828 m = 19.008 in.
TEST(Walk, AnImperialPlanIsToldInFeet) {
    plan::Plan plan = through_table();
    plan.units = UnitSystem::imperial;
    const auto findings = found_by(walk, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].working.result, "5.2 sq ft shared");
    EXPECT_TRUE(says(text_of(findings[0].working), "1'-7\"")) << text_of(findings[0].working);
}

TEST(Walk, ShouldersDecideWhatIsPassed) {
    EXPECT_TRUE(found_by(walk, past_table(kHalfShoulders_m + 0.001)).empty());
    EXPECT_EQ(found_by(walk, past_table(kHalfShoulders_m - 0.01)).size(), 1U);
}

TEST(Walk, APathRoundTheTableIsNotMentioned) {
    plan::Plan plan = small_room();
    put_box(plan, "table", {5.0, 3.5}, {1.0, 1.0, 0.75});
    walk_ada(plan, {5.0, 2.0}, {{7.0, 5.0}, {7.0, 2.0}});
    const auto findings = found_by(walk, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(Walk, APathWithACornerOnTheTableIsFound) {
    plan::Plan plan = small_room();
    put_box(plan, "table", {5.0, 3.5}, {1.0, 1.0, 0.75});
    walk_ada(plan, {5.0, 2.0}, {{5.0, 3.5}});
    EXPECT_EQ(found_by(walk, plan).size(), 1U);
}

TEST(Walk, ATableThatSomebodyStandsAtIsNotWalkedThroughEither) {
    plan::Plan plan = straight_walk();
    std::get<plan::Mark>(plan.beats[0].marks.at(person_id("ada"))).at = {5.0, 4.2};
    put_box(plan, "table", {5.0, 3.5}, {1.0, 1.0, 0.75});
    const auto findings = found_by(walk, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"ada", "table"}));
}

TEST(Walk, TheEdgeOfTheTableOneStandsAtMayBeTouched) {
    plan::Plan plan = straight_walk();
    put_box(plan, "table", {5.0, 5.7}, {1.0, 1.0, 0.75});
    const auto findings = found_by(walk, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(Walk, NobodyWalksThroughTheChairTheyRiseFrom) {
    plan::Plan plan = straight_walk();
    put_item(plan, "chair", "dining chair", {5.0, 5.0});
    EXPECT_TRUE(found_by(walk, plan).empty());
    put_item(plan, "other chair", "dining chair", {5.0, 3.5});
    EXPECT_EQ(things_of(found_by(walk, plan)), (std::vector<std::string>{"ada", "other chair"}));
}

TEST(Walk, RisersAreSteppedOnAndLowThingsOver) {
    plan::Plan plan = straight_walk();
    put_riser(plan, "riser", {5.0, 3.5}, 0.4);
    put_box(plan, "rug", {5.0, 3.5}, {2.0, 2.0, 0.02});
    EXPECT_TRUE(found_by(walk, plan).empty());
}

TEST(Walk, WhatHangsOverEverybodysHeadIsNotInTheWay) {
    plan::Plan plan = straight_walk();
    put_box(plan, "sign", {5.0, 3.5}, {1.0, 1.0, 0.3}, 1.95);
    EXPECT_TRUE(found_by(walk, plan).empty());
    plan.people[0].stature = Length::metres(2.0);
    EXPECT_EQ(found_by(walk, plan).size(), 1U);
    plan.people[0].stature = Length::metres(1.7);
    plan.scenery[0].elevation = Length::metres(1.85);
    EXPECT_EQ(found_by(walk, plan).size(), 1U);
}

TEST(Walk, SomebodyWhoComesInIsFollowedFromTheFirstPointOfTheirPath) {
    plan::Plan plan = through_table();
    plan.beats[0].marks.clear();
    EXPECT_TRUE(found_by(walk, plan).empty());
    std::get<plan::Mark>(plan.beats[1].marks.at(person_id("ada"))).path = {{5.0, 7.0}};
    EXPECT_EQ(found_by(walk, plan).size(), 1U);
}

TEST(Walk, WhoeverStaysOrLeavesWalksThroughNothing) {
    plan::Plan plan = through_table();
    plan.beats[1].marks.clear();
    EXPECT_TRUE(found_by(walk, plan).empty());
    plan.beats[1].marks[person_id("ada")] = plan::OffFloor{};
    EXPECT_TRUE(found_by(walk, plan).empty());
}

TEST(Walk, APlanOfOneBeatHasNoWalks) {
    plan::Plan plan = through_table();
    plan.beats.pop_back();
    EXPECT_TRUE(found_by(walk, plan).empty());
}

} // namespace throwline::checks
