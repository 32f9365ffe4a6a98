#include "plan/differences.h"

#include "plan/any_plan.h"
#include "plan/places.h"
#include "support/small_plan.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::plan {
namespace {

std::vector<std::string> sentences(const Plan& old, const Plan& now) {
    std::vector<std::string> all;
    for (const Difference& difference : differences(old, now)) {
        all.push_back(difference.sentence);
    }
    return all;
}

using Sentences = std::vector<std::string>;

Lamp lamp(const std::string& id, const LampMount& mount, LampRole role = LampRole::key) {
    Lamp lamp;
    lamp.id = {id};
    lamp.instrument = "Fresnel 1 kW";
    lamp.mount = mount;
    lamp.role = role;
    return lamp;
}

/// A room of 10 by 8 m with a grid, two people, a camera with two shots, and three lamps.
Plan studio(UnitSystem units = UnitSystem::metric) {
    Plan plan = testing_support::bare_room();
    plan.units = units;
    plan.grid.emplace();
    plan.grid->pitch_x = plan.grid->pitch_y = Length::metres(1);
    plan.grid->columns = plan.grid->rows = 5;
    plan.grid->height = Length::metres(4);
    testing_support::add_person(plan, "Ana", {3, 4}, ThingName{"camera 1"});
    testing_support::add_person(plan, "Ben", {5, 4}, Angle::degrees(90));
    testing_support::add_camera(plan, "camera 1");
    testing_support::add_shot(plan, "1A", "camera 1", {4, 1}, {"Ana"});
    testing_support::add_shot(plan, "1B", "camera 1", {6, 1}, {"Ana", "Ben"});
    testing_support::add_scenery(plan, "table", testing_support::box_piece({4, 5}, 1, 1, 0.7));
    plan.lamps = {lamp("3", GridHang{"C2", Length::metres(0.5)}),
                  lamp("4", StandMount{{1, 1}, Length::metres(2), ""}, LampRole::fill)};
    return plan;
}

TEST(Differences, APlanDoesNotDifferFromItself) {
    EXPECT_TRUE(differences(studio(), studio()).empty());
}

RC_GTEST_PROP(Differences, NoPlanDiffersFromItself, ()) {
    const Plan plan = testing::any_plan();
    RC_ASSERT(differences(plan, plan).empty());
}

RC_GTEST_PROP(Differences, AreEmptyExactlyWhenPlansAreEqual, ()) {
    const Plan old = testing::any_plan();
    const Plan now = testing::any_plan();
    RC_ASSERT(differences(old, now).empty() == (old == now));
}

RC_GTEST_PROP(Differences, TellEachSentenceOnOneLine, ()) {
    for (const Difference& difference : differences(testing::any_plan(), testing::any_plan())) {
        RC_ASSERT(difference.sentence.find('\n') == std::string::npos);
        RC_ASSERT(difference.sentence.ends_with("."));
        RC_ASSERT(!difference.things.empty());
    }
}

TEST(Differences, AMoveIsToldInDirectionsOfTheSheet) {
    Plan now = studio();
    now.shots[0].at = {3.6, 1};
    EXPECT_EQ(sentences(studio(), now), Sentences{"Camera 1 in shot 1A moved 40 cm to the left."});
    now = studio();
    std::get<BoxPiece>(now.scenery[0].shape).at += Vec2{1.2, -0.025};
    EXPECT_EQ(sentences(studio(), now),
              Sentences{"Table moved 1.20 m to the right and 25 mm down the sheet."});
}

TEST(Differences, AMoveCarriesItsPlacesAndItsWorking) {
    Plan now = studio();
    now.shots[0].at = {7, 5};
    const auto all = differences(studio(), now);
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].change, Change::moved);
    ASSERT_EQ(all[0].things.size(), 1U);
    EXPECT_EQ(all[0].things[0].kind, ThingKind::shot);
    EXPECT_EQ(all[0].things[0].name, "1A");
    EXPECT_EQ(all[0].things[0].before, (std::vector<Vec2>{{4, 1}}));
    EXPECT_EQ(all[0].things[0].now, (std::vector<Vec2>{{7, 5}}));
    ASSERT_TRUE(all[0].working);
    // 3-4-5 triangle.
    EXPECT_EQ(all[0].working->result, "5.00 m");
}

TEST(Differences, LengthsAreInTheUnitsOfTheNewerPlan) {
    const Plan old = studio(UnitSystem::imperial);
    Plan now = old;
    std::get<StandMount>(now.lamps[1].mount).height += Length::inches(14);
    std::get<Mark>(now.beats[0].marks.at({"Ana"})).at.y() += Length::inches(16).m();
    EXPECT_EQ(sentences(old, now), (Sentences{"Ana's mark in beat 1 moved 1'-4\" up the sheet.",
                                              "Lamp 4 (fill) raised by 1'-2\"."}));
}

TEST(Differences, ALampIsToldByItsGridPositionAndItsFields) {
    Plan now = studio();
    now.lamps[0].mount = GridHang{"D2", Length::metres(0.75)};
    now.lamps[0].level = 0.6;
    now.lamps[0].circuit = {"C1"};
    now.lamps[0].channel = 7;
    EXPECT_EQ(
        sentences(studio(), now),
        (Sentences{"Lamp 3 (key) from grid C2 to grid D2.", "Lamp 3 (key) lowered by 25 cm.",
                   "Lamp 3 (key): level from 100 % to 60 %; circuit now C1; channel now 7."}));
}

TEST(Differences, AShotIsToldByItsLens) {
    Plan old = studio();
    old.shots[0].focal = Length::millimetres(35);
    old.shots[0].size = ShotSize::close_up;
    Plan now = old;
    now.shots[0].focal = Length::millimetres(50);
    now.shots[0].size.reset();
    EXPECT_EQ(sentences(old, now),
              Sentences{"Shot 1A: lens from 35 mm to 50 mm; size no longer close-up."});
}

TEST(Differences, AWallThatMovesIsOneDifferenceNotTwoCorners) {
    Plan now = studio();
    now.room.outline[2].x() += 0.025;
    now.room.outline[1].x() += 0.025;
    const auto all = differences(studio(), now);
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].sentence, "Wall 2 moved out by 25 mm.");
    ASSERT_TRUE(all[0].working);
    EXPECT_EQ(all[0].working->result, "25 mm");
    // Walked the other way round, out is still out.
    Plan old_other = studio();
    std::reverse(old_other.room.outline.begin(), old_other.room.outline.end());
    Plan now_other = old_other;
    now_other.room.outline[0].y() -= 0.5;
    now_other.room.outline[1].y() -= 0.5;
    EXPECT_EQ(sentences(old_other, now_other), Sentences{"Wall 1 moved in by 50 cm."});
}

TEST(Differences, ACornerThatMovesAloneIsToldAsSuch) {
    Plan now = studio();
    now.room.outline[2] += Vec2{0.3, 0.2};
    EXPECT_EQ(sentences(studio(), now),
              Sentences{"Corner 3 of the room moved 30 cm to the right and 20 cm up the sheet."});
}

TEST(Differences, ABeatIsToldByWhereItComes) {
    Plan old = studio();
    old.beats.push_back({{"2"}, "", {}, {}});
    Plan now = old;
    now.beats.push_back({{"3"}, "Tasting", {}, {}});
    EXPECT_EQ(sentences(old, now), Sentences{"Beat 3 (Tasting) added after beat 2."});
    EXPECT_EQ(sentences(now, old), Sentences{"Beat 3 (Tasting) removed."});
}

TEST(Differences, SomebodyNewIsToldOnceAndNotByEachMark) {
    Plan now = studio();
    testing_support::add_person(now, "Cleo", {1, 2}, Angle{});
    const auto all = differences(studio(), now);
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].sentence, "Cleo (cast) added.");
    EXPECT_EQ(all[0].things[0].now, (std::vector<Vec2>{{1, 2}}));
    EXPECT_EQ(sentences(now, studio()), Sentences{"Cleo (cast) removed."});
}

TEST(Differences, AMarkThatIsGoneTellsWhereThePersonStays) {
    Plan now = studio();
    now.beats.push_back({{"2"}, "", {}, {}});
    Plan old = now;
    old.beats[1].marks[{"Ana"}] = Mark{};
    EXPECT_EQ(sentences(old, now),
              Sentences{"Ana's mark in beat 2 removed; Ana stays as in beat 1."});
    now.beats[1].marks[{"Ana"}] = OffFloor{};
    EXPECT_EQ(sentences(old, now), Sentences{"Ana is off the floor in beat 2 now."});
}

TEST(Differences, WallsThatChangeAlikeAreToldTogether) {
    Plan now = studio();
    now.room.walls[0].thickness = now.room.walls[2].thickness = Length::metres(0.2);
    EXPECT_EQ(sentences(studio(), now),
              Sentences{"Walls 1 and 3: thickness from 0.10 m to 0.20 m."});
}

TEST(Differences, RunningOrderNamesTheFewestShots) {
    Plan old = studio();
    testing_support::add_shot(old, "2A", "camera 1", {6, 2}, {"Ben"});
    Plan now = old;
    std::swap(now.shots[1], now.shots[2]);
    const Sentences told = sentences(old, now);
    ASSERT_EQ(told.size(), 1U);
    EXPECT_TRUE(told[0] == "Running order: 2A now before 1B."
                || told[0] == "Running order: 1B now last.")
        << told[0];
}

TEST(Differences, WhatHasOnlyAnotherNameIsRenamed) {
    Plan now = studio();
    now.people[0].id = {"Anna"};
    now.beats[0].marks[{"Anna"}] = now.beats[0].marks.at({"Ana"});
    now.beats[0].marks.erase({"Ana"});
    now.shots[0].subjects = {{"Anna"}};
    now.shots[1].subjects = {{"Anna"}, {"Ben"}};
    EXPECT_EQ(sentences(studio(), now), Sentences{"Person Ana is now called Anna."});
}

TEST(Differences, SomethingElseUnderANewNameIsNotARename) {
    Plan now = studio();
    now.scenery[0].id = {"bench"};
    std::get<BoxPiece>(now.scenery[0].shape).width = Length::metres(2);
    EXPECT_EQ(sentences(studio(), now), (Sentences{"Table removed.", "Bench added: box."}));
}

TEST(Differences, ManyThingsThatMoveAlikeAreToldOnce) {
    const Plan old = studio(UnitSystem::imperial);
    const auto all = differences(old, moved(old, {Length::feet(2).m(), 0}, Angle{}));
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].sentence,
              "8 things moved together 2'-0\" to the right: room, pipe grid, table, Ana's mark in "
              "beat 1, Ben's mark in beat 1, camera 1 in shot 1A, camera 1 in shot 1B and lamp 4 "
              "(fill).");
    EXPECT_EQ(all[0].things.size(), 8U);
    EXPECT_TRUE(all[0].working);
}

TEST(Differences, WhatHardlyMovesIsSummedUp) {
    Plan now = studio();
    now.shots[0].at.x() += 0.0009;
    std::get<BoxPiece>(now.scenery[0].shape).turn = Angle::degrees(0.04);
    now.shots[1].at.x() += 0.0011;
    const auto all = differences(studio(), now);
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all[0].sentence, "Camera 1 in shot 1B moved 1.1 mm to the right.");
    EXPECT_EQ(all[1].sentence, "2 things moved by less than 1 mm or turned by less than 0.05°: "
                               "table and camera 1 in shot 1A.");
}

TEST(Differences, ValuesThatShowAlikeAreToldExactly) {
    Plan now = studio();
    now.lamps[0].level = 0.9999;
    now.people[0].stature = Length::metres(1.7001);
    EXPECT_EQ(sentences(studio(), now), (Sentences{"Ana: stature from 1.7 m to 1.7001 m.",
                                                   "Lamp 3 (key): level from 1 to 0.9999."}));
}

TEST(Differences, ATurnIsToldTheShorterWayRound) {
    Plan now = studio();
    std::get<BoxPiece>(now.scenery[0].shape).turn = Angle::degrees(350);
    std::get<Mark>(now.beats[0].marks.at({"Ben"})).faces = Angle::degrees(120);
    EXPECT_EQ(sentences(studio(), now), (Sentences{"Table turned 10° clockwise.",
                                                   "Ben in beat 1 turned 30° anticlockwise."}));
}

TEST(Differences, OutletsComeGoAndMove) {
    Plan old = studio();
    old.circuits = {{{"C1"}, 230, 16, true, {{1, 0}, {2, 0}}, {}}};
    Plan now = old;
    now.circuits[0].outlets = {{1, 0}, {2, 0}, {3, 0}};
    EXPECT_EQ(sentences(old, now), Sentences{"Outlet of circuit C1 added."});
    EXPECT_EQ(sentences(now, old), Sentences{"Outlet of circuit C1 removed."});
    now.circuits[0].outlets = {{1, 0}, {2.5, 0}};
    EXPECT_EQ(sentences(old, now), Sentences{"Outlet of circuit C1 moved 50 cm to the right."});
}

TEST(Differences, TheWeightiestComesFirstInEachKind) {
    Plan old = studio();
    testing_support::add_scenery(old, "shelf", testing_support::box_piece({2, 2}, 1, 1, 2));
    Plan now = old;
    std::get<BoxPiece>(now.scenery[0].shape).at.x() += 0.1;
    std::get<BoxPiece>(now.scenery[1].shape).at.x() -= 0.7;
    testing_support::add_scenery(now, "stool", testing_support::box_piece({5, 5}, 1, 1, 1));
    now.room.height = Length::metres(5);
    now.title = "another title";
    EXPECT_EQ(sentences(old, now),
              (Sentences{"Room: height from 4.00 m to 5.00 m.", "Stool added: box.",
                         "Shelf moved 70 cm to the left.", "Table moved 10 cm to the right.",
                         "Production: title from \"bare room\" to \"another title\"."}));
}

} // namespace
} // namespace throwline::plan
