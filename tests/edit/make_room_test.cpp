#include "edit/make.h"

#include "edit/flat_widths.h"
#include "plan/places.h"
#include "support/demo_plan.h"
#include "support/small_plan.h"
#include "support/taken_step.h"

#include <gtest/gtest.h>
#include <numbers>

namespace throwline::edit {
namespace {

using support::shipped_catalogue;
using support::taken;
using support::why_not;
using testing_support::bare_room;

Context context_of(const plan::Plan& plan) {
    return {plan, shipped_catalogue(), {{"1"}, {}}};
}

/// A door in a wall from its start.
plan::Opening door(const std::string& name, int wall, double from_start_m, double width_m = 1.0) {
    plan::Opening opening;
    opening.id = {name};
    opening.wall = wall;
    opening.from_start = Length::metres(from_start_m);
    opening.width = Length::metres(width_m);
    opening.head = Length::metres(2.0);
    opening.swing = plan::Swing{};
    return opening;
}

TEST(RoomDrawn, HasTheUsualHeightOnAnEmptyFloor) {
    plan::Plan plan;
    plan.title = "empty";
    const std::vector<Vec2> corners{{0, 0}, {5, 0}, {5, 4}};
    const plan::Plan metric = taken(room_drawn(context_of(plan), corners));
    EXPECT_EQ(metric.room.outline, corners);
    ASSERT_EQ(metric.room.walls.size(), 3U);
    EXPECT_DOUBLE_EQ(metric.room.height.m(), 2.4);
    plan.units = UnitSystem::imperial;
    EXPECT_DOUBLE_EQ(taken(room_drawn(context_of(plan), corners)).room.walls[2].height.ft(), 8.0);
}

TEST(RoomDrawn, KeepsHeightWallsAndOpeningsThatAreStillThere) {
    plan::Plan plan = bare_room();
    plan.room.walls[0].dressed = true;
    plan.room.openings = {door("door 1", 0, 2.0), door("door 2", 1, 1.0)};
    // The right side is pulled in by 2 m: wall 2 is another, walls 1 and 3 are shorter.
    const plan::Plan narrower =
        taken(room_drawn(context_of(plan), std::vector<Vec2>{{0, 0}, {10, 0}, {8, 8}, {0, 8}}));
    EXPECT_TRUE(narrower.room.walls[0].dressed);
    ASSERT_EQ(narrower.room.openings.size(), 1U);
    EXPECT_EQ(narrower.room.openings[0], plan.room.openings[0]);
    EXPECT_DOUBLE_EQ(narrower.room.height.m(), 4.0);
}

TEST(RoomDrawn, SaysWhichOpeningsGo) {
    plan::Plan plan = bare_room();
    plan.room.openings = {door("door 1", 0, 2.0), door("door 2", 1, 1.0), door("hatch", 3, 1.0)};
    const auto step =
        room_drawn(context_of(plan), std::vector<Vec2>{{0, 0}, {10, 0}, {10, 7}, {0, 7}});
    EXPECT_EQ(step->name, "Draw the room, without door 2, hatch");
    EXPECT_EQ(taken(step).room.openings.size(), 1U);
}

TEST(RoomDrawn, OpeningsStayWhereTheyAreWhenTheRoomIsDrawnTheOtherWayRound) {
    plan::Plan plan = bare_room();
    plan.room.openings = {door("door 1", 0, 2.0)};
    const plan::Plan other =
        taken(room_drawn(context_of(plan), std::vector<Vec2>{{0, 0}, {0, 8}, {10, 8}, {10, 0}}));
    ASSERT_EQ(other.room.openings.size(), 1U);
    // Wall 4 runs from (10, 0) to (0, 0): from 2..3 m along the old to 7..8 m along the new.
    EXPECT_EQ(other.room.openings[0].wall, 3);
    EXPECT_DOUBLE_EQ(other.room.openings[0].from_start.m(), 7.0);
    EXPECT_FALSE(other.room.openings[0].swing->hinge_at_start);
}

TEST(RoomDrawn, OpeningsFitAWallThatIsAHairShorter) {
    plan::Plan plan = bare_room();
    plan.room.openings = {door("door 1", 0, 9.0)};
    const plan::Plan shorter = taken(
        room_drawn(context_of(plan), std::vector<Vec2>{{0, 0}, {9.992, 0}, {9.992, 8}, {0, 8}}));
    ASSERT_EQ(shorter.room.openings.size(), 1U);
    EXPECT_NEAR(shorter.room.openings[0].from_start.m(), 8.992, 1e-12);
}

TEST(RoomDrawn, LampsOnWallsGoToTheNearest) {
    plan::Plan plan = bare_room();
    plan::Lamp lamp;
    lamp.id = {"lamp 1"};
    lamp.instrument = "LED panel 60x30 soft";
    lamp.mount = plan::WallMount{2, Length::metres(4), Length::metres(2)};
    plan.lamps = {lamp};
    const plan::Plan lower =
        taken(room_drawn(context_of(plan), std::vector<Vec2>{{0, 0}, {10, 0}, {10, 5}}));
    EXPECT_LT(std::get<plan::WallMount>(lower.lamps[0].mount).wall, 3);
}

TEST(RoomDrawn, RefusesWhatIsNoRoom) {
    const plan::Plan plan = bare_room();
    const Context context = context_of(plan);
    EXPECT_EQ(why_not(room_drawn(context, std::vector<Vec2>{{0, 0}, {1, 0}})),
              "a room has three corners or more");
    EXPECT_NE(why_not(room_drawn(context, std::vector<Vec2>{{0, 0}, {4, 4}, {4, 0}, {0, 4}})), "");
    EXPECT_NE(why_not(room_drawn(context, std::vector<Vec2>{{0, 0}, {4, 0}, {8, 0}})), "");
    EXPECT_NE(why_not(room_drawn(context, std::vector<Vec2>{{0, 0}, {4, 0}, {4, 0}, {0, 4}})), "");
    EXPECT_NE(why_not(room_drawn(context, std::vector<Vec2>{{0, 0}, {2000, 0}, {0, 4}})), "");
    const std::vector<Vec2> ring = circle(Vec2::Zero(), 100.0, 1001);
    EXPECT_EQ(why_not(room_drawn(context, ring)), "a room has at most 1000 corners");
}

TEST(StudioMade, HangsTheGridInTheMiddle) {
    const plan::Plan plan = taken(studio_made(context_of(bare_room()), Studio{}));
    ASSERT_TRUE(plan.grid);
    // 12 m / 1.2 m = 10 across, 9 m / 1.2 m = 7.5 up.
    EXPECT_EQ(plan.grid->columns, 10);
    EXPECT_EQ(plan.grid->rows, 7);
    // (12 - 9 x 1.2) / 2 and (9 - 6 x 1.2) / 2.
    EXPECT_NEAR(plan.grid->origin.x(), 0.6, 1e-12);
    EXPECT_NEAR(plan.grid->origin.y(), 0.9, 1e-12);
    EXPECT_DOUBLE_EQ(plan.grid->height.m(), 4.2);
    const Vec2 last = *plan::grid_point(*plan.grid, plan::grid_name(9, 6));
    EXPECT_NEAR(last.x(), 11.4, 1e-9);
    EXPECT_NEAR(last.y(), 8.1, 1e-9);
    EXPECT_DOUBLE_EQ(plan.room.walls[3].height.m(), 5.0);
}

TEST(StudioMade, HasNoGridAtAPitchOfNothing) {
    Studio studio;
    studio.pitch = {};
    EXPECT_FALSE(taken(studio_made(context_of(bare_room()), studio)).grid);
}

TEST(StudioMade, LampsOfTheOldGridHangNearWhereTheyWere) {
    plan::Plan plan = taken(studio_made(context_of(bare_room()), Studio{}));
    plan::Lamp hung;
    hung.id = {"lamp 1"};
    hung.instrument = "Fresnel 650 W";
    hung.mount = plan::GridHang{"C2", Length::metres(0.3)};
    plan::Lamp standing = hung;
    standing.id = {"lamp 2"};
    standing.mount = plan::StandMount{{1.0, 1.5}, Length::metres(2), "medium light stand"};
    plan.lamps = {hung, standing};
    Studio wide;
    wide.pitch = Length::metres(3);
    const plan::Plan after = taken(studio_made(context_of(plan), wide));
    // C2 was at (3.0, 2.1); the new columns are at 1.5, 4.5, ..., the rows at 1.5, 4.5, 7.5.
    const Vec3 point = *plan::lamp_point(after, after.lamps[0]);
    EXPECT_NEAR(point.y(), 1.5, 1e-9);
    EXPECT_TRUE(std::abs(point.x() - 1.5) < 1e-9 || std::abs(point.x() - 4.5) < 1e-9);
    EXPECT_EQ(after.lamps[1], standing);
    Studio bare;
    bare.pitch = {};
    const plan::Plan without = taken(studio_made(context_of(plan), bare));
    const auto& stand = std::get<plan::StandMount>(without.lamps[0].mount);
    EXPECT_NEAR((stand.at - Vec2{3.0, 2.1}).norm(), 0.0, 1e-9);
}

TEST(StudioMade, RefusesWhatCannotBe) {
    const plan::Plan plan = bare_room();
    const Context context = context_of(plan);
    Studio flat;
    flat.height = {};
    EXPECT_NE(why_not(studio_made(context, flat)), "");
    Studio above;
    above.grid_height = Length::metres(6);
    EXPECT_EQ(why_not(studio_made(context, above)),
              "the pipe grid hangs above the floor and below the roof");
    Studio fine;
    fine.pitch = Length::metres(0.1);
    EXPECT_EQ(why_not(studio_made(context, fine)),
              "a grid has at most 100 pipes each way; make the pitch wider");
    Studio coarse;
    coarse.pitch = Length::metres(10);
    EXPECT_EQ(why_not(studio_made(context, coarse)),
              "the pitch of the grid is wider than the studio");
    Studio vast;
    vast.width = Length::metres(1500);
    EXPECT_NE(why_not(studio_made(context, vast)), "");
}

TEST(CornerAdded, PartsTheWallAndWhatIsOnIt) {
    plan::Plan plan = bare_room();
    plan.room.openings = {door("door 1", 0, 1.0), door("door 2", 0, 7.0), door("door 3", 2, 1.0)};
    testing_support::add_scenery(plan, "wall 1x", testing_support::box_piece({5, 5}, 1, 1, 1));
    plan.arrangement.locked = {"wall 1x", "wall 3"};
    plan::Lamp lamp;
    lamp.id = {"lamp 1"};
    lamp.instrument = "LED panel 60x30 soft";
    lamp.mount = plan::WallMount{0, Length::metres(6), Length::metres(2)};
    plan.lamps = {lamp};
    const plan::Plan parted = taken(corner_added(context_of(plan), 0, 4.0));
    ASSERT_EQ(parted.room.outline.size(), 5U);
    EXPECT_EQ(parted.room.outline[1], (Vec2{4.0, 0.0}));
    EXPECT_EQ(parted.room.openings[0].wall, 0);
    EXPECT_EQ(parted.room.openings[1].wall, 1);
    EXPECT_DOUBLE_EQ(parted.room.openings[1].from_start.m(), 3.0);
    EXPECT_EQ(parted.room.openings[2].wall, 3);
    EXPECT_EQ(std::get<plan::WallMount>(parted.lamps[0].mount).wall, 1);
    EXPECT_DOUBLE_EQ(std::get<plan::WallMount>(parted.lamps[0].mount).along.m(), 2.0);
    EXPECT_EQ(parted.arrangement.locked, (std::vector<std::string>{"wall 1x", "wall 4"}));
}

TEST(CornerAdded, RefusesWhereAnOpeningOrACornerIs) {
    plan::Plan plan = bare_room();
    plan.room.openings = {door("door 1", 0, 1.0)};
    EXPECT_EQ(why_not(corner_added(context_of(plan), 0, 1.5)), "door 1 is there");
    EXPECT_EQ(why_not(corner_added(context_of(plan), 0, 0.0)), "a corner is there already");
    EXPECT_EQ(why_not(corner_added(context_of(plan), 0, 12.0)), "a corner is there already");
    EXPECT_EQ(why_not(corner_added(context_of(plan), 9, 1.0)), "there is no such wall");
    plan.arrangement.locked = {"wall 2"};
    EXPECT_EQ(why_not(corner_added(context_of(plan), 1, 4.0)), "wall 2 is locked; unlock it first");
}

TEST(OpeningAdded, StandsInTheNearestWall) {
    const plan::Plan plan = bare_room();
    const auto step =
        opening_added(context_of(plan), plan::OpeningKind::door, {9.5, 3.0}, Length::metres(0.9));
    const plan::Opening made = taken(step).room.openings.at(0);
    EXPECT_EQ(made.id.name, "door");
    EXPECT_EQ(made.wall, 1);
    EXPECT_NEAR(made.from_start.m(), 2.55, 1e-12);
    EXPECT_DOUBLE_EQ(made.head.m(), 2.0);
    EXPECT_TRUE(made.swing);
    EXPECT_EQ(step->made, (std::vector<Thing>{{Kind::opening, "door", 0}}));
}

TEST(OpeningAdded, KeepsClearOfOthersAndOfTheCorners) {
    plan::Plan plan = bare_room();
    plan.room.openings = {door("door", 0, 4.0)};
    const plan::Plan beside = taken(opening_added(context_of(plan), plan::OpeningKind::window,
                                                  {4.2, 0.1}, Length::metres(1.0)));
    const plan::Opening made = beside.room.openings.at(1);
    EXPECT_EQ(made.id.name, "window");
    EXPECT_EQ(made.wall, 0);
    EXPECT_NEAR(made.from_start.m(), 3.0, 1e-12);
    EXPECT_DOUBLE_EQ(made.sill.m(), 0.9);
    const plan::Plan corner = taken(opening_added(context_of(plan), plan::OpeningKind::opening,
                                                  {9.9, 0.0}, Length::metres(1.0)));
    EXPECT_NEAR(corner.room.openings.at(1).from_start.m(), 9.0, 1e-12);
}

TEST(OpeningAdded, FitsUnderALowCeiling) {
    const plan::Plan plan = bare_room(10.0, 8.0, 1.5);
    const plan::Opening made =
        taken(opening_added(context_of(plan), plan::OpeningKind::window, {5, 0}, Length::metres(1)))
            .room.openings.at(0);
    EXPECT_DOUBLE_EQ(made.head.m(), 1.5);
    EXPECT_DOUBLE_EQ(made.sill.m(), 0.75);
}

TEST(OpeningAdded, SaysWhyNot) {
    const plan::Plan plan = bare_room();
    EXPECT_NE(why_not(opening_added(context_of(plan), plan::OpeningKind::door, {5, 0},
                                    Length::metres(11))),
              "");
    EXPECT_EQ(why_not(opening_added(context_of(plan), plan::OpeningKind::door, {5, 0}, {})),
              "a door has a width above 0");
    EXPECT_EQ(why_not(opening_added(context_of(plan::Plan{}), plan::OpeningKind::door, {5, 0},
                                    Length::metres(1))),
              "draw the room first: doors and windows are in its walls");
}

} // namespace
} // namespace throwline::edit
