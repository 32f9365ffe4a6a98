#include "checks/floor_checks.h"
#include "support/floor_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

/// Two crates of 1 x 1 x 1 m; the second one's middle lies so far right of the first one's.
plan::Plan two_crates(double apart_m) {
    plan::Plan plan = small_room();
    put_box(plan, "crate", {2.0, 2.0}, {1.0, 1.0, 1.0});
    put_box(plan, "case", {2.0 + apart_m, 2.0}, {1.0, 1.0, 1.0});
    return plan;
}

/// Bo alone in the room with a pose at (2, 2).
plan::Plan bo_who(plan::Pose pose) {
    plan::Plan plan = small_room();
    put_person(plan, "bo", {2.0, 2.0}, Angle::degrees(-90.0));
    std::get<plan::Mark>(plan.beats[0].marks.at(person_id("bo"))).pose = pose;
    return plan;
}

void put_flats(plan::Plan& plan, const std::string& name, const Vec2& from, double heading_deg) {
    plan::FlatRun run;
    run.from = from;
    run.heading = Angle::degrees(heading_deg);
    run.widths = {Length::metres(1.2), Length::metres(1.2)};
    run.height = Length::metres(3.0);
    plan::Scenery& flats = plan.scenery.emplace_back();
    flats.id = {name};
    flats.shape = run;
}

plan::Boom& put_boom(plan::Plan& plan, const std::string& name, const Vec2& at) {
    plan::Boom& boom = plan.booms.emplace_back();
    boom.id = {name};
    boom.operator_at = at;
    boom.microphone = at + Vec2{2.0, 0.0};
    return boom;
}

} // namespace

TEST(FloorOverlap, TwoCratesInOnePlaceAreFound) {
    const auto findings = found_by(floor_overlap, two_crates(0.5));
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].check, "floor-overlap");
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"crate", "case"}));
    EXPECT_NEAR(findings[0].weight, 0.5, 1e-9);
    EXPECT_LT((findings[0].at - Vec2{2.25, 2.0}).norm(), 1e-9);
    EXPECT_EQ(findings[0].message,
              "Crate and case are in the same place: they share 0.50 m² of floor.");
}

// 0.5 m² = 5.38 square feet.
TEST(FloorOverlap, AnImperialPlanIsToldInSquareFeet) {
    plan::Plan plan = two_crates(0.5);
    plan.units = UnitSystem::imperial;
    const auto findings = found_by(floor_overlap, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_TRUE(says(findings[0].message, "share 5.4 sq ft of floor")) << findings[0].message;
}

TEST(FloorOverlap, ACentimetreIsTouching) {
    EXPECT_TRUE(found_by(floor_overlap, two_crates(1.0)).empty());
    EXPECT_TRUE(found_by(floor_overlap, two_crates(0.991)).empty());
    EXPECT_EQ(found_by(floor_overlap, two_crates(0.989)).size(), 1U);
}

TEST(FloorOverlap, WhatStandsOnTopIsNotInTheSamePlace) {
    plan::Plan plan = two_crates(0.5);
    plan.scenery[1].elevation = Length::metres(0.98);
    EXPECT_TRUE(found_by(floor_overlap, plan).empty());
    plan.scenery[1].elevation = Length::metres(0.96);
    EXPECT_EQ(found_by(floor_overlap, plan).size(), 1U);
}

TEST(FloorOverlap, WhatHangsAboveAHeadIsNot) {
    plan::Plan plan = small_room();
    put_box(plan, "sign", {5.0, 5.0}, {1.0, 1.0, 0.5}, 1.72);
    EXPECT_TRUE(found_by(floor_overlap, plan).empty());
    plan.scenery[0].elevation = Length::metres(1.5);
    EXPECT_EQ(things_of(found_by(floor_overlap, plan)), (std::vector<std::string>{"ada", "sign"}));
}

TEST(FloorOverlap, OnlyASitterSharesAChair) {
    plan::Plan plan = bo_who(plan::Pose::sit);
    put_item(plan, "chair", "dining chair", {2.0, 2.0});
    EXPECT_TRUE(found_by(floor_overlap, plan).empty()) << messages(found_by(floor_overlap, plan));
    plan = bo_who(plan::Pose::stand);
    put_item(plan, "chair", "dining chair", {2.0, 2.0});
    EXPECT_EQ(things_of(found_by(floor_overlap, plan)), (std::vector<std::string>{"bo", "chair"}));
}

// The chair is 0.52 m deep and the table's edge 0.6 m from its middle.
TEST(FloorOverlap, AChairIsPushedUnderATableButNotWhole) {
    plan::Plan plan = small_room();
    put_item(plan, "table", "round table 1.2", {2.0, 2.0});
    put_item(plan, "chair", "dining chair", {2.0, 1.35});
    EXPECT_TRUE(found_by(floor_overlap, plan).empty());
    std::get<plan::StockPiece>(plan.scenery[1].shape).at = {2.0, 2.0};
    EXPECT_EQ(things_of(found_by(floor_overlap, plan)),
              (std::vector<std::string>{"table", "chair"}));
}

TEST(FloorOverlap, SomebodyLiesOnABedButNotInACrate) {
    plan::Plan plan = bo_who(plan::Pose::lie);
    put_item(plan, "bed", "double bed", {2.0, 2.0});
    EXPECT_TRUE(found_by(floor_overlap, plan).empty()) << messages(found_by(floor_overlap, plan));
    plan.scenery.clear();
    put_box(plan, "crate", {2.0, 2.0}, {0.5, 0.5, 1.0});
    EXPECT_EQ(things_of(found_by(floor_overlap, plan)), (std::vector<std::string>{"bo", "crate"}));
}

TEST(FloorOverlap, EverythingStandsOnARiser) {
    plan::Plan plan = small_room();
    put_riser(plan, "riser", {5.0, 5.0}, 0.4);
    put_riser(plan, "low riser", {2.0, 2.0}, 0.2);
    put_riser(plan, "high riser", {8.0, 2.0}, 0.6);
    put_lamp_stand(plan, "1", {2.0, 2.0});
    put_boom(plan, "boom", {8.0, 2.0});
    put_riser(plan, "camera riser", {5.0, 2.0}, 0.3);
    put_shot(plan, "1A", {5.0, 2.0}, 20.0);
    const auto findings = found_by(floor_overlap, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
    put_box(plan, "crate", {2.8, 2.8}, {0.3, 0.3, 1.0});
    EXPECT_EQ(things_of(found_by(floor_overlap, plan)),
              (std::vector<std::string>{"low riser", "crate"}));
}

TEST(FloorOverlap, FlatsAreJoinedInACorner) {
    plan::Plan plan = small_room();
    put_flats(plan, "back", {4.0, 7.0}, 180.0);
    put_flats(plan, "return", {1.62, 7.03}, -90.0);
    EXPECT_TRUE(found_by(floor_overlap, plan).empty()) << messages(found_by(floor_overlap, plan));
    put_flats(plan, "twin", {3.0, 7.0}, 180.0);
    const auto findings = found_by(floor_overlap, plan);
    EXPECT_TRUE(says(messages(findings), "Back and twin are in the same place: they share 0.07 m²"))
        << messages(findings);
}

TEST(FloorOverlap, InACrowdOnlyThoseInOnePlaceAreFound) {
    plan::Plan plan = small_room();
    for (int i = 0; i < 40; ++i) {
        const int row = i / 8;
        put_person(plan, "extra " + std::to_string(i), {1.0 + i % 8, 0.5 + row},
                   Angle::degrees(-90.0));
    }
    EXPECT_TRUE(found_by(floor_overlap, plan).empty()) << messages(found_by(floor_overlap, plan));
    std::get<plan::Mark>(plan.beats[0].marks.at(person_id("extra 7"))).at = {7.1, 0.5};
    EXPECT_EQ(things_of(found_by(floor_overlap, plan)),
              (std::vector<std::string>{"extra 6", "extra 7"}));
}

TEST(FloorOverlap, WhatReachesThroughAWallIsFoundEitherWayRound) {
    plan::Plan plan = small_room();
    put_box(plan, "crate", {0.0, 2.0}, {1.0, 1.0, 1.0});
    for (const plan::Plan& room : {plan, walked_clockwise(plan)}) {
        const auto findings = found_by(floor_overlap, room);
        ASSERT_EQ(findings.size(), 1U) << messages(findings);
        EXPECT_EQ(findings[0].severity, Severity::error);
        EXPECT_EQ(findings[0].message, "50 % of crate is outside the room or in its walls.");
        EXPECT_LT((findings[0].at - Vec2{-0.25, 2.0}).norm(), 1e-9);
    }
}

// A tripod needs 0.6 m and its operator 0.7 m more behind it.
TEST(FloorOverlap, AnOperatorAgainstTheWallIsACaution) {
    plan::Plan plan = small_room();
    plan.cameras[0].support = "tripod";
    put_shot(plan, "1A", {5.0, 0.8}, 20.0);
    const auto findings = found_by(floor_overlap, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_TRUE(says(findings[0].message, "of the operator of camera 1 is outside"))
        << findings[0].message;
    plan.shots[0].at = {5.0, 2.0};
    EXPECT_TRUE(found_by(floor_overlap, plan).empty());
}

TEST(FloorOverlap, ThingsAreCalledByTheirKindOnce) {
    plan::Plan plan = small_room();
    put_lamp_stand(plan, "1", {5.0, 5.0});
    EXPECT_TRUE(says(messages(found_by(floor_overlap, plan)), "the stand of lamp 1 are"));
    plan.lamps[0].id = {"key lamp"};
    EXPECT_TRUE(says(messages(found_by(floor_overlap, plan)), "the stand of key lamp are"));
    plan.lamps.clear();
    put_boom(plan, "B", {5.0, 5.0});
    EXPECT_TRUE(says(messages(found_by(floor_overlap, plan)), "the operator of boom B are"));
}

TEST(FloorOverlap, WhatStaysIsToldOnceAndWhatMovesAgain) {
    plan::Plan plan = small_room();
    put_box(plan, "crate", {5.0, 5.0}, {2.0, 2.0, 1.0});
    walk_ada(plan, {5.05, 5.0});
    ASSERT_EQ(found_by(floor_overlap, plan).size(), 1U);
    EXPECT_EQ(found_by(floor_overlap, plan)[0].beat, beat_id("1"));
    std::get<plan::Mark>(plan.beats[1].marks.at(person_id("ada"))).at = {5.5, 5.0};
    EXPECT_EQ(found_by(floor_overlap, plan).size(), 2U);
}

} // namespace throwline::checks
