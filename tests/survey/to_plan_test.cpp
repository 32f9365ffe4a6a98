#include "survey/to_plan.h"

#include "base/text_file.h"
#include "plan/read_plan.h"
#include "support/shipped_catalogue.h"
#include "survey/recce_text.h"

#include <algorithm>
#include <fmt/format.h>
#include <gtest/gtest.h>

namespace throwline::survey {
namespace {

/// An oblong of 5 by 4 m, read without error, anticlockwise from the lower left.
std::string room_with(const std::string& lines, const std::string& way = "") {
    return fmt::format("corners A B C D {}\nA-B 5m\nB-C 4m\nC-D 5m\nD-A 4m\nA-C 6.403124m\n"
                       "B-D 6.403124m\nheight 2.5m\n{}",
                       way, lines);
}

RecceResult result_of(const std::string& text) {
    const auto recce = read_recce(text);
    EXPECT_TRUE(recce) << (recce ? "" : text_of(recce.error().front()));
    return surveyed(recce->survey).value();
}

std::string errors_of(const Errors& errors) {
    std::string text;
    for (const Error& error : errors) {
        text += text_of(error) + "\n";
    }
    return text;
}

plan::Plan plan_from(const std::string& text) {
    const auto made = plan_of(result_of(text), "t", UnitSystem::metric);
    EXPECT_TRUE(made) << errors_of(made.error());
    return made ? made->plan : plan::Plan{};
}

plan::Plan put(const plan::Plan& plan, const std::string& text) {
    const auto made = put_into(plan, result_of(text));
    EXPECT_TRUE(made) << errors_of(made.error());
    return made ? made->plan : plan::Plan{};
}

/// A plan that reads back equal.
void expect_sound(const plan::Plan& plan) {
    static const catalogue::Catalogue kTables = testing_support::shipped_catalogue();
    const auto again = plan::read_plan(plan::written(plan), kTables);
    ASSERT_TRUE(again) << errors_of(again.error());
    EXPECT_EQ(*again, plan);
}

const plan::Scenery& scenery(const plan::Plan& plan, const std::string& name) {
    const plan::Scenery* found = plan::find(plan, plan::Id<plan::Scenery>{name});
    EXPECT_NE(found, nullptr) << name;
    static const plan::Scenery kNone;
    return found != nullptr ? *found : kNone;
}

TEST(PlanOfARecce, HasTheRoomAsWalked) {
    const plan::Plan plan = plan_from(room_with("height at C 2.502m"));
    const Polygon expected{{0, 0}, {5, 0}, {5, 4}, {0, 4}};
    ASSERT_EQ(plan.room.outline.size(), 4U);
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR((plan.room.outline[i] - expected[i]).norm(), 0.0, 1e-9);
    }
    EXPECT_NEAR(plan.room.height.m(), 2.501, 1e-9);
    EXPECT_EQ(plan.room.walls.size(), 4U);
    EXPECT_EQ(plan.room.walls[0].height, plan.room.height);
    ASSERT_TRUE(plan.survey);
    EXPECT_EQ(plan.survey->heights.size(), 2U);
    expect_sound(plan);
}

TEST(PlanOfARecce, NeedsACeiling) {
    const RecceResult result = result_of("corners A B C\nA-B 5m\nB-C 4m\nC-A 4m\n");
    const auto made = plan_of(result, "t", UnitSystem::metric);
    ASSERT_FALSE(made);
    EXPECT_EQ(errors_of(made.error()),
              "the height of the ceiling was not read; add a line such as \"height 2.4m\"\n");
}

TEST(PlanOfARecce, PlacesOpeningsAlongTheirWalls) {
    const plan::Plan plan = plan_from(
        room_with("along A-B: wall 1m, window \"view\" 1.5m sill 90cm high 1.2m, wall 2.5m\n"
                  "along D-A from A: wall 50cm, door 80cm high 2m, opening 1m, rest\n"));
    ASSERT_EQ(plan.room.openings.size(), 3U);
    const plan::Opening& window = plan.room.openings[0];
    EXPECT_EQ(window.id.name, "view");
    EXPECT_EQ(window.kind, plan::OpeningKind::window);
    EXPECT_EQ(window.wall, 0);
    EXPECT_NEAR(window.from_start.m(), 1.0, 1e-9);
    EXPECT_NEAR(window.width.m(), 1.5, 1e-9);
    EXPECT_NEAR(window.head.m(), 2.1, 1e-9);
    const plan::Opening& door = plan.room.openings[1];
    EXPECT_EQ(door.id.name, "door A-D");
    EXPECT_EQ(door.wall, 3);
    // Read from A, which is the end of that wall.
    EXPECT_NEAR(door.from_start.m(), 4 - 0.5 - 0.8, 2e-4);
    EXPECT_FALSE(door.way_out);
    EXPECT_NEAR(plan.room.openings[2].head.m(), 2.0, 1e-9);
    expect_sound(plan);
}

TEST(PlanOfARecce, SaysWhatItTookOrLeftOut) {
    const auto made =
        plan_of(result_of(room_with("along A-B: door 80cm, shelf 1m, chest 1m deep 50cm, rest\n")),
                "t", UnitSystem::metric);
    ASSERT_TRUE(made);
    EXPECT_EQ(made->remarks,
              (std::vector<std::string>{
                  "The height of door A-B was not read; 0.000 m to 2.000 m above the floor is "
                  "taken.",
                  "shelf is not drawn: its depth was not read.",
                  "The height of chest was not read; 0.900 m is taken."}));
    EXPECT_EQ(made->plan.scenery.size(), 1U);
}

TEST(PlanOfARecce, StandsThingsAgainstTheInsideOfTheirWall) {
    const std::string chain = "along B-C: wall 1m, chest 1.2m deep 50cm high 90cm up 10cm, rest\n";
    const plan::Scenery chest = scenery(plan_from(room_with(chain)), "chest");
    const auto& box = std::get<plan::BoxPiece>(chest.shape);
    EXPECT_NEAR((box.at - Vec2{5 - 0.25, 1.6}).norm(), 0.0, 2e-4);
    EXPECT_NEAR(box.turn.deg(), 90.0, 0.01);
    EXPECT_EQ(box.width, Length::metres(1.2));
    EXPECT_EQ(chest.elevation, Length::metres(0.1));
    // Walked clockwise the same wall runs down the page and the room lies to its right.
    const plan::Scenery turned = scenery(plan_from(room_with(chain, "clockwise")), "chest");
    EXPECT_NEAR((std::get<plan::BoxPiece>(turned.shape).at - Vec2{5 - 0.25, -1.6}).norm(), 0.0,
                2e-4);
}

TEST(PlanOfARecce, StandsThingsOnTheFloor) {
    const std::string points = "p: A 1.414214m, B 4.123106m\nq: A 2.236068m, B 3.162278m\n"
                               "r: A 2.828427m, B 3.605551m\n";
    const plan::Plan plan =
        plan_from(room_with(points + "solid plinth: p q r\nround post: q across 30cm high 1m\n"));
    const auto& prism = std::get<plan::PrismPiece>(scenery(plan, "plinth").shape);
    ASSERT_EQ(prism.outline.size(), 3U);
    EXPECT_NEAR((prism.outline[0] - Vec2{1, 1}).norm(), 0.0, 3e-4);
    EXPECT_EQ(prism.height, plan.room.height);
    const auto& post = std::get<plan::CylinderPiece>(scenery(plan, "post").shape);
    EXPECT_NEAR((post.at - Vec2{2, 1}).norm(), 0.0, 3e-4);
    EXPECT_EQ(post.height, Length::metres(1));
    expect_sound(plan);
}

TEST(PlanOfARecce, HasCircuitsNotesAndNorth) {
    const plan::Plan plan = plan_from(
        room_with("outlet K1 along A-B 1m up 30cm\noutlet K1 along D-C 2m\nbearing A-B 95deg\n"
                  "note noise: fridge\nnote key at the porter's\nheight at B 2.9m\n"));
    ASSERT_EQ(plan.circuits.size(), 1U);
    ASSERT_EQ(plan.circuits[0].outlets.size(), 2U);
    EXPECT_NEAR((plan.circuits[0].outlets[0] - Vec2{1, 0}).norm(), 0.0, 2e-4);
    EXPECT_NEAR((plan.circuits[0].outlets[1] - Vec2{2, 4}).norm(), 0.0, 2e-4);
    // The first wall runs to the right, 90 degrees clockwise from up; north lies 5 before up.
    EXPECT_NEAR(plan.site.north.deg(), -5.0, 1e-9);
    ASSERT_EQ(plan.site.notes.size(), 3U);
    EXPECT_EQ(plan.site.notes[0], "noise: fridge");
    EXPECT_EQ(plan.site.notes[1], "key at the porter's");
    EXPECT_NE(plan.site.notes[2].find("slopes"), std::string::npos);
    expect_sound(plan);
}

TEST(PlanOfARecce, RefusesWhatCannotBe) {
    const auto fault = [](const std::string& lines) {
        const auto made = plan_of(result_of(room_with(lines)), "t", UnitSystem::metric);
        EXPECT_FALSE(made) << lines;
        return made ? std::string{} : errors_of(made.error());
    };
    EXPECT_EQ(fault("along A-B: wall 4.5m, door 1m, rest\n"),
              "door A-B would lie 500 mm past the end of wall A-B, which is 5.000 m long\n");
    EXPECT_EQ(fault("along A-B: window 1m sill 2m high 1m, rest\n"),
              "the top of window A-B, 3.000 m, is above the ceiling, 2.500 m\n");
    EXPECT_EQ(fault("outlet K along B-C 4.5m\n"),
              "an outlet of K would lie 500 mm past the end of wall B-C\n");
    EXPECT_EQ(fault("p: A 1.414214m, B 4.123106m\nq: A 2.236068m, B 3.162278m\n"
                    "solid line: p A q B\n"),
              "the outline of line crosses itself or has no area; name its points in walking "
              "order\n");
}

// A second recce into a plan that somebody has worked on.

const std::string kChain = "along A-B: wall 1m, door \"hall\" 80cm high 2m, "
                           "chest 1m deep 50cm high 90cm, wall 2.2m\n";

plan::Plan worked_on() {
    plan::Plan plan = plan_from(room_with(kChain + "outlet K1 along A-B 1m\nnote noise: fridge\n"));
    plan.room.openings[0].way_out = true;
    plan.room.openings[0].swing = plan::Swing{};
    plan.room.walls[2].dressed = true;
    plan.scenery[0].finish = "pale grey";
    plan::Scenery crate;
    crate.id.name = "crate";
    crate.shape =
        plan::BoxPiece{{2, 2}, Length::metres(0.5), Length::metres(0.5), Length::metres(0.5), {}};
    plan.scenery.push_back(crate);
    plan::Opening hatch;
    hatch.id.name = "hatch";
    hatch.kind = plan::OpeningKind::opening;
    hatch.wall = 2;
    hatch.width = Length::metres(1);
    hatch.head = Length::metres(2);
    plan.room.openings.push_back(hatch);
    plan.circuits[0].breaker_amps = 20;
    plan.circuits[0].outlets.push_back({3, 4});
    plan.site.notes.push_back("ours");
    plan.people.push_back({});
    plan.people[0].id.name = "cook";
    return plan;
}

TEST(PutIntoAPlan, TheSameRecceChangesNothing) {
    const plan::Plan plan = worked_on();
    expect_sound(plan);
    plan::Plan again =
        put(plan, room_with(kChain + "outlet K1 along A-B 1m\nnote noise: fridge\n"));
    // What the recce gives comes behind what is ours, nothing else moves.
    std::sort(again.site.notes.begin(), again.site.notes.end());
    std::rotate(again.circuits[0].outlets.begin(), again.circuits[0].outlets.begin() + 1,
                again.circuits[0].outlets.end());
    plan::Plan expected = plan;
    std::sort(expected.site.notes.begin(), expected.site.notes.end());
    EXPECT_EQ(again, expected);
}

TEST(PutIntoAPlan, ReplacesWhatTheTapeGaveAndKeepsTheRest) {
    const plan::Plan plan =
        put(worked_on(), room_with("along A-B: wall 1.2m, door \"hall\" 80cm high 2.1m, rest\n"
                                   "note sun: early\n"));
    ASSERT_EQ(plan.room.openings.size(), 2U);
    const plan::Opening& hall = plan.room.openings[0];
    EXPECT_NEAR(hall.from_start.m(), 1.2, 1e-9);
    EXPECT_NEAR(hall.head.m(), 2.1, 1e-9);
    EXPECT_TRUE(hall.way_out);
    EXPECT_TRUE(hall.swing);
    EXPECT_EQ(plan.room.openings[1].id.name, "hatch");
    EXPECT_TRUE(plan.room.walls[2].dressed);
    ASSERT_EQ(plan.scenery.size(), 1U);
    EXPECT_EQ(plan.scenery[0].id.name, "crate");
    ASSERT_EQ(plan.circuits.size(), 1U);
    EXPECT_EQ(plan.circuits[0].breaker_amps, 20);
    EXPECT_EQ(plan.circuits[0].outlets, (std::vector<Vec2>{{3, 4}}));
    EXPECT_EQ(plan.site.notes, (std::vector<std::string>{"ours", "sun: early"}));
    EXPECT_EQ(plan.people.size(), 1U);
    expect_sound(plan);
}

TEST(PutIntoAPlan, ASecondReadingChangesOnlyWhatHangsOnIt) {
    const std::string rest = kChain + "round post: p across 30cm\nnote noise: fridge\n";
    const std::string first = room_with("p: A 2.236068m, B 3.162278m\n" + rest);
    const std::string second = room_with("p: A 2.286068m, B 3.162278m\n" + rest);
    const plan::Plan before = plan_from(first);
    plan::Plan after = put(before, second);
    EXPECT_FALSE(scenery(after, "post") == scenery(before, "post"));
    EXPECT_EQ(scenery(after, "chest"), scenery(before, "chest"));
    for (plan::Scenery& piece : after.scenery) {
        piece = piece.id.name == "post" ? scenery(before, "post") : piece;
    }
    after.survey = before.survey;
    EXPECT_EQ(after, before);
}

TEST(PutIntoAPlan, KeepsTheFirstCornerAndTheWayOfTheFirstWall) {
    plan::Plan plan;
    plan.room.outline = {{2, 1}, {2, 6}, {-2, 6}, {-2, 1}};
    plan.room.height = Length::metres(2.4);
    const plan::Plan made = put(plan, room_with("bearing A-B 95deg\n"));
    EXPECT_NEAR((made.room.outline[1] - Vec2{2, 6}).norm(), 0.0, 2e-4);
    EXPECT_NEAR((made.room.outline[2] - Vec2{-2, 6}).norm(), 0.0, 2e-4);
    // The first wall runs up the page, so north is 95 degrees before up.
    EXPECT_NEAR(made.site.north.deg(), -95.0, 0.01);
}

TEST(PutIntoAPlan, KeepsAHeightThatWasNotReadAgain) {
    plan::Plan plan;
    plan.room.outline = {{0, 0}, {5, 0}, {5, 4}, {0, 4}};
    plan.room.height = Length::metres(2.4);
    const plan::Plan made = put(plan, "corners A B C\nA-B 5m\nB-C 4m\nC-A 4m\n");
    EXPECT_EQ(made.room.height, Length::metres(2.4));
    EXPECT_EQ(made.room.walls.size(), 3U);
}

TEST(HarbourKitchen, MakesASoundPlan) {
    const std::string text =
        *read_text_file(THROWLINE_SOURCE_DIR "/demo/harbour_kitchen.recce.txt", 1U << 20U);
    const plan::Plan plan = plan_from(text);
    EXPECT_EQ(plan.room.openings.size(), 3U);
    EXPECT_EQ(plan.scenery.size(), 6U);
    EXPECT_EQ(plan.circuits.size(), 2U);
    EXPECT_EQ(plan.site.notes.size(), 4U);
    expect_sound(plan);
}

} // namespace
} // namespace throwline::survey
