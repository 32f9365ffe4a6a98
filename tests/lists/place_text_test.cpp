#include "base/polygon.h"
#include "lists/place_text.h"
#include "plan/places.h"
#include "support/small_plan.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::lists {
namespace {

using testing_support::bare_room;

plan::Plan room_of(const Polygon& outline) {
    plan::Plan plan = bare_room();
    plan.room.outline = outline;
    plan.room.walls.resize(outline.size(), plan.room.walls.front());
    return plan;
}

/// The corner is that of a room 6 m wide and deep without its upper right quarter.
const Polygon kL{{0, 0}, {6, 0}, {6, 3}, {3, 3}, {3, 6}, {0, 6}};

TEST(PlaceText, MeasuresFromTheNearestWallAndOneAcross) {
    const plan::Plan plan = bare_room();
    EXPECT_EQ(place_text(plan, {2.0, 1.0}),
              "1.00 m from wall 1 (bottom), 2.00 m from wall 4 (left)");
    EXPECT_EQ(place_text(plan, {9.5, 7.0}), "0.50 m from wall 2 (right), 1.00 m from wall 3 (top)");
}

TEST(PlaceText, NamesSidesWhicheverWayTheCornersRun) {
    plan::Plan plan = bare_room();
    std::reverse(plan.room.outline.begin(), plan.room.outline.end());
    EXPECT_EQ(wall_text(plan.room, 0), "wall 1 (top)");
    EXPECT_EQ(wall_text(plan.room, 1), "wall 2 (right)");
    plan.room.outline = {{0, 0}, {2, -2}, {4, 0}, {2, 2}};
    EXPECT_EQ(wall_text(plan.room, 0), "wall 1");
}

// From (1, 5.5) the wall along x = 6 ends at y = 3 and is not square off; the wall along x = 3 is.
TEST(PlaceText, NeverMeasuresThroughAWall) {
    const plan::Plan plan = room_of(kL);
    EXPECT_EQ(place_text(plan, {2.0, 5.8}), "0.20 m from wall 5 (top), 1.00 m from wall 4 (right)");
    EXPECT_EQ(place_text(plan, {5.0, 1.0}),
              "1.00 m from wall 1 (bottom), 1.00 m from wall 2 (right)");
}

TEST(PlaceText, FallsBackOutsideTheRoom) {
    const plan::Plan plan = bare_room();
    EXPECT_EQ(place_text(plan, {-1.0, 2.0}),
              "outside the room, -1.00 m right and 2.00 m up from the plan's origin");
}

TEST(PlaceText, GoesByTheGrid) {
    plan::Plan plan = bare_room();
    EXPECT_EQ(grid_place_text(plan, {1.0, 1.0}), "");
    plan::Grid grid;
    grid.origin = {1.0, 1.0};
    grid.pitch_x = Length::metres(2.0);
    grid.pitch_y = Length::metres(1.5);
    grid.columns = 4;
    grid.rows = 3;
    plan.grid = grid;
    EXPECT_EQ(grid_place_text(plan, {3.0, 2.5}), "B2");
    EXPECT_EQ(grid_place_text(plan, {3.5, 2.5}), "B2 and 0.50 m towards C");
    EXPECT_EQ(grid_place_text(plan, {3.5, 3.5}), "B2 and 0.50 m towards C, 1.00 m towards 3");
    EXPECT_EQ(grid_place_text(plan, {7.0, 4.0}), "D3");
    EXPECT_EQ(grid_place_text(plan, {7.5, 4.0}), "");
    plan.grid->turn = Angle::degrees(90.0);
    EXPECT_EQ(grid_place_text(plan, {1.0, 3.0}), "B1");
}

Vec2 found_again(const plan::Room& room, const FromWalls& place) {
    const auto line = [&](int wall) {
        const auto i = static_cast<std::size_t>(wall);
        const Vec2& from = room.outline[i];
        const Vec2 along = (room.outline[(i + 1) % room.outline.size()] - from).normalized();
        return std::pair{from, along};
    };
    const auto [from, along] = line(place.first.wall);
    const Vec2 inward = turned_left(along);
    const Vec2 foot = from + along * place.along_first_m;
    const Vec2 point = foot + inward * place.first.distance_m;
    if (place.second) {
        const auto [other, way] = line(place.second->wall);
        EXPECT_NEAR((point - other).dot(turned_left(way)), place.second->distance_m, 1e-9);
    }
    return point;
}

// The outline runs anticlockwise, so the room lies to the left of each wall.
RC_GTEST_PROP(PlaceText, CanBeMeasuredOutAgain, ()) {
    const plan::Plan plan = room_of(kL);
    const Vec2 point{*rc::gen::inRange(0, 6000) / 1000.0, *rc::gen::inRange(0, 6000) / 1000.0};
    RC_PRE(contains(plan.room.outline, point, 0.0));
    const auto place = from_walls(plan.room, point);
    RC_ASSERT(place.has_value());
    RC_ASSERT(place->second.has_value());
    RC_ASSERT((found_again(plan.room, *place) - point).norm() < 1e-9);
    RC_ASSERT(!testing::Test::HasFailure());
}

} // namespace
} // namespace throwline::lists
