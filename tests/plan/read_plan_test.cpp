#include "plan/reading_support.h"

#include <filesystem>
#include <gtest/gtest.h>

namespace throwline::plan {
namespace {

using testing::errors_of;
using testing::plan_with;
using testing::read;
using testing::tables;

Checked<Plan> read_demo(const std::string& name) {
    return read_plan_file(std::filesystem::path{THROWLINE_SOURCE_DIR} / "demo" / name, tables());
}

TEST(ReadPlan, EveryDemoIsRead) {
    int count = 0;
    for (const auto& entry : std::filesystem::directory_iterator{THROWLINE_SOURCE_DIR "/demo"}) {
        if (entry.path().extension() == ".json") {
            EXPECT_EQ(errors_of(read_plan_file(entry.path(), tables())), "");
            ++count;
        }
    }
    EXPECT_GE(count, 3);
}

TEST(ReadPlan, FeetAndInchesAreExactMetres) {
    const auto plan = read_demo("potters_bench.json");
    ASSERT_TRUE(plan) << errors_of(plan);
    EXPECT_EQ(plan->units, UnitSystem::imperial);
    EXPECT_EQ(plan->room.height, Length::metres(4.572));
    EXPECT_EQ(plan->room.outline[2], Vec2(9.7536, 7.3152));
    EXPECT_EQ(plan->grid->height, Length::metres(3.81));
    EXPECT_EQ(plan->people[0].stature, Length::metres(1.6764));
    EXPECT_EQ(*plan->shots[0].focal, Length::metres(0.028));
}

TEST(ReadPlan, PartsLandWhereTheyBelong) {
    const auto plan = read_demo("potters_bench.json");
    ASSERT_TRUE(plan) << errors_of(plan);
    EXPECT_EQ(plan->site.north, Angle::degrees(12));
    EXPECT_EQ(plan->site.hours->from.minutes, 9 * 60);
    EXPECT_EQ(plan->site.hours->to.minutes, 13 * 60);
    EXPECT_EQ(plan->room.openings[0].swing, (Swing{true, true, Angle::degrees(90)}));
    EXPECT_TRUE(plan->room.openings[0].way_out);
    const auto& mark = std::get<Mark>(plan->beats[0].marks.at({"potter"}));
    EXPECT_EQ(mark.pose, Pose::sit);
    EXPECT_EQ(std::get<ThingName>(mark.faces).name, "camera 1");
    EXPECT_EQ(std::get<GridHang>(plan->lamps[0].mount).position, "C2");
    EXPECT_EQ(std::get<StandMount>(plan->lamps[1].mount).height, Length::metres(2.1336));
    EXPECT_EQ(std::get<ThingName>(plan->lamps[0].aim).name, "potter");
    EXPECT_EQ(plan->lamps[0].role, LampRole::key);
}

TEST(ReadPlan, SmallestPlanTakesDefaults) {
    const auto plan = read(R"({"format": 1, "title": "x",
        "room": {"outline": [[0, 0], [6, 0], [6, 4]], "height": 3}})");
    ASSERT_TRUE(plan) << errors_of(plan);
    EXPECT_EQ(plan->units, UnitSystem::metric);
    ASSERT_EQ(plan->room.walls.size(), 3U);
    for (const Wall& wall : plan->room.walls) {
        EXPECT_EQ(wall.height, Length::metres(3));
        EXPECT_EQ(wall.thickness, Length::millimetres(100));
        EXPECT_FALSE(wall.dressed);
    }
    EXPECT_EQ(plan->targets, Targets{});
    EXPECT_EQ(plan->site, Site{});
    EXPECT_FALSE(plan->grid);
}

TEST(ReadPlan, WallsDifferWhereTheySaySo) {
    const auto plan = read(R"({"format": 1, "title": "x", "room": {
        "outline": [[0, 0], [6, 0], [6, 4]], "height": 3, "dressed": true, "thickness": "20cm",
        "walls": [{"wall": 2, "dressed": false, "height": "2.5 m", "finish": "red brick"}]}})");
    ASSERT_TRUE(plan) << errors_of(plan);
    const auto& walls = plan->room.walls;
    EXPECT_TRUE(walls[0].dressed);
    EXPECT_FALSE(walls[1].dressed);
    EXPECT_EQ(walls[1].height, Length::metres(2.5));
    EXPECT_EQ(walls[1].thickness, Length::metres(0.2));
    EXPECT_EQ(walls[1].finish, "red brick");
    EXPECT_EQ(walls[2].height, Length::metres(3));
}

TEST(ReadPlan, FacingIsAnAngleANameOrAPoint) {
    const auto plan = read(plan_with(R"("people": [{"id": "a"}, {"id": "b"}, {"id": "c"},
        {"id": "45"}], "beats": [{"id": "1", "marks": {
        "a": {"at": [1, 1], "faces": "90deg"}, "b": {"at": [2, 1], "faces": "45"},
        "c": {"at": [3, 1], "faces": [1, "2 m"]}, "45": {"at": [4, 1], "faces": 180}}},
        {"id": "2", "marks": {"a": "off"}}])"));
    ASSERT_TRUE(plan) << errors_of(plan);
    const auto& marks = plan->beats[0].marks;
    const auto faces = [&](const char* who) { return std::get<Mark>(marks.at({who})).faces; };
    EXPECT_EQ(faces("a"), Facing{Angle::degrees(90)});
    EXPECT_EQ(faces("b"), Facing{ThingName{"45"}});
    EXPECT_EQ(faces("c"), Facing{Vec2(1, 2)});
    EXPECT_EQ(faces("45"), Facing{Angle::degrees(180)});
    EXPECT_TRUE(std::holds_alternative<OffFloor>(plan->beats[1].marks.at({"a"})));
}

TEST(ReadPlan, LampsAreHeldInFiveWays) {
    const auto plan = read(plan_with(R"("grid": {"origin": [1, 1], "pitch": [1, 1],
        "count": [3, 3], "height": 3}, "pipes": [{"id": "p", "from": [0, 1], "to": [4, 1],
        "height": 2.8}], "lamps": [
        {"id": "1", "instrument": "Fresnel 1 kW", "hang": "B3", "drop": 0.2},
        {"id": "2", "instrument": "Fresnel 1 kW", "pipe": "p", "along": 1.5},
        {"id": "3", "instrument": "Fresnel 1 kW", "stand": [2, 2], "height": "2 m"},
        {"id": "4", "instrument": "Fresnel 1 kW", "wall": 3, "along": 1, "height": 2.5},
        {"id": "5", "instrument": "desk lamp", "practical": [3, 3], "height": 0.75,
         "cut": {"top": 0.5, "left": 1}}])"));
    ASSERT_TRUE(plan) << errors_of(plan);
    EXPECT_EQ(plan->lamps[0].mount, LampMount(GridHang{"B3", Length::metres(0.2)}));
    EXPECT_EQ(plan->lamps[1].mount, LampMount(PipeHang{{"p"}, Length::metres(1.5), {}}));
    EXPECT_EQ(plan->lamps[2].mount, LampMount(StandMount{{2, 2}, Length::metres(2), ""}));
    EXPECT_EQ(plan->lamps[3].mount,
              LampMount(WallMount{2, Length::metres(1), Length::metres(2.5)}));
    EXPECT_EQ(plan->lamps[4].mount, LampMount(PracticalMount{{3, 3}, Length::metres(0.75)}));
    EXPECT_EQ(plan->lamps[4].cut, (BeamCut{0.5, 0, 1, 0}));
    EXPECT_EQ(plan->lamps[4].aim, Aim{});
}

TEST(ReadPlan, ShutterIsAFractionOrSeconds) {
    const auto plan = read(plan_with(R"("cameras": [
        {"id": "1", "sensor": "2/3-type 16:9", "lens": "field zoom 18x", "shutter": "1/60"},
        {"id": "2", "sensor": "2/3-type 16:9", "lens": "field zoom 18x", "shutter": 0.5}])"));
    ASSERT_TRUE(plan) << errors_of(plan);
    EXPECT_EQ(plan->cameras[0].exposure_s, 1.0 / 60.0);
    EXPECT_EQ(plan->cameras[1].exposure_s, 0.5);
}

TEST(ReadPlan, EverySceneryKindIsRead) {
    const auto plan = read(plan_with(R"("scenery": [
        {"id": "1", "kind": "flat run", "from": [1, 3], "widths": [1.25, 0.5], "height": 2.4},
        {"id": "2", "item": "stool", "at": [1, 1], "turn": 30, "elevation": 0.2},
        {"id": "3", "kind": "box", "at": [1, 2], "width": 1, "depth": 2, "height": 3},
        {"id": "4", "kind": "cylinder", "at": [2, 2], "diameter": 0.5, "height": 3},
        {"id": "5", "kind": "prism", "outline": [[0, 0], [1, 0], [0, 1]], "height": 1},
        {"id": "6", "kind": "riser", "at": [3, 3], "width": 2, "depth": 1, "height": 0.2},
        {"id": "7", "kind": "drape", "along": [[0, 3], [6, 3]], "height": 3, "dressed": false}])"));
    ASSERT_TRUE(plan) << errors_of(plan);
    ASSERT_EQ(plan->scenery.size(), 7U);
    EXPECT_EQ(std::get<FlatRun>(plan->scenery[0].shape).total_width(), Length::metres(1.75));
    EXPECT_EQ(std::get<StockPiece>(plan->scenery[1].shape).turn, Angle::degrees(30));
    EXPECT_EQ(plan->scenery[1].elevation, Length::metres(0.2));
    EXPECT_EQ(std::get<BoxPiece>(plan->scenery[2].shape).depth, Length::metres(2));
    EXPECT_EQ(std::get<CylinderPiece>(plan->scenery[3].shape).diameter, Length::metres(0.5));
    EXPECT_EQ(std::get<PrismPiece>(plan->scenery[4].shape).outline.size(), 3U);
    EXPECT_EQ(std::get<Riser>(plan->scenery[5].shape).height, Length::metres(0.2));
    EXPECT_EQ(std::get<Drape>(plan->scenery[6].shape).along.size(), 2U);
    EXPECT_FALSE(plan->scenery[6].dressed);
}

TEST(ReadPlan, MissingFileIsAnError) {
    const auto plan = read_plan_file("/nowhere/at/all.json", tables());
    ASSERT_FALSE(plan);
    EXPECT_NE(errors_of(plan).find("/nowhere/at/all.json"), std::string::npos);
}

} // namespace
} // namespace throwline::plan
