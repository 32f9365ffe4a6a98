#include "edit/snap.h"

#include "edit/moves.h"
#include "support/demo_plan.h"
#include "support/small_plan.h"

#include <gtest/gtest.h>

namespace throwline::edit {
namespace {

using testing_support::add_person;
using testing_support::add_scenery;
using testing_support::bare_room;
using testing_support::box_piece;

/// A bare room of 10 m by 8 m and what a test puts in it.
struct Floor {
    plan::Plan plan = bare_room();
    SnapSettings settings;

    std::optional<Snap> at(const Vec2& point, const std::optional<Vec2>& from = std::nullopt,
                           std::vector<Thing> left_out = {}) const {
        const Context context{plan, support::shipped_catalogue(), {{"1"}, {}}};
        return SnapField{context, left_out}.snapped(point, settings, from);
    }
    /// With nothing but the kind that a test is about.
    void only(bool SnapSettings::* kind) {
        settings.ends = settings.middles = settings.pipes = settings.walls = false;
        settings.right_angles = settings.alignments = false;
        if (kind != nullptr) {
            settings.*kind = true;
        }
    }
};

void expect_snap(const std::optional<Snap>& snap, SnapKind kind, const Vec2& at,
                 const std::string& words) {
    ASSERT_TRUE(snap);
    EXPECT_EQ(snap->kind, kind) << snap->words;
    EXPECT_NEAR(snap->at.x(), at.x(), 1e-9);
    EXPECT_NEAR(snap->at.y(), at.y(), 1e-9);
    EXPECT_EQ(snap->words, words);
}

TEST(Snap, EndOfAWallDrawsBeforeTheWall) {
    expect_snap(Floor{}.at({10.1, 0.1}), SnapKind::end, {10.0, 0.0}, "end of wall 1");
}

TEST(Snap, WallDrawsSquareOntoIt) {
    Floor floor;
    floor.settings.alignments = false;
    const auto snap = floor.at({3.0, 0.15});
    expect_snap(snap, SnapKind::on_wall, {3.0, 0.0}, "on wall 1");
    ASSERT_EQ(snap->lines.size(), 1U);
    EXPECT_EQ(snap->lines.front().to, (Vec2{10.0, 0.0}));
}

TEST(Snap, MiddleOfAWallDrawsBeforeTheWall) {
    expect_snap(Floor{}.at({5.1, 0.1}), SnapKind::middle, {5.0, 0.0}, "middle of wall 1");
}

TEST(Snap, NothingDrawsFromOutOfReach) {
    Floor floor;
    EXPECT_FALSE(floor.at({3.0, 2.0}));
    EXPECT_FALSE(floor.at({3.0, 0.21}));
    floor.settings.reach_m = 0.3;
    EXPECT_TRUE(floor.at({3.0, 0.21}));
}

TEST(Snap, CrossingOfTwoSidesThatDoNotReachEachOther) {
    Floor floor;
    // Its left side, made longer, meets wall 1 at (4.5, 0).
    add_scenery(floor.plan, "crate", box_piece({5.0, 0.6}, 1.0, 1.0, 1.0));
    floor.settings.alignments = false;
    floor.settings.middles = false;
    expect_snap(floor.at({4.55, 0.12}), SnapKind::end, {4.5, 0.1}, "corner of crate");
    floor.settings.ends = true;
    floor.settings.reach_m = 0.11;
    expect_snap(floor.at({4.55, 0.005}), SnapKind::crossing, {4.5, 0.0}, "wall 1 and crate");
}

TEST(Snap, GridPositionHasItsName) {
    Floor floor;
    plan::Grid grid;
    grid.origin = {1.0, 1.0};
    grid.pitch_x = grid.pitch_y = Length::metres(1.2);
    grid.columns = 4;
    grid.rows = 3;
    grid.height = Length::metres(3.5);
    floor.plan.grid = grid;
    expect_snap(floor.at({3.5, 2.1}), SnapKind::pipe_position, {3.4, 2.2}, "position C2");
    EXPECT_DOUBLE_EQ(usual_pitch_m(floor.plan), 1.2);
}

TEST(Snap, PipeHasEndsAndALine) {
    Floor floor;
    floor.plan.pipes.push_back({{"bar"}, {2.0, 2.0}, {6.0, 2.0}, Length::metres(3), 0, 0, {}});
    floor.settings.alignments = false;
    expect_snap(floor.at({2.1, 2.1}), SnapKind::end, {2.0, 2.0}, "end of bar");
    expect_snap(floor.at({3.1, 2.1}), SnapKind::on_wall, {3.1, 2.0}, "on bar");
}

TEST(Snap, DrawingGoesStraightAcrossAndUp) {
    Floor floor;
    floor.only(&SnapSettings::right_angles);
    // The finest even length for a reach of 0.2 m is 0.5 m; 3.26 m is 0.24 m from one.
    expect_snap(floor.at({5.26, 3.1}, Vec2{2.0, 3.0}), SnapKind::right_angle, {5.26, 3.0},
                "straight across");
    expect_snap(floor.at({2.1, 6.24}, Vec2{2.0, 3.0}), SnapKind::right_angle, {2.0, 6.24},
                "straight up");
}

TEST(Snap, StraightLinesComeOutAtEvenLengths) {
    Floor floor;
    floor.only(&SnapSettings::right_angles);
    const auto snap = floor.at({5.4, 3.05}, Vec2{2.0, 3.0});
    expect_snap(snap, SnapKind::even_length, {5.5, 3.0}, "straight across, 3.50 m");
    floor.plan.units = UnitSystem::imperial;
    // 4 ft is 1.2192 m.
    expect_snap(floor.at({3.2, 3.05}, Vec2{2.0, 3.0}), SnapKind::even_length, {3.2192, 3.0},
                "straight across, 4'-0\"");
}

TEST(Snap, SlantingLinesComeOutAtEvenLengths) {
    Floor floor;
    floor.only(&SnapSettings::right_angles);
    // 3-4-5: 2.6 m along it come out at 2.5 m.
    expect_snap(floor.at({2.0 + 1.56, 3.0 + 2.08}, Vec2{2.0, 3.0}), SnapKind::even_length,
                {3.5, 5.0}, "from the start, 2.50 m");
}

TEST(Snap, LineFromASlantingSideGoesSquareToIt) {
    Floor floor;
    floor.plan.room.outline = {{0, 0}, {10, 0}, {10, 4}, {6, 8}, {0, 8}};
    floor.plan.room.walls.push_back(floor.plan.room.walls.front());
    floor.only(&SnapSettings::right_angles);
    // Wall 3 runs at 135 degrees through (8, 6); square to it is 225 degrees.
    const auto snap = floor.at({6.55, 4.47}, Vec2{8.0, 6.0});
    ASSERT_TRUE(snap);
    EXPECT_NE(snap->words.find("square to wall 3"), std::string::npos) << snap->words;
    EXPECT_NEAR(snap->at.x() - 8.0, snap->at.y() - 6.0, 1e-9);
}

TEST(Snap, LineSquareFromTheStartMeetsAWall) {
    const auto snap = Floor{}.at({9.9, 3.1}, Vec2{2.0, 3.0});
    expect_snap(snap, SnapKind::crossing, {10.0, 3.0}, "wall 2 and straight across");
}

TEST(Snap, LastCornerClosesTheRoomSquarely) {
    Floor floor;
    floor.plan.room = {};
    add_scenery(floor.plan, "post",
                plan::CylinderPiece{{1.0, 1.0}, Length::metres(0.4), Length::metres(2.0)});
    const auto snap = floor.at({1.1, 5.1}, Vec2{6.0, 5.0});
    expect_snap(snap, SnapKind::aligned, {1.0, 5.0},
                "straight across, in line with middle of post");
    EXPECT_EQ(snap->lines.size(), 2U);
}

TEST(Snap, LinesUpWithWhatStandsElsewhere) {
    Floor floor;
    floor.only(&SnapSettings::alignments);
    add_person(floor.plan, "Ada", {3.0, 2.0}, Angle{});
    add_person(floor.plan, "Bo", {7.0, 6.5}, Angle{});
    const auto both = floor.at({3.1, 6.6});
    expect_snap(both, SnapKind::aligned, {3.0, 6.5}, "in line with Ada and Bo");
    EXPECT_EQ(both->lines.size(), 2U);
    expect_snap(floor.at({3.1, 5.0}), SnapKind::aligned, {3.0, 5.0}, "in line with Ada");
}

TEST(Snap, FloorSquareIsTheLastResort) {
    Floor floor;
    floor.settings.pitch_m = 1.0;
    floor.settings.alignments = false;
    expect_snap(floor.at({3.1, 2.1}), SnapKind::grid_pitch, {3.0, 2.0}, "square of the floor");
    expect_snap(floor.at({3.1, 0.1}), SnapKind::on_wall, {3.1, 0.0}, "on wall 1");
}

TEST(Snap, WhatIsMovedOrHiddenDrawsNothing) {
    Floor floor;
    floor.settings.alignments = false;
    add_person(floor.plan, "Ada", {3.0, 2.0}, Angle{});
    expect_snap(floor.at({3.1, 2.0}), SnapKind::middle, {3.0, 2.0}, "Ada");
    EXPECT_FALSE(floor.at({3.1, 2.0}, std::nullopt, {{Kind::person, "Ada", 0}}));
    floor.plan.arrangement.hidden = {"Ada"};
    EXPECT_FALSE(floor.at({3.1, 2.0}));
}

TEST(Snap, ShiftBringsOnePointOntoSomething) {
    Floor floor;
    const Context context{floor.plan, support::shipped_catalogue(), {{"1"}, {}}};
    const SnapField field{context, {}};
    const std::vector<Vec2> points{{4.0, 4.0}, {5.0, 4.0}, {5.0, 5.0}};
    // The second point comes within 0.1 m of the corner (10, 0) when moved by (4.9, -3.95).
    const auto snap = field.snapped_shift(points, {4.9, -3.95}, floor.settings);
    expect_snap(snap, SnapKind::end, {5.0, -4.0}, "end of wall 1");
}

TEST(Snap, EverySwitchedOffKindDrawsNothing) {
    Floor floor;
    floor.only(nullptr);
    EXPECT_FALSE(floor.at({10.1, 0.1}, Vec2{2.0, 0.1}));
}

TEST(UsualPitch, IsOneMetreOrFourFeet) {
    Floor floor;
    EXPECT_DOUBLE_EQ(usual_pitch_m(floor.plan), 1.0);
    floor.plan.units = UnitSystem::imperial;
    EXPECT_DOUBLE_EQ(usual_pitch_m(floor.plan), 1.2192);
}

} // namespace
} // namespace throwline::edit
