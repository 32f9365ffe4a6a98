#include "sheet/lit_picture.h"

#include "checks/mark_light.h"
#include "photometry/beam_model.h"
#include "sheet/frame_picture.h"
#include "sheet/lit_levels.h"
#include "sheet/sheet_support.h"
#include "stage/light_at.h"
#include "support/small_plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

namespace throwline::sheet {
namespace {

using namespace testing_support;
using test::sheet_catalogue;

/// A plan with the stage and the view of its first shot.
struct Lit {
    plan::Plan plan;
    stage::Stage stage;
    stage::ShotView view;
    double needed_lx = 0.0;

    explicit Lit(plan::Plan of) : plan{std::move(of)} {
        const plan::Shot& shot = plan.shots.front();
        stage = stage::raise(plan, sheet_catalogue(), {"1"}, shot.id);
        view = *stage::view_of(plan, sheet_catalogue(), stage, shot);
        needed_lx = checks::needed_level_lx(plan, shot, view);
    }
    LitFrame frame() const { return {stage, view, plan.shots.front(), needed_lx}; }
};

/// A camera that looks level at a bare wall 6 m away, under one spot; everything dressed.
plan::Plan wall_plan() {
    plan::Plan plan = bare_room(10.0, 8.0, 4.0);
    for (plan::Wall& wall : plan.room.walls) {
        wall.dressed = true;
    }
    plan.room.ceiling_dressed = true;
    plan.room.floor_dressed = true;
    add_camera(plan, "camera 1");
    plan::Shot& shot = add_shot(plan, "1A", "camera 1", {5.0, 2.0}, {});
    shot.aim = plan::Aim{Vec3{5.0, 8.0, 1.6}};
    shot.focal = Length::millimetres(12.0);
    hang_lamp(plan, "1", "Fresnel 1 kW", {5.0, 3.0, 3.5}, plan::Aim{Vec3{5.0, 8.0, 1.6}}).focus =
        1.0;
    return plan;
}

double tone(const Pixels& pixels, double across, double down) {
    const int column = static_cast<int>(across * (pixels.width - 1));
    const int row = static_cast<int>(down * (pixels.height - 1));
    return pixels.rgb[static_cast<std::size_t>(3 * (row * pixels.width + column))] / 255.0;
}

double mean_tone(const Pixels& pixels) {
    return std::accumulate(pixels.rgb.begin(), pixels.rgb.end(), 0.0)
           / static_cast<double>(pixels.rgb.size()) / 255.0;
}

TEST(ShownTone, MiddleGreyIsWhereTheStandardPutsIt) {
    // IEC 61966-2-1: 1.055 x 0.18^(1 / 2.4) - 0.055.
    EXPECT_NEAR(shown_tone(0.18), 0.4614, 0.0005);
    EXPECT_DOUBLE_EQ(shown_tone(0.0), 0.0);
}

TEST(ShownTone, MoreIsAlwaysLighterAndNeverPastWhite) {
    double before = -1.0;
    for (double share = 0.0; share < 6.0; share += 0.05) {
        EXPECT_GT(shown_tone(share), before);
        EXPECT_LE(shown_tone(share), 1.0);
        before = shown_tone(share);
    }
}

TEST(LitPicture, AWallIsAsLightAsItsLevelSays) {
    const Lit lit{wall_plan()};
    const auto pixels = lit_picture(lit.frame(), 320);
    ASSERT_NE(pixels, nullptr);
    const double reflectance = lit.stage.solids.front().reflectance;
    for (const Vec2& at : {Vec2{0.5, 0.5}, Vec2{0.55, 0.45}, Vec2{0.4, 0.6}}) {
        const Vec3 direction = lit.view.frame.ray_direction({2 * at.x() - 1, 1 - 2 * at.y()});
        const Vec3 point =
            lit.view.pose.lens + direction * ((8.0 - lit.view.pose.lens.y()) / direction.y());
        const auto lights = stage::light_at(lit.stage, point - Vec3{0, 0.001, 0});
        const double level_lx =
            stage::sum_level_lx(lights, -Vec3::UnitY()) + bounced_level_lx(lit.stage);
        EXPECT_GT(level_lx, 20.0);
        EXPECT_NEAR(tone(*pixels, at.x(), at.y()),
                    shown_tone(level_lx / lit.needed_lx * reflectance), 0.02);
    }
}

TEST(LitPicture, AStopLessShowsHalfTheLight) {
    const Lit lit{wall_plan()};
    LitFrame closed = lit.frame();
    closed.needed_lx *= 2.0;
    EXPECT_LT(mean_tone(*lit_picture(closed, 160)), mean_tone(*lit_picture(lit.frame(), 160)));
}

TEST(LitPicture, WhatStandsInTheLightThrowsAShadow) {
    plan::Plan plan = wall_plan();
    const auto open = lit_picture(Lit{plan}.frame(), 320);
    // Beside the camera's view, but in the way from the lamp to the left of the wall.
    add_scenery(plan, "board", box_piece({4.6, 5.5}, 0.5, 0.05, 0.8), 2.2);
    const auto shaded = lit_picture(Lit{plan}.frame(), 320);
    int darker = 0;
    for (std::size_t i = 0; i < open->rgb.size(); i += 3) {
        darker += open->rgb[i] > shaded->rgb[i] + 20 ? 1 : 0;
    }
    EXPECT_GT(darker, 200);
}

TEST(LitPicture, WithoutABurningLampItIsDarkWithPaleLines) {
    plan::Plan plan = wall_plan();
    EXPECT_TRUE(has_light(Lit{plan}.stage));
    plan.lamps.clear();
    add_scenery(plan, "crate", box_piece({5.0, 6.0}, 0.6, 0.6, 1.6));
    const Lit lit{plan};
    EXPECT_FALSE(has_light(lit.stage));
    const auto pixels = lit_picture(lit.frame(), 160);
    EXPECT_LT(mean_tone(*pixels), 0.1);
    EXPECT_GT(*std::max_element(pixels->rgb.begin(), pixels->rgb.end()), 100);
}

TEST(LitPicture, SameFrameGivesTheSameBytes) {
    const Lit lit{test::full_plan()};
    EXPECT_EQ(*lit_picture(lit.frame(), 200), *lit_picture(lit.frame(), 200));
}

TEST(LitPicture, StoppedThereIsNone) {
    const Lit lit{wall_plan()};
    std::stop_source stop;
    stop.request_stop();
    EXPECT_EQ(lit_picture(lit.frame(), 160, stop.get_token()), nullptr);
    EXPECT_EQ(frame_picture_of(lit.stage, lit.view, lit.plan.shots.front(), 160, stop.get_token()),
              nullptr);
}

TEST(FramePictureOf, AStageAloneGivesTheSamePicture) {
    const checks::Analysis analysis = test::analysed(test::full_plan());
    const checks::ShotScene& scene = analysis.shots.front();
    EXPECT_EQ(*frame_picture_of(scene.stage, *scene.view, *scene.shot, 200),
              *frame_picture(scene, 200));
}

TEST(LitLevels, FilledInOrNotTheyAreThoseOfThePoints) {
    const Lit lit{test::full_plan()};
    const FrameSurfaces surfaces = surfaces_over_frame(lit.stage, lit.view, 320, 180);
    const LitLevels levels = levels_over_frame(lit.stage, surfaces, 2, lit.needed_lx);
    ASSERT_EQ(levels.columns, 160);
    int compared = 0;
    for (int row = 0; row < surfaces.rows; row += 14) {
        for (int column = 0; column < surfaces.columns; column += 10) {
            const FrameSurface& here = surfaces.at(column, row);
            if (here.owner < 0) {
                continue;
            }
            const std::vector<Vec3> point{here.point + 0.0005 * here.normal};
            const std::vector<Vec3> normal{here.normal};
            double level_lx = 0.0;
            for (std::size_t lamp = 0; lamp < lit.stage.lamps.size(); ++lamp) {
                level_lx +=
                    stage::levels_from(lit.stage, static_cast<int>(lamp), point, normal).front();
            }
            EXPECT_NEAR(levels.at(column, row), level_lx,
                        0.12 * std::max(level_lx, lit.needed_lx / 16.0));
            ++compared;
        }
    }
    EXPECT_GT(compared, 200);
}

TEST(LitLevels, WhatARoomThrowsBackIsThatOfASphere) {
    plan::Plan plan = wall_plan();
    const Lit lit{plan};
    // 10 x 8 x 4 m: 304 m2, all of one finish.
    const double rho = lit.stage.solids.front().reflectance;
    const double flux_lm = photometry::flux_lm(lit.stage.lamps.front().beam);
    EXPECT_NEAR(bounced_level_lx(lit.stage), flux_lm * rho / (304.0 * (1.0 - rho)), 1e-6);
    plan.lamps.clear();
    EXPECT_DOUBLE_EQ(bounced_level_lx(Lit{plan}.stage), 0.0);
}

} // namespace
} // namespace throwline::sheet
