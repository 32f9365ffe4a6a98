#include "plan/places.h"

#include "plan/reading_support.h"

#include <gtest/gtest.h>

namespace throwline::plan {
namespace {

using testing::tables;

constexpr double kExact_m = 1e-12;

Plan plan_of_beats() {
    Plan plan;
    for (const char* name : {"1", "2", "3", "4"}) {
        plan.beats.push_back({{name}, "", {}, {}});
    }
    return plan;
}

Mark mark_at(double x, double y) {
    Mark mark;
    mark.at = {x, y};
    return mark;
}

TEST(MarksAt, CarryOnUntilTheNextMark) {
    Plan plan = plan_of_beats();
    plan.beats[0].marks[{"a"}] = mark_at(1, 1);
    plan.beats[1].marks[{"b"}] = mark_at(2, 2);
    plan.beats[2].marks[{"a"}] = mark_at(3, 3);
    EXPECT_EQ(marks_at(plan, {"1"}).size(), 1U);
    EXPECT_EQ(marks_at(plan, {"2"}).at({"a"}).at, Vec2(1, 1));
    EXPECT_EQ(marks_at(plan, {"2"}).at({"b"}).at, Vec2(2, 2));
    EXPECT_EQ(marks_at(plan, {"4"}).at({"a"}).at, Vec2(3, 3));
}

TEST(MarksAt, WhoeverLeavesTheFloorIsGoneUntilBack) {
    Plan plan = plan_of_beats();
    plan.beats[0].marks[{"a"}] = mark_at(1, 1);
    plan.beats[1].marks[{"a"}] = OffFloor{};
    plan.beats[3].marks[{"a"}] = mark_at(4, 4);
    EXPECT_EQ(marks_at(plan, {"2"}).count({"a"}), 0U);
    EXPECT_EQ(marks_at(plan, {"3"}).count({"a"}), 0U);
    EXPECT_EQ(marks_at(plan, {"4"}).at({"a"}).at, Vec2(4, 4));
}

TEST(MarksAt, NobodyIsThereInABeatThatIsNot) {
    Plan plan = plan_of_beats();
    plan.beats[0].marks[{"a"}] = mark_at(1, 1);
    EXPECT_TRUE(marks_at(plan, {"9"}).empty());
}

Plan plan_of_a_room() {
    Plan plan;
    plan.room.outline = {{0, 0}, {6, 0}, {6, 4}, {0, 4}};
    plan.room.walls.resize(4);
    return plan;
}

std::optional<Vec3> held(const Plan& plan, const LampMount& mount) {
    Lamp lamp;
    lamp.mount = mount;
    return lamp_point(plan, lamp);
}

void expect_near(const std::optional<Vec3>& point, const Vec3& wanted) {
    ASSERT_TRUE(point);
    EXPECT_LT((*point - wanted).norm(), kExact_m) << point->transpose();
}

TEST(LampPoint, HangsBelowTheGrid) {
    Plan plan = plan_of_a_room();
    Grid grid;
    grid.origin = {1, 1};
    grid.pitch_x = Length::metres(1.5);
    grid.pitch_y = Length::metres(2);
    grid.columns = 3;
    grid.rows = 2;
    grid.height = Length::metres(4);
    plan.grid = grid;
    expect_near(held(plan, GridHang{"C2", Length::metres(0.5)}), {4, 3, 3.5});
    EXPECT_FALSE(held(plan, GridHang{"D1", {}}));
    plan.grid.reset();
    EXPECT_FALSE(held(plan, GridHang{"C2", {}}));
}

TEST(LampPoint, HangsAlongAPipeFromItsStart) {
    Plan plan = plan_of_a_room();
    plan.pipes = {{{"p"}, {1, 1}, {4, 5}, Length::metres(3), 0, 0, {}}};
    expect_near(held(plan, PipeHang{{"p"}, Length::metres(2.5), Length::metres(0.25)}),
                {2.5, 3, 2.75});
    EXPECT_FALSE(held(plan, PipeHang{{"q"}, {}, {}}));
}

TEST(LampPoint, StandsClearOfTheWallOnTheInside) {
    Plan plan = plan_of_a_room();
    const WallMount mount{1, Length::metres(1), Length::metres(2)};
    expect_near(held(plan, mount), {6 - kWallClearance.m(), 1, 2});
    plan.room.outline = {{0, 0}, {0, 4}, {6, 4}, {6, 0}};
    expect_near(held(plan, mount), {1, 4 - kWallClearance.m(), 2});
    EXPECT_FALSE(held(plan, WallMount{4, {}, {}}));
    EXPECT_FALSE(held(plan, WallMount{-1, {}, {}}));
}

TEST(LampPoint, StandsAndPracticalsAreWhereTheyAre) {
    const Plan plan = plan_of_a_room();
    expect_near(held(plan, StandMount{{1, 2}, Length::metres(2.5), ""}), {1, 2, 2.5});
    expect_near(held(plan, PracticalMount{{3, 2}, Length::metres(0.75)}), {3, 2, 0.75});
}

TEST(FloorHeight, IsThatOfTheHighestPlatform) {
    Plan plan = plan_of_a_room();
    plan.scenery = {{{"low"},
                     Riser{{2, 2}, Length::metres(2), Length::metres(2), Length::metres(0.2), {}},
                     {},
                     "",
                     true,
                     {}},
                    {{"high"},
                     Riser{{2.5, 2}, Length::metres(1), Length::metres(1), Length::metres(0.2), {}},
                     Length::metres(0.2),
                     "",
                     true,
                     {}},
                    {{"box"},
                     BoxPiece{{4, 2}, Length::metres(1), Length::metres(1), Length::metres(1), {}},
                     {},
                     "",
                     true,
                     {}}};
    EXPECT_EQ(floor_height_at(plan, tables(), {1.5, 2}), Length::metres(0.2));
    EXPECT_EQ(floor_height_at(plan, tables(), {2.5, 2}), Length::metres(0.4));
    EXPECT_EQ(floor_height_at(plan, tables(), {4, 2}), Length{});
    EXPECT_EQ(floor_height_at(plan, tables(), {5.5, 3.5}), Length{});
}

TEST(FloorHeight, CountsStockPlatforms) {
    catalogue::Catalogue own;
    catalogue::StockItem platform;
    platform.name = "own platform";
    platform.use = catalogue::StockUse::platform;
    platform.width = Length::metres(1);
    platform.depth = Length::metres(2);
    platform.height = Length::metres(0.6);
    own.stock = {platform};
    Plan plan = plan_of_a_room();
    plan.scenery = {
        {{"x"}, StockPiece{"own platform", {3, 2}, Angle::degrees(90)}, {}, "", true, {}}};
    EXPECT_EQ(floor_height_at(plan, own, {3.9, 2}), Length::metres(0.6));
    EXPECT_EQ(floor_height_at(plan, own, {3, 2.9}), Length{});
    own.stock[0].seat_height = Length::metres(0.4);
    EXPECT_EQ(floor_height_at(plan, own, {3.9, 2}), Length::metres(0.4));
    own.stock[0].use = catalogue::StockUse::table;
    EXPECT_EQ(floor_height_at(plan, own, {3.9, 2}), Length{});
}

Shot shot_of(const char* id, const char* camera, const char* beat, const Vec2& at) {
    Shot shot;
    shot.id.name = id;
    shot.camera.name = camera;
    shot.beats = {{beat}};
    shot.at = at;
    return shot;
}

Plan plan_of_shots() {
    Plan plan = plan_of_beats();
    plan.cameras.resize(2);
    plan.cameras[0].id.name = "A";
    plan.cameras[1].id.name = "B";
    plan.cameras[1].eye_height = Length::metres(1.2);
    plan.shots = {shot_of("1", "A", "2", {1, 0}), shot_of("2", "B", "2", {2, 0}),
                  shot_of("3", "A", "2", {3, 0}), shot_of("4", "B", "2", {4, 0}),
                  shot_of("5", "A", "4", {5, 0})};
    plan.shots[3].moves = {{4, 1}, {4, 2}};
    return plan;
}

std::string shot_at_place(const Plan& plan, std::size_t camera, const char* beat,
                          const char* shot) {
    const auto place = camera_place(plan, plan.cameras[camera], {beat}, {shot});
    return place ? place->shot.name : "nowhere";
}

TEST(CameraPlace, IsTheShotsOwnWhileItIsTaken) {
    const Plan plan = plan_of_shots();
    EXPECT_EQ(shot_at_place(plan, 0, "2", "1"), "1");
    EXPECT_EQ(shot_at_place(plan, 0, "2", "3"), "3");
}

TEST(CameraPlace, IsTheOthersLatestShotInTheBeat) {
    const Plan plan = plan_of_shots();
    EXPECT_EQ(shot_at_place(plan, 1, "2", "1"), "2");
    EXPECT_EQ(shot_at_place(plan, 1, "2", "3"), "2");
    EXPECT_EQ(shot_at_place(plan, 0, "2", "4"), "3");
}

TEST(CameraPlace, StaysWhereTheLastShotEnded) {
    const Plan plan = plan_of_shots();
    const auto place = camera_place(plan, plan.cameras[1], {"4"}, {"5"});
    ASSERT_TRUE(place);
    EXPECT_EQ(place->shot.name, "4");
    EXPECT_EQ(place->at, Vec2(4, 2));
    EXPECT_EQ(place->lens_height, Length::metres(1.2));
}

TEST(CameraPlace, IsHomeOrNowhereBeforeTheFirstShot) {
    Plan plan = plan_of_shots();
    EXPECT_EQ(shot_at_place(plan, 0, "1", ""), "nowhere");
    plan.cameras[0].home = Vec2{9, 9};
    const auto place = camera_place(plan, plan.cameras[0], {"1"}, {});
    ASSERT_TRUE(place);
    EXPECT_EQ(place->at, Vec2(9, 9));
    EXPECT_TRUE(place->shot.empty());
}

TEST(CameraPlace, TakesTheShotsHeightOverTheCameras) {
    Plan plan = plan_of_shots();
    plan.shots[0].height = Length::metres(0.3);
    EXPECT_EQ(camera_place(plan, plan.cameras[0], {"2"}, {"1"})->lens_height, Length::metres(0.3));
    EXPECT_EQ(camera_place(plan, plan.cameras[0], {"2"}, {"3"})->lens_height, Length::metres(1.5));
}

} // namespace
} // namespace throwline::plan
