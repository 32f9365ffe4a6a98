/// What stays when things are taken away keeps its own, under whatever number it has then.

#include "edit/moves.h"
#include "support/demo_plan.h"
#include "support/small_plan.h"
#include "support/taken_step.h"

#include <gtest/gtest.h>

namespace throwline::edit {
namespace {

using support::shipped_catalogue;
using support::taken;
using support::why_not;
using Names = std::vector<std::string>;

Context context_of(const plan::Plan& plan) {
    return {plan, shipped_catalogue(), {{"1"}, {}}};
}

Thing wall(int index) {
    return {Kind::wall, {}, index};
}

/// A room like an L, with a table and a chair in it:
///
///     (0,8) -- wall 5 -- (6,8)
///       |                  | wall 4
///     wall 6             (6,4) -- wall 3 -- (10,4)
///       |                                     | wall 2
///     (0,0) ----------- wall 1 ----------- (10,0)
plan::Plan l_room() {
    plan::Plan plan = testing_support::bare_room();
    plan.room.outline = {{0, 0}, {10, 0}, {10, 4}, {6, 4}, {6, 8}, {0, 8}};
    plan.room.walls.assign(6, plan.room.walls.front());
    for (std::size_t i = 0; i < plan.room.walls.size(); ++i) {
        plan.room.walls[i].height = Length::metres(3.0 + 0.1 * static_cast<double>(i));
    }
    testing_support::add_scenery(plan, "table", testing_support::box_piece({2, 2}, 1, 1, 1));
    testing_support::add_scenery(plan, "chair", testing_support::box_piece({4, 2}, 1, 1, 1));
    return plan;
}

TEST(WallRemoved, WhatIsHeldOfTheWallsBehindItFollowsTheirNumbers) {
    plan::Plan plan = l_room();
    plan.arrangement.locked = {"wall 1", "wall 5"};
    plan.arrangement.hidden = {"wall 3", "wall 6", "table"};
    plan.arrangement.groups = {{{"wall 2", "wall 4", "chair"}}};
    // The corner (10,4) goes; walls 4, 5 and 6 become 3, 4 and 5, nothing is held of wall 3 itself.
    const plan::Plan after = taken(removed(context_of(plan), std::vector{wall(2)}));
    EXPECT_EQ(after.room.outline, (Polygon{{0, 0}, {10, 0}, {6, 4}, {6, 8}, {0, 8}}));
    EXPECT_EQ(after.arrangement.locked, (Names{"wall 1", "wall 4"}));
    EXPECT_EQ(after.arrangement.hidden, (Names{"wall 5", "table"}));
    ASSERT_EQ(after.arrangement.groups.size(), 1U);
    EXPECT_EQ(after.arrangement.groups[0].things, (Names{"wall 2", "wall 3", "chair"}));
}

TEST(WallRemoved, WallsKeepWhatTheyAreAndWhatIsOnThem) {
    plan::Plan plan = l_room();
    plan::Opening door;
    door.id = {"door"};
    door.wall = 4;
    door.from_start = Length::metres(1);
    door.width = Length::metres(1);
    door.head = Length::metres(2);
    plan.room.openings = {door};
    plan::Lamp lamp;
    lamp.id = {"lamp"};
    lamp.instrument = "Fresnel 650 W";
    lamp.mount = plan::WallMount{5, Length::metres(2), Length::metres(2)};
    plan.lamps = {lamp};
    const plan::Plan after = taken(removed(context_of(plan), std::vector{wall(2)}));
    EXPECT_EQ(after.room.openings.at(0).wall, 3);
    EXPECT_EQ(std::get<plan::WallMount>(after.lamps.at(0).mount).wall, 4);
    ASSERT_EQ(after.room.walls.size(), 5U);
    EXPECT_EQ(after.room.walls[1], plan.room.walls[1]);
    EXPECT_EQ(after.room.walls[2], plan.room.walls[3]);
}

TEST(WallRemoved, SeveralAtOnceAreCountedOnceEach) {
    plan::Plan plan = l_room();
    plan.arrangement.locked = {"wall 6"};
    plan.arrangement.hidden = {"wall 4", "wall 5"};
    // Of walls 3 and 5 the first corners go: wall 4 becomes 3, wall 6 becomes 4.
    const plan::Plan after = taken(removed(context_of(plan), std::vector{wall(2), wall(4)}));
    EXPECT_EQ(after.room.outline, (Polygon{{0, 0}, {10, 0}, {6, 4}, {0, 8}}));
    EXPECT_EQ(after.arrangement.locked, Names{"wall 4"});
    EXPECT_EQ(after.arrangement.hidden, Names{"wall 3"});
}

TEST(WallRemoved, TheFirstBecomesOneWithTheLast) {
    plan::Plan plan = l_room();
    plan.arrangement.hidden = {"wall 1", "wall 2", "wall 6"};
    const plan::Plan after = taken(removed(context_of(plan), std::vector{wall(0)}));
    EXPECT_EQ(after.room.outline, (Polygon{{10, 0}, {10, 4}, {6, 4}, {6, 8}, {0, 8}}));
    EXPECT_EQ(after.arrangement.hidden, (Names{"wall 1", "wall 5"}));
}

TEST(WallRemoved, AGroupOfWhichOneIsLeftIsNone) {
    plan::Plan plan = l_room();
    plan.arrangement.groups = {{{"wall 3", "chair"}}, {{"wall 4", "table"}}};
    const plan::Plan after = taken(removed(context_of(plan), std::vector{wall(2)}));
    ASSERT_EQ(after.arrangement.groups.size(), 1U);
    EXPECT_EQ(after.arrangement.groups[0].things, (Names{"wall 3", "table"}));
}

TEST(WallRemoved, SaysWhyNot) {
    plan::Plan plan = l_room();
    plan.arrangement.locked = {"wall 2"};
    EXPECT_EQ(why_not(removed(context_of(plan), std::vector{wall(2)})),
              "wall 2 is locked; unlock it first");
    const plan::Plan small = [] {
        plan::Plan triangle = testing_support::bare_room();
        triangle.room.outline.pop_back();
        triangle.room.walls.pop_back();
        return triangle;
    }();
    EXPECT_EQ(why_not(removed(context_of(small), std::vector{wall(0)})),
              "a room has three walls or more; draw the room anew instead");
}

TEST(OutletRemoved, WhatIsHeldOfTheOutletsBehindItFollowsTheirNumbers) {
    plan::Plan plan = l_room();
    plan::Circuit circuit;
    circuit.id = {"C1"};
    circuit.volts = 230;
    circuit.breaker_amps = 16;
    circuit.outlets = {{1, 0}, {2, 0}, {3, 0}};
    plan.circuits = {circuit};
    plan.arrangement.locked = {"outlet 1 of C1", "outlet 3 of C1"};
    plan.arrangement.hidden = {"outlet 2 of C1"};
    const plan::Plan after =
        taken(removed(context_of(plan), std::vector{Thing{Kind::outlet, "C1", 1}}));
    EXPECT_EQ(after.circuits.at(0).outlets, (std::vector<Vec2>{{1, 0}, {3, 0}}));
    EXPECT_EQ(after.arrangement.locked, (Names{"outlet 1 of C1", "outlet 2 of C1"}));
    EXPECT_TRUE(after.arrangement.hidden.empty());
}

TEST(Removed, GoesWithEveryMention) {
    plan::Plan plan = l_room();
    testing_support::add_person(plan, "Ana", {3, 3}, plan::ThingName{"table"});
    testing_support::add_camera(plan, "camera 1");
    testing_support::add_shot(plan, "1A", "camera 1", {8, 2}, {"Ana"}).aim = plan::ThingName{"Ana"};
    plan.accepted = {{"off-the-set", {"1A"}, {}, "seen"}, {"off-the-set", {}, {"Ana"}, "seen"}};
    plan.arrangement.locked = {"chair"};
    plan.arrangement.groups = {{{"Ana", "table"}}};
    const plan::Plan alone =
        taken(removed(context_of(plan), std::vector{Thing{Kind::person, "Ana", 0}}));
    EXPECT_TRUE(alone.people.empty());
    EXPECT_TRUE(alone.beats.at(0).marks.empty());
    EXPECT_TRUE(alone.shots.at(0).subjects.empty());
    // The shot goes on looking where she was.
    EXPECT_TRUE(std::holds_alternative<Vec3>(alone.shots.at(0).aim));
    ASSERT_EQ(alone.accepted.size(), 1U);
    EXPECT_EQ(alone.accepted[0].shot.name, "1A");
    EXPECT_TRUE(alone.arrangement.groups.empty());
    EXPECT_EQ(alone.arrangement.locked, Names{"chair"});
    const plan::Plan unseen =
        taken(removed(context_of(plan), std::vector{Thing{Kind::camera, "camera 1", 0}}));
    EXPECT_TRUE(unseen.shots.empty());
    ASSERT_EQ(unseen.accepted.size(), 1U);
    EXPECT_EQ(unseen.accepted[0].things, Names{"Ana"});
    const plan::Plan bare =
        taken(removed(context_of(plan), std::vector{Thing{Kind::scenery, "table", 0}}));
    // She faces where its middle was.
    const auto& mark = std::get<plan::Mark>(bare.beats.at(0).marks.at({"Ana"}));
    EXPECT_EQ(std::get<Vec2>(mark.faces), (Vec2{2, 2}));
}

} // namespace
} // namespace throwline::edit
