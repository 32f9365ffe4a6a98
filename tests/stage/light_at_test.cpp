#include "stage/light_at.h"

#include "photometry/intensity_distribution.h"
#include "support/shipped_catalogue.h"
#include "support/small_plan.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <numbers>

namespace throwline::stage {
namespace {

using namespace testing_support;

const catalogue::Catalogue& shared_catalogue() {
    static const catalogue::Catalogue catalogue = shipped_catalogue();
    return catalogue;
}

Stage raised_stage(const plan::Plan& plan) {
    return raise(plan, shared_catalogue(), {"1"});
}

/// A room with one lamp whose turning point is at (5, 4, 3), straight down.
plan::Plan lit_room(const std::string& instrument) {
    plan::Plan plan = bare_room();
    hang_lamp(plan, "1", instrument, {5, 4, 3}, {});
    return plan;
}

const Vec3 kUp = Vec3::UnitZ();

TEST(LightAt, AHardLampFollowsTheInverseSquare) {
    const Stage stage = raised_stage(lit_room("Fresnel 1 kW"));
    const PlacedLamp& lamp = stage.lamps.front();
    // The front of a 300 mm housing: 2.85 m above the floor.
    EXPECT_NEAR(lamp.face.z(), 2.85, 1e-12);
    for (const double z_m : {0.01, 1.0, 2.0}) {
        const LampLight light = light_from(stage, 0, {5, 4, z_m});
        const double throw_m = 2.85 - z_m;
        EXPECT_NEAR(light.throw_m, throw_m, 1e-12);
        EXPECT_NEAR(light.intensity_cd, 82000.0, 1e-6);
        EXPECT_NEAR(light.level_square_lx(), 82000.0 / (throw_m * throw_m), 1e-6);
        EXPECT_DOUBLE_EQ(light.level_lx(kUp), light.open_level_lx(kUp));
        EXPECT_DOUBLE_EQ(light.level_lx(-kUp), 0.0);
        EXPECT_TRUE(light.blockers.empty());
    }
}

TEST(LightAt, OffTheAxisTheIntensityIsTheBeams) {
    const Stage stage = raised_stage(lit_room("Fresnel 1 kW"));
    // Half of the 12 degree beam: half the peak, on a floor 2.85 m below, cosine of 6 degrees.
    const double half = Angle::degrees(6.0).rad();
    const LampLight light = light_from(stage, 0, {5 + 2.85 * std::tan(half), 4, 0.0});
    EXPECT_NEAR(light.off_axis.deg(), 6.0, 1e-9);
    EXPECT_NEAR(light.intensity_cd, 41000.0, 1e-3);
    const double throw_m = 2.85 / std::cos(half);
    EXPECT_NEAR(light.level_lx(kUp), 41000.0 * std::cos(half) / (throw_m * throw_m), 1e-3);
}

TEST(LightAt, ASoftPanelFollowsTheClosedForm) {
    const Stage stage = raised_stage(lit_room("LED panel 60x60 soft"));
    const PlacedLamp& lamp = stage.lamps.front();
    const double below_m = 1.2;
    const LampLight light = light_from(stage, 0, lamp.face - below_m * kUp);
    // Four corner rectangles of 0.3 x 0.3 m at 1.2 m; E = pi L C.
    const double luminance = lamp.beam.peak_cd / 0.36;
    const double expected_lx =
        std::numbers::pi * luminance * 4.0 * photometry::corner_factor_parallel(0.3, 0.3, below_m);
    EXPECT_NEAR(light.level_lx(kUp), expected_lx, 1e-6 * expected_lx);
    EXPECT_LT(light.level_lx(kUp), lamp.beam.peak_cd / (below_m * below_m));
}

TEST(LightAt, AGridNarrowsASoftPanel) {
    const Stage stage = raised_stage(lit_room("LED panel 60x30 soft with grid"));
    const PlacedLamp& lamp = stage.lamps.front();
    const LampLight ahead = light_from(stage, 0, lamp.face - 2.0 * kUp);
    EXPECT_NEAR(ahead.narrowing, 1.0, 1e-9);
    const LampLight aside = light_from(stage, 0, lamp.face + Vec3{2.0 * std::tan(0.7), 0.0, -2.0});
    EXPECT_LT(aside.narrowing, 0.3);
}

TEST(LightAt, HalfASoftPanelIsHalfTheLight) {
    plan::Plan plan = lit_room("LED panel 60x60 soft");
    const LampLight open = light_from(raised_stage(plan), 0, {5, 4, 1});
    // A board whose edge stands in the plane of the lamp's middle line covers x > 5.
    add_scenery(plan, "board", box_piece({6.5, 4}, 3.0, 3.0, 0.02), 2.0);
    const Stage stage = raised_stage(plan);
    const LampLight light = light_from(stage, 0, {5, 4, 1});
    EXPECT_DOUBLE_EQ(light.seen_share, 0.5);
    EXPECT_NEAR(light.level_lx(kUp), 0.5 * open.level_lx(kUp), 1e-9);
    EXPECT_DOUBLE_EQ(light.open_level_lx(kUp), open.level_lx(kUp));
    ASSERT_EQ(light.blockers.size(), 1U);
    EXPECT_EQ(stage.owners[static_cast<std::size_t>(light.blockers[0].owner)].name, "board");
    EXPECT_DOUBLE_EQ(light.blockers[0].share, 0.5);
}

TEST(LightAt, TheOwnHousingAndThePersonOnTheMarkDoNotBlock) {
    plan::Plan plan = bare_room();
    add_person(plan, "a", {5, 6}, Angle::degrees(90));
    hang_lamp(plan, "1", "Fresnel 1 kW", {5, 2, 3}, plan::ThingName{"a"});
    const Stage stage = raised_stage(plan);
    const Figure& figure = stage.figures.front();
    // The face looks away from the lamp, so the head is in between.
    const LampLight blocked = light_from(stage, 0, figure.face);
    EXPECT_DOUBLE_EQ(blocked.seen_share, 0.0);
    EXPECT_EQ(blocked.blockers.front().owner, figure.owner);
    const LampLight free = light_from(stage, 0, figure.face, figure.owner);
    EXPECT_DOUBLE_EQ(free.seen_share, 1.0);
}

TEST(LightAt, BarnDoorsCutTheirOwnSide) {
    plan::Plan plan = lit_room("Fresnel 1 kW");
    plan.lamps.front().focus = 1.0;
    plan.lamps.front().cut.right = 1.0;
    plan.lamps.front().cut.top = 0.5;
    const Stage stage = raised_stage(plan);
    // Straight down, right is +x and up is +y; the flood's field is 70 degrees wide.
    const auto share = [&](double x_m, double y_m) {
        return light_from(stage, 0, {5 + x_m, 4 + y_m, 0}).passed_share;
    };
    EXPECT_DOUBLE_EQ(share(0.5, 0.0), 0.0);
    EXPECT_DOUBLE_EQ(share(-0.5, 0.0), 1.0);
    EXPECT_DOUBLE_EQ(share(-0.5, -1.5), 1.0);
    const double edge_m = 2.85 * std::tan(Angle::degrees(17.5).rad());
    EXPECT_DOUBLE_EQ(share(-0.5, edge_m - 0.15), 1.0);
    EXPECT_DOUBLE_EQ(share(-0.5, edge_m + 0.15), 0.0);
    const LampLight cut = light_from(stage, 0, {5.5, 4, 0});
    EXPECT_DOUBLE_EQ(cut.open_level_lx(kUp), 0.0);
    EXPECT_TRUE(cut.blockers.empty());
    EXPECT_GT(cut.intensity_cd, 0.0);
}

TEST(LightAt, ALanternShinesAllRound) {
    plan::Plan plan = lit_room("paper lantern 50 LED 60 W");
    const Stage stage = raised_stage(plan);
    EXPECT_TRUE(is_all_round(stage.lamps.front()));
    for (const Vec3& offset : {Vec3{0, 0, -2}, Vec3{2, 0, 0}, Vec3{0, -2, 0}}) {
        const LampLight light = light_from(stage, 0, Vec3{5, 4, 3} + offset);
        EXPECT_NEAR(light.throw_m, 2.0, 1e-12);
        EXPECT_DOUBLE_EQ(light.seen_share, 1.0);
        EXPECT_GT(light.level_square_lx(), 0.8 * 340.0 / 4.0);
    }
}

TEST(LightAt, LampsThatAreOutGiveNothing) {
    plan::Plan plan = lit_room("Fresnel 1 kW");
    plan.lamps.front().level = 0.0;
    EXPECT_DOUBLE_EQ(light_from(raised_stage(plan), 0, {5, 4, 1}).level_lx(kUp), 0.0);
    plan.lamps.front().level = 1.0;
    plan.lamps.front().beats = {{"2"}};
    EXPECT_DOUBLE_EQ(light_from(raised_stage(plan), 0, {5, 4, 1}).level_lx(kUp), 0.0);
    plan.lamps.front().beats = {{"1"}};
    EXPECT_GT(light_from(raised_stage(plan), 0, {5, 4, 1}).level_lx(kUp), 0.0);
}

TEST(LightAt, SumsAreOverAllLamps) {
    plan::Plan plan = lit_room("Fresnel 1 kW");
    hang_lamp(plan, "2", "Fresnel 2 kW", {5, 5, 3}, Vec3{5, 4, 0.5});
    const Stage stage = raised_stage(plan);
    const std::vector<LampLight> lights = light_at(stage, {5, 4, 0.5});
    ASSERT_EQ(lights.size(), 2U);
    EXPECT_EQ(lights[1].lamp, 1);
    EXPECT_DOUBLE_EQ(sum_level_lx(lights, kUp), lights[0].level_lx(kUp) + lights[1].level_lx(kUp));
    EXPECT_GE(sum_open_level_lx(lights, kUp), sum_level_lx(lights, kUp));
}

TEST(LightAt, MapsAgreeWithSinglePoints) {
    for (const char* instrument : {"Fresnel 1 kW", "LED panel 60x60 soft"}) {
        plan::Plan plan = lit_room(instrument);
        plan.lamps.front().focus = 1.0;
        add_scenery(plan, "box", box_piece({5.7, 4}, 0.5, 0.5, 1.0), 1.0);
        const Stage stage = raised_stage(plan);
        std::vector<Vec3> points;
        for (int i = 0; i <= 60; ++i) {
            points.emplace_back(2.0 + 0.1 * i, 4.0, 0.01);
        }
        const std::vector<double> levels = levels_from(stage, 0, points, std::vector<Vec3>{kUp});
        ASSERT_EQ(levels.size(), points.size());
        int dark = 0;
        for (std::size_t i = 0; i < points.size(); ++i) {
            const LampLight light = light_from(stage, 0, points[i]);
            // Where the whole face is seen or none of it, both patterns must say the same.
            if (light.seen_share == 0.0 || light.seen_share == 1.0) {
                EXPECT_NEAR(levels[i], light.level_lx(kUp), kDarkest_lx + 1e-9);
                dark += light.seen_share == 0.0 ? 1 : 0;
            }
        }
        EXPECT_GT(dark, 2);
    }
}

RC_GTEST_PROP(LightAt, OneMoreThingInTheWayNeverRaisesALevel, ()) {
    const auto coordinate = [](int low, int high) { return *rc::gen::inRange(low, high) / 10.0; };
    plan::Plan plan = lit_room(*rc::gen::element<std::string>(
        "Fresnel 1 kW", "cyc unit 1 kW", "LED panel 120x30 soft", "paper lantern 75 LED 150 W"));
    plan.lamps.front().focus = 1.0;
    plan.lamps.front().cut.left = *rc::gen::element(0.0, 0.6);
    const double x = coordinate(30, 70);
    const double y = coordinate(20, 60);
    const Vec3 receiver{x, y, 0.2};
    const Stage before = raised_stage(plan);
    const double box_x = coordinate(30, 70);
    const double box_y = coordinate(20, 60);
    add_scenery(plan, "box", box_piece({box_x, box_y}, 0.4, 0.7, 0.5), coordinate(5, 22));
    const Stage after = raised_stage(plan);
    const LampLight open = light_from(before, 0, receiver);
    const LampLight shaded = light_from(after, 0, receiver);
    for (const Vec3& normal : {Vec3{0, 0, 1}, Vec3{1, 0, 0}, open.to_lamp}) {
        RC_ASSERT(shaded.level_lx(normal) <= open.level_lx(normal));
        RC_ASSERT(shaded.open_level_lx(normal) == open.open_level_lx(normal));
        RC_ASSERT(shaded.level_lx(normal) <= shaded.open_level_lx(normal));
    }
    double shares = shaded.seen_share;
    for (const LightBlocker& blocker : shaded.blockers) {
        shares += blocker.share;
    }
    RC_ASSERT(std::abs(shares - shaded.passed_share) < 1e-12);
}

} // namespace
} // namespace throwline::stage
