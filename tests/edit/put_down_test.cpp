#include "edit/make.h"
#include "plan/places.h"
#include "support/demo_plan.h"
#include "support/small_plan.h"
#include "support/taken_step.h"

#include <gtest/gtest.h>

namespace throwline::edit {
namespace {

using support::shipped_catalogue;
using support::taken;
using testing_support::add_camera;
using testing_support::add_person;
using testing_support::bare_room;

Result<Step> put(const plan::Plan& plan, Shelf shelf, const std::string& item, const Vec2& at) {
    const Context context{plan, shipped_catalogue(), {{"1"}, {}}};
    return put_down(context, {shelf, item}, at);
}

plan::Plan with_grid() {
    plan::Plan plan = bare_room();
    plan::Grid grid;
    grid.origin = {1.0, 1.0};
    grid.pitch_x = grid.pitch_y = Length::metres(1.2);
    grid.columns = 4;
    grid.rows = 3;
    grid.height = Length::metres(3.5);
    plan.grid = grid;
    return plan;
}

TEST(PutDown, FurnitureNearAWallHasItsBackToIt) {
    // A fridge is 0.6 m or so deep: 0.5 m from each wall in turn of a room drawn anticlockwise.
    const plan::Plan plan = bare_room();
    const auto turn_at = [&](const Vec2& at) {
        const auto shape = taken(put(plan, Shelf::stock, "fridge", at)).scenery.at(0).shape;
        return std::get<plan::StockPiece>(shape).turn.deg();
    };
    EXPECT_NEAR(std::abs(turn_at({5.0, 0.5})), 180.0, 1e-9);
    EXPECT_NEAR(turn_at({9.5, 4.0}), -90.0, 1e-9);
    EXPECT_NEAR(turn_at({5.0, 7.5}), 0.0, 1e-9);
    EXPECT_NEAR(turn_at({0.5, 4.0}), 90.0, 1e-9);
    EXPECT_NEAR(turn_at({5.0, 4.0}), 0.0, 1e-9);
}

TEST(PutDown, SecondOfAKindHasANumber) {
    const plan::Plan one = taken(put(bare_room(), Shelf::stock, "fridge", {5, 4}));
    const auto step = put(one, Shelf::stock, "fridge", {3, 4});
    EXPECT_EQ(taken(step).scenery.at(1).id.name, "fridge 2");
    EXPECT_EQ(step->made, (std::vector<Thing>{{Kind::scenery, "fridge 2", 0}}));
}

TEST(PutDown, PersonStandsOnAMarkOfTheBeat) {
    plan::Plan plan = bare_room();
    plan.beats.push_back({{"2"}, {}, {}, {}});
    const Context context{plan, shipped_catalogue(), {{"2"}, {}}};
    const plan::Plan after = taken(put_down(context, {Shelf::person, "crew"}, {3, 4}));
    ASSERT_EQ(after.people.size(), 1U);
    EXPECT_EQ(after.people[0].kind, plan::PersonKind::crew);
    EXPECT_TRUE(after.beats[0].marks.empty());
    const auto mark = std::get<plan::Mark>(after.beats[1].marks.at(after.people[0].id));
    EXPECT_EQ(mark.at, (Vec2{3, 4}));
}

TEST(PutDown, FirstPersonMakesTheFirstBeat) {
    plan::Plan plan = bare_room();
    plan.beats.clear();
    const Context context{plan, shipped_catalogue(), {}};
    const plan::Plan after = taken(put_down(context, {Shelf::person, "cast"}, {3, 4}));
    ASSERT_EQ(after.beats.size(), 1U);
    EXPECT_EQ(after.beats[0].id.name, "1");
    EXPECT_EQ(after.beats[0].marks.size(), 1U);
}

TEST(PutDown, FirstCameraHasASensorThatItsLensCovers) {
    const plan::Camera camera =
        taken(put(bare_room(), Shelf::camera, "field zoom 18x", {5, 1})).cameras.at(0);
    EXPECT_EQ(camera.id.name, "camera 1");
    EXPECT_EQ(camera.lens, "field zoom 18x");
    // Its circle is 11.5 mm: the 2/3-type chip of 11.0 mm across is the largest of 16:9 in it.
    EXPECT_EQ(camera.sensor, "2/3-type 16:9");
    EXPECT_EQ(camera.support, "tripod");
    EXPECT_EQ(*camera.home, (Vec2{5, 1}));
}

TEST(PutDown, NextCameraIsLikeTheOthers) {
    plan::Plan plan = bare_room();
    for (const char* name : {"camera 1", "camera 2", "camera 3"}) {
        add_camera(plan, name);
        plan.cameras.back().sensor = "2/3-type 4:3";
    }
    const plan::Camera camera = taken(put(plan, Shelf::camera, "", {5, 1})).cameras.at(3);
    EXPECT_EQ(camera.id.name, "camera 4");
    EXPECT_EQ(camera.lens, "field zoom 18x");
    EXPECT_EQ(camera.sensor, "2/3-type 4:3");
}

TEST(PutDown, KitDecidesTheFirstSensor) {
    plan::Plan plan = bare_room();
    plan.kit = {{"1/2-type 16:9", 2}};
    EXPECT_EQ(taken(put(plan, Shelf::camera, "field zoom 18x", {5, 1})).cameras.at(0).sensor,
              "1/2-type 16:9");
}

TEST(PutDown, LampHangsInItsSquareOfTheGrid) {
    // Position B2 is at (2.2, 2.2); its square reaches 0.6 m each way.
    const auto step = put(with_grid(), Shelf::lamp, "Fresnel 650 W", {2.7, 2.7});
    const plan::Lamp lamp = taken(step).lamps.at(0);
    EXPECT_EQ(step->name, "Hang lamp 1");
    EXPECT_EQ(std::get<plan::GridHang>(lamp.mount).position, "B2");
}

TEST(PutDown, LampBesideTheGridStandsOnAStand) {
    const plan::Lamp lamp =
        taken(put(with_grid(), Shelf::lamp, "Fresnel 650 W", {8.0, 6.0})).lamps.at(0);
    const auto stand = std::get<plan::StandMount>(lamp.mount);
    EXPECT_EQ(stand.support, "medium light stand");
    EXPECT_DOUBLE_EQ(stand.height.m(), 2.4);
    // Nobody is there: 3 m straight ahead, at the height of a face.
    EXPECT_EQ(std::get<Vec3>(lamp.aim), (Vec3{8.0, 9.0, 1.5}));
}

TEST(PutDown, LampHangsOnTheNearerPipe) {
    plan::Plan plan = bare_room();
    plan.pipes.push_back({{"far"}, {1, 3}, {9, 3}, Length::metres(3), 0, 0, {}});
    plan.pipes.push_back({{"near"}, {1, 4}, {9, 4}, Length::metres(3), 0, 0, {}});
    const auto step = put(plan, Shelf::lamp, "Fresnel 650 W", {4.0, 3.6});
    const auto hang = std::get<plan::PipeHang>(taken(step).lamps.at(0).mount);
    EXPECT_EQ(hang.pipe.name, "near");
    EXPECT_NEAR(hang.along.m(), 3.0, 1e-12);
    EXPECT_TRUE(std::holds_alternative<plan::StandMount>(
        taken(put(plan, Shelf::lamp, "Fresnel 650 W", {4.0, 5.0})).lamps.at(0).mount));
}

TEST(PutDown, LampIsAimedAtTheNearestOfTheCast) {
    plan::Plan plan = with_grid();
    add_person(plan, "Ada", {6.0, 6.0}, Angle{});
    add_person(plan, "Bo", {3.0, 6.0}, Angle{});
    add_person(plan, "grip", {2.2, 2.4}, Angle{});
    plan.people.back().kind = plan::PersonKind::crew;
    const plan::Lamp lamp = taken(put(plan, Shelf::lamp, "Fresnel 650 W", {2.2, 2.2})).lamps.at(0);
    EXPECT_EQ(std::get<plan::ThingName>(lamp.aim).name, "Bo");
}

TEST(PutDown, PracticalStaysWhereItIsPut) {
    plan::Plan plan = with_grid();
    add_person(plan, "Ada", {6.0, 6.0}, Angle{});
    const plan::Lamp lamp = taken(put(plan, Shelf::lamp, "desk lamp", {2.2, 2.2})).lamps.at(0);
    EXPECT_EQ(std::get<plan::PracticalMount>(lamp.mount).at, (Vec2{2.2, 2.2}));
    EXPECT_EQ(lamp.role, plan::LampRole::practical);
    EXPECT_TRUE(std::holds_alternative<std::monostate>(lamp.aim));
}

TEST(PutDown, BoomReachesTowardsTheNearestPerson) {
    plan::Plan plan = bare_room();
    add_person(plan, "Ada", {5.0, 7.0}, Angle{});
    const plan::Boom boom = taken(put(plan, Shelf::boom, "", {5.0, 2.0})).booms.at(0);
    // 5 m away; nine tenths of a pole of 3 m.
    EXPECT_NEAR(boom.microphone.y(), 4.7, 1e-12);
}

TEST(PutDown, OutletGoesToItsCircuitOrANewOne) {
    plan::Plan plan = bare_room();
    plan.units = UnitSystem::imperial;
    const plan::Plan one = taken(put(plan, Shelf::outlet, "", {0, 1}));
    EXPECT_DOUBLE_EQ(one.circuits.at(0).volts, 120.0);
    EXPECT_DOUBLE_EQ(one.circuits.at(0).breaker_amps, 20.0);
    const auto step = put(one, Shelf::outlet, "circuit 1", {0, 2});
    EXPECT_EQ(taken(step).circuits.at(0).outlets.size(), 2U);
    EXPECT_EQ(step->made, (std::vector<Thing>{{Kind::outlet, "circuit 1", 1}}));
}

TEST(PutDown, SaysWhatTheStoresDoNotHave) {
    const plan::Plan plan = bare_room();
    EXPECT_EQ(put(plan, Shelf::stock, "throne", {1, 1}).error().message,
              "the Stores have no throne");
    EXPECT_EQ(put(plan, Shelf::lamp, "sun", {1, 1}).error().message, "the Stores have no lamp sun");
    EXPECT_EQ(put(plan, Shelf::camera, "eye", {1, 1}).error().message,
              "the Stores have no lens eye");
    EXPECT_EQ(put(plan, Shelf::outlet, "C9", {1, 1}).error().message, "there is no circuit C9");
    EXPECT_EQ(put(plan, Shelf::boom, "", {1, 5000}).error().message,
              "a plan reaches 1000 m from its origin, no farther");
}

} // namespace
} // namespace throwline::edit
