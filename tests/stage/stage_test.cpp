#include "stage/stage.h"

#include "stage/mesh.h"
#include "support/shipped_catalogue.h"
#include "support/small_plan.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <set>

namespace throwline::stage {
namespace {

using namespace testing_support;

const catalogue::Catalogue& shared_catalogue() {
    static const catalogue::Catalogue catalogue = shipped_catalogue();
    return catalogue;
}

Stage raised_stage(const plan::Plan& plan, const std::string& shot = {},
                   const std::string& beat = "1") {
    return raise(plan, shared_catalogue(), {beat}, {shot});
}

std::string owner_met(const Stage& stage, const Vec3& from, const Vec3& to) {
    const auto hit = stage.rays->first_between({from, to});
    return hit ? stage.owners[static_cast<std::size_t>(hit->owner)].name : "nothing";
}

plan::Opening opening(plan::OpeningKind kind, int wall, double from_start_m, double width_m,
                      double sill_m, double head_m) {
    plan::Opening made;
    made.id = {"opening"};
    made.kind = kind;
    made.wall = wall;
    made.from_start = Length::metres(from_start_m);
    made.width = Length::metres(width_m);
    made.sill = Length::metres(sill_m);
    made.head = Length::metres(head_m);
    return made;
}

TEST(Stage, TheRoomFacesInwardsAllRound) {
    plan::Plan plan = bare_room();
    for (const bool turned_round : {false, true}) {
        if (turned_round) {
            std::reverse(plan.room.outline.begin(), plan.room.outline.end());
        }
        const Stage stage = raised_stage(plan);
        const Vec3 middle{5, 4, 2};
        for (const Vec3& direction : {Vec3{1, 0, 0}, Vec3{-1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, -1, 0},
                                      Vec3{0, 0, 1}, Vec3{0, 0, -1}, Vec3{0.6, 0.48, 0.64}}) {
            const auto hit = stage.rays->nearest_hit(middle, direction, 100.0);
            ASSERT_TRUE(hit.has_value());
            EXPECT_TRUE(hit->front);
        }
    }
}

TEST(Stage, WallsAreNamedAsThePlanFileCountsThem) {
    const Stage stage = raised_stage(bare_room());
    EXPECT_EQ(owner_met(stage, {5, 4, 2}, {5, -1, 2}), "wall 1");
    EXPECT_EQ(owner_met(stage, {5, 4, 2}, {11, 4, 2}), "wall 2");
    EXPECT_EQ(owner_met(stage, {5, 4, 2}, {5, 4, -1}), "floor");
    EXPECT_EQ(owner_met(stage, {5, 4, 2}, {5, 4, 9}), "ceiling");
}

TEST(Stage, RaysLeaveThroughWindowsButNotThroughShutDoors) {
    plan::Plan plan = bare_room();
    // On the wall x = 10, which starts at y = 0: from y = 2 to 3.
    plan.room.openings = {opening(plan::OpeningKind::window, 1, 2.0, 1.0, 0.9, 2.1)};
    const Stage with_window = raised_stage(plan);
    EXPECT_EQ(owner_met(with_window, {5, 2.5, 1.5}, {12, 2.5, 1.5}), "nothing");
    EXPECT_EQ(owner_met(with_window, {5, 2.5, 0.8}, {12, 2.5, 0.8}), "wall 2");
    EXPECT_EQ(owner_met(with_window, {5, 2.5, 2.2}, {12, 2.5, 2.2}), "wall 2");
    EXPECT_EQ(owner_met(with_window, {5, 1.9, 1.5}, {12, 1.9, 1.5}), "wall 2");
    EXPECT_EQ(owner_met(with_window, {5, 3.1, 1.5}, {12, 3.1, 1.5}), "wall 2");
    plan.room.openings.front().kind = plan::OpeningKind::door;
    const Stage with_door = raised_stage(plan);
    const auto hit = with_door.rays->first_between({{5, 2.5, 1.5}, {12, 2.5, 1.5}});
    ASSERT_TRUE(hit.has_value());
    EXPECT_TRUE(hit->front);
    const Solid& leaf = with_door.solids[static_cast<std::size_t>(hit->solid)];
    EXPECT_EQ(leaf.part, Part::door_leaf);
    EXPECT_EQ(leaf.owner, "opening");
}

TEST(Stage, FlatsAreDressedOnTheLeftOfTheirHeadingOnly) {
    plan::Plan plan = bare_room();
    plan::FlatRun run;
    run.from = {3, 4};
    run.heading = Angle::degrees(0);
    run.widths = {Length::metres(1.2), Length::metres(1.2)};
    run.height = Length::metres(2.4);
    add_scenery(plan, "back wall", run);
    const Stage stage = raised_stage(plan);
    const auto met = [&](const Vec3& from, const Vec3& to) {
        const auto hit = stage.rays->first_between({from, to});
        return stage.solids[static_cast<std::size_t>(hit->solid)];
    };
    const Solid front = met({4, 6, 1}, {4, 1, 1});
    EXPECT_EQ(front.part, Part::flat_front);
    EXPECT_TRUE(front.dressed);
    const Solid back = met({4, 1, 1}, {4, 6, 1});
    EXPECT_EQ(back.part, Part::flat_back);
    EXPECT_FALSE(back.dressed);
    EXPECT_EQ(front.owner_index, back.owner_index);
    // The dressed face stands on the line, the thickness lies behind it.
    EXPECT_NEAR(stage.rays->nearest_hit({4, 6, 1}, -Vec3::UnitY(), 10)->distance_m, 2.0, 1e-4);
    EXPECT_NEAR(stage.rays->nearest_hit({4, 1, 1}, Vec3::UnitY(), 10)->distance_m, 2.95, 1e-4);
    Mesh whole = front.mesh;
    whole.append(back.mesh);
    EXPECT_NEAR(volume_m3(whole), 2.4 * 2.4 * 0.05, 1e-9);
}

TEST(Stage, SightPassesUnderATableAndNotThroughItsTop) {
    plan::Plan plan = bare_room();
    add_scenery(plan, "table", stock_piece("dining table 1.6x0.9", {5, 4}));
    const Stage stage = raised_stage(plan);
    EXPECT_EQ(owner_met(stage, {5, 1, 0.3}, {5, 7, 0.3}), "nothing");
    EXPECT_EQ(owner_met(stage, {5, 1, 0.7}, {5, 7, 0.7}), "table");
    EXPECT_EQ(owner_met(stage, {5, 1, 0.8}, {5, 7, 0.8}), "nothing");
    EXPECT_EQ(owner_met(stage, {4.22, 1, 0.3}, {4.22, 7, 0.3}), "table");
}

// A lens 1.5 m high and a person 4.0 m away; the far edge of a .75 m top 3.6 m away hides the
// person below 1.5 - (1.5 - .75) 4.0 / 3.6 = .6667 m; similar triangles.
TEST(Stage, TheFarEdgeOfALowerTopDecidesWhatItHides) {
    plan::Plan plan = bare_room();
    add_scenery(plan, "top", box_piece({5, 1.0 + 3.2}, 4.0, 0.8, 0.05), 0.70);
    const Stage stage = raised_stage(plan);
    const Vec3 lens{5, 1, 1.5};
    EXPECT_EQ(owner_met(stage, lens, {5, 5, 0.660}), "top");
    EXPECT_EQ(owner_met(stage, lens, {5, 5, 0.673}), "nothing");
}

TEST(Stage, EverySolidPieceOfStockIsClosedOnItsFootprint) {
    std::set<std::string> seen;
    for (const catalogue::StockItem& item : shared_catalogue().stock) {
        plan::Plan plan = bare_room();
        add_scenery(plan, "piece", stock_piece(item.name, {5, 4}, 30.0), 0.5);
        const Stage stage = raised_stage(plan);
        ASSERT_EQ(stage.scenery.size(), 1U);
        const PlacedScenery& placed = stage.scenery.front();
        double highest = 0.0;
        double volume = 0.0;
        for (const Solid& solid : stage.solids) {
            if (solid.owner_index != placed.owner) {
                continue;
            }
            seen.insert(item.name);
            volume += volume_m3(solid.mesh);
            for (const Vec3& vertex : solid.mesh.vertices) {
                EXPECT_GE(vertex.z(), 0.5 - 1e-9) << item.name;
                highest = std::max(highest, vertex.z());
                EXPECT_TRUE(contains(placed.outline, floor_of(vertex), 0.005)) << item.name;
            }
        }
        EXPECT_NEAR(highest, placed.top_z_m, 1e-9) << item.name;
        EXPECT_GT(volume, 0.0) << item.name;
    }
    EXPECT_EQ(seen.size(), shared_catalogue().stock.size());
}

TEST(Stage, PeopleSitOnTheSeatUnderThemAndStandOnRisers) {
    plan::Plan plan = bare_room();
    add_scenery(plan, "chair", stock_piece("dining chair", {3, 4}));
    plan::Riser riser;
    riser.at = {7, 4};
    riser.width = Length::metres(2);
    riser.depth = Length::metres(1);
    riser.height = Length::metres(0.2);
    add_scenery(plan, "riser", riser);
    add_scenery(plan, "bed", stock_piece("single bed", {5, 6}));
    add_person(plan, "sitter", {3, 4}, Angle::degrees(-90), plan::Pose::sit);
    add_person(plan, "stander", {7, 4}, Angle::degrees(-90));
    add_person(plan, "sleeper", {5, 6}, Angle::degrees(-90), plan::Pose::lie);
    const Stage stage = raised_stage(plan);
    EXPECT_NEAR(stage.figure({"sitter"})->eyes.z(), 0.45 + 0.4588 * 1.70, 0.01);
    EXPECT_NEAR(stage.figure({"stander"})->crown.z(), 0.2 + 1.70, 1e-9);
    EXPECT_NEAR(stage.figure({"sleeper"})->soles_z_m, 0.5, 1e-9);
    // The mark's own words come first.
    auto& mark = std::get<plan::Mark>(plan.beats.front().marks[{"sitter"}]);
    mark.seat_height = Length::metres(0.6);
    EXPECT_NEAR(raised_stage(plan).figure({"sitter"})->eyes.z(), 0.6 + 0.4588 * 1.70, 0.01);
}

TEST(Stage, PeopleFaceBearingsThingsAndPlaces) {
    plan::Plan plan = bare_room();
    add_camera(plan, "camera 1");
    plan.cameras.front().home = Vec2{2, 1};
    add_person(plan, "a", {2, 4}, plan::ThingName{"camera 1"});
    add_person(plan, "b", {6, 4}, plan::ThingName{"a"});
    add_person(plan, "c", {6, 2}, Vec2{7, 3});
    add_person(plan, "d", {8, 2}, plan::ThingName{"nobody"});
    const Stage stage = raised_stage(plan);
    EXPECT_NEAR(stage.figure({"a"})->facing.deg(), -90.0, 1e-9);
    EXPECT_NEAR(std::abs(stage.figure({"b"})->facing.deg()), 180.0, 1e-9);
    EXPECT_NEAR(stage.figure({"c"})->facing.deg(), 45.0, 1e-9);
    EXPECT_NEAR(stage.figure({"d"})->facing.deg(), 0.0, 1e-9);
}

TEST(Stage, ACameraStandsBehindItsLensAndLooksAtItsSubject) {
    plan::Plan plan = bare_room();
    add_camera(plan, "camera 1");
    add_person(plan, "a", {5, 6}, Angle::degrees(-90));
    add_shot(plan, "1A", "camera 1", {5, 2}, {"a"}).size = ShotSize::medium;
    const Stage stage = raised_stage(plan, "1A");
    const PlacedCamera* camera = stage.camera({"camera 1"});
    ASSERT_NE(camera, nullptr);
    EXPECT_TRUE(camera->pose.lens.isApprox(Vec3{5, 2, 1.5}));
    EXPECT_NEAR(camera->pose.pan.deg(), 90.0, 1e-9);
    int parts = 0;
    for (const Solid& solid : stage.solids) {
        if (solid.owner_index == camera->owner) {
            ++parts;
            EXPECT_FALSE(solid.dressed);
            if (solid.part == Part::camera_body || solid.part == Part::lens_barrel) {
                for (const Vec3& vertex : solid.mesh.vertices) {
                    EXPECT_LT(vertex.y(), 2.0 + 0.02) << name_of(solid.part);
                }
            }
        }
    }
    // Barrel, body, column, and an operator of six parts.
    EXPECT_EQ(parts, 9);
    EXPECT_FALSE(contains(camera->operator_outline, {5, 2}));
    EXPECT_LT(centroid(camera->operator_outline).y(), centroid(camera->support_outline).y());
    // Seen from the subject, the camera itself is what stands there.
    EXPECT_EQ(owner_met(stage, {5, 5, 1.5}, {5, 1.6, 1.5}), "camera 1");
}

TEST(Stage, ALampIsAimedAtTheFaceInItsBeatAndStaysThere) {
    plan::Plan plan = bare_room();
    add_person(plan, "a", {5, 6}, Angle::degrees(-90));
    plan::Beat second;
    second.id = {"2"};
    plan::Mark moved_mark;
    moved_mark.at = {2, 2};
    second.marks[{"a"}] = moved_mark;
    plan.beats.push_back(second);
    hang_lamp(plan, "1", "Fresnel 1 kW", {3, 2, 3.5}, plan::ThingName{"a"});
    const Vec3 face = raised_stage(plan).figure({"a"})->face;
    for (const char* beat : {"1", "2"}) {
        const Stage stage = raised_stage(plan, {}, beat);
        const PlacedLamp* lamp = stage.lamp({"1"});
        ASSERT_NE(lamp, nullptr);
        EXPECT_TRUE(lamp->target->isApprox(face));
        EXPECT_TRUE(lamp->axis.isApprox((face - Vec3{3, 2, 3.5}).normalized()));
        EXPECT_NEAR(lamp->right.z(), 0.0, 1e-12);
        EXPECT_GT(lamp->up.z(), 0.0);
        EXPECT_TRUE(lamp->right.cross(lamp->axis).isApprox(lamp->up));
        EXPECT_NEAR((lamp->face - lamp->point).norm(), 0.15, 1e-9);
    }
    plan.lamps.front().aim_beat = {"2"};
    const Stage later = raised_stage(plan);
    EXPECT_NEAR(later.lamp({"1"})->target->x(), 2.0, 0.2);
}

TEST(Stage, ALampWithoutAimHangsStraightDown) {
    plan::Plan plan = bare_room();
    hang_lamp(plan, "1", "Fresnel 1 kW", {3, 2, 3.5}, {});
    const Stage stage = raised_stage(plan);
    EXPECT_TRUE(stage.lamps.front().axis.isApprox(-Vec3::UnitZ()));
    EXPECT_TRUE(stage.lamps.front().right.isApprox(Vec3::UnitX()));
    EXPECT_TRUE(stage.lamps.front().up.isApprox(Vec3::UnitY()));
    EXPECT_FALSE(stage.lamps.front().target.has_value());
}

TEST(Stage, AStandHoldsALampUpFromTheFloor) {
    plan::Plan plan = bare_room();
    plan::Lamp lamp;
    lamp.id = {"2"};
    lamp.instrument = "LED panel 60x30 soft";
    lamp.mount = plan::StandMount{{4, 4}, Length::metres(2.0), "medium light stand"};
    plan.lamps.push_back(lamp);
    const Stage stage = raised_stage(plan);
    EXPECT_EQ(owner_met(stage, {4, 2, 0.5}, {4, 6, 0.5}), "2");
    EXPECT_NEAR(area(stage.lamps.front().support_outline), 3.1416 * 0.55 * 0.55, 0.02);
}

TEST(Stage, ABoomReachesFromRaisedHandsToTheMicrophone) {
    plan::Plan plan = bare_room();
    plan::Boom boom;
    boom.id = {"boom"};
    boom.operator_at = {2, 4};
    boom.microphone = {5, 4};
    boom.height = Length::metres(2.2);
    boom.beats = {{"1"}};
    plan.booms.push_back(boom);
    plan::Beat second;
    second.id = {"2"};
    plan.beats.push_back(second);
    const Stage stage = raised_stage(plan);
    ASSERT_EQ(stage.booms.size(), 1U);
    EXPECT_EQ(owner_met(stage, {5, 2, 2.3}, {5, 6, 2.3}), "boom");
    EXPECT_EQ(owner_met(stage, {5, 2, 2.15}, {5, 6, 2.15}), "nothing");
    EXPECT_EQ(owner_met(stage, {3.5, 2, 2.275}, {3.5, 6, 2.275}), "boom");
    EXPECT_TRUE(raised_stage(plan, {}, "2").booms.empty());
}

TEST(Stage, ThingsAreLookedAtWhereTheyAre) {
    plan::Plan plan = bare_room();
    add_person(plan, "a", {5, 6}, Angle::degrees(-90));
    add_scenery(plan, "box", box_piece({2, 2}, 1, 1, 1), 1.0);
    const Stage stage = raised_stage(plan);
    EXPECT_TRUE(look_point(stage, "a")->isApprox(stage.figures.front().face));
    EXPECT_TRUE(look_point(stage, "box")->isApprox(Vec3{2, 2, 1.5}));
    EXPECT_FALSE(look_point(stage, "nobody").has_value());
}

TEST(Stage, TheSamePlanGivesTheSameStage) {
    plan::Plan plan = bare_room();
    add_camera(plan, "camera 1");
    add_person(plan, "a", {5, 6}, Angle::degrees(-90));
    add_shot(plan, "1A", "camera 1", {5, 2}, {"a"});
    const Stage first = raised_stage(plan, "1A");
    const Stage second = raised_stage(plan, "1A");
    ASSERT_EQ(first.solids.size(), second.solids.size());
    EXPECT_EQ(first.owners, second.owners);
    for (std::size_t i = 0; i < first.solids.size(); ++i) {
        EXPECT_EQ(first.solids[i].mesh.vertices, second.solids[i].mesh.vertices);
        EXPECT_EQ(first.solids[i].mesh.triangles, second.solids[i].mesh.triangles);
    }
}

TEST(Stage, NamesOfNothingAreLeftOut) {
    plan::Plan plan = bare_room();
    add_camera(plan, "camera 1");
    plan.cameras.front().home = Vec2{2, 2};
    plan.cameras.front().lens = "no such lens";
    plan.cameras.front().support = "no such support";
    add_scenery(plan, "thing", stock_piece("no such item", {1, 1}));
    hang_lamp(plan, "1", "no such lamp", {3, 2, 3.5}, plan::ThingName{"nobody"});
    const Stage stage = raised_stage(plan);
    EXPECT_TRUE(stage.lamps.empty());
    EXPECT_EQ(stage.cameras.size(), 1U);
    EXPECT_EQ(raised_stage(plan, "no shot", "no beat").figures.size(), 0U);
}

RC_GTEST_PROP(Stage, ARoomLetsNoRayOutWithoutOpenings, ()) {
    static const Stage kRoom = raised_stage(bare_room());
    const auto point = [](double share) { return 0.1 + 0.8 * share; };
    const double x = point(*rc::gen::inRange(0, 1000) / 1000.0) * 10.0;
    const double y = point(*rc::gen::inRange(0, 1000) / 1000.0) * 8.0;
    const double turn = *rc::gen::inRange(-3142, 3142) / 1000.0;
    const double rise = *rc::gen::inRange(-1500, 1500) / 1000.0;
    const Vec3 direction = raised(unit_at(turn) * std::cos(rise), std::sin(rise));
    const auto hit = kRoom.rays->nearest_hit({x, y, 2.0}, direction, 100.0);
    RC_ASSERT(hit.has_value());
    RC_ASSERT(hit->front);
}

} // namespace
} // namespace throwline::stage
