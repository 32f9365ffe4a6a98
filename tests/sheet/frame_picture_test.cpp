#include "sheet/frame_picture.h"

#include "sheet/frame_surfaces.h"
#include "sheet/sheet_support.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::analysed;
using test::full_plan;
using test::small_plan;

int channel(const Pixels& pixels, double across, double down, int index) {
    const int column = static_cast<int>(across * (pixels.width - 1));
    const int row = static_cast<int>(down * (pixels.height - 1));
    return pixels.rgb[static_cast<std::size_t>(3 * (row * pixels.width + column) + index)];
}

bool is_green(const Pixels& pixels, double across, double down) {
    return channel(pixels, across, down, 1) > channel(pixels, across, down, 0) + 20;
}

TEST(FramePicture, HasTheShapeOfThePictureArea) {
    const checks::Analysis analysis = analysed(small_plan());
    const auto pixels = frame_picture(analysis.shots.front(), 320);
    ASSERT_NE(pixels, nullptr);
    EXPECT_EQ(pixels->width, 320);
    EXPECT_NEAR(static_cast<double>(pixels->width) / pixels->height,
                optics::aspect_of(analysis.shots.front().view->frame), 0.01);
    EXPECT_EQ(pixels->rgb.size(), static_cast<std::size_t>(3 * pixels->width * pixels->height));
}

TEST(FramePicture, TheSubjectIsTintedWhereTheLensIsAimed) {
    const checks::Analysis analysis = analysed(small_plan());
    const auto pixels = frame_picture(analysis.shots.front(), 320);
    ASSERT_NE(pixels, nullptr);
    const auto where = analysis.shots.front().view->frame.project(
        analysis.shots.front().stage.figures.front().chest);
    ASSERT_TRUE(where);
    EXPECT_TRUE(is_green(*pixels, 0.5 + where->x() / 2.0, 0.5 - where->y() / 2.0));
    EXPECT_FALSE(is_green(*pixels, 0.02, 0.02));
}

/// Walls that no shot may see are crossed by lines in the ink of errors; the same walls dressed are
/// plain.
TEST(FramePicture, WhatIsNotDressedIsHatched) {
    const auto hatched_share = [](const plan::Plan& plan) {
        const auto pixels = frame_picture(analysed(plan).shots.front(), 320);
        int count = 0;
        for (std::size_t i = 0; i < pixels->rgb.size(); i += 3) {
            count += pixels->rgb[i] > pixels->rgb[i + 2] + 40 ? 1 : 0;
        }
        return count / static_cast<double>(pixels->width * pixels->height);
    };
    plan::Plan plan = small_plan();
    EXPECT_GT(hatched_share(plan), 0.05);
    for (plan::Wall& wall : plan.room.walls) {
        wall.dressed = true;
    }
    plan.room.ceiling_dressed = true;
    EXPECT_LT(hatched_share(plan), 0.001);
}

TEST(FramePicture, SameShotGivesTheSameBytes) {
    const auto first = frame_picture(analysed(full_plan()).shots.front(), 240);
    const auto second = frame_picture(analysed(full_plan()).shots.front(), 240);
    ASSERT_TRUE(first && second);
    EXPECT_EQ(*first, *second);
}

TEST(FramePicture, AShotThatFindsNobodyHasNone) {
    plan::Plan plan = small_plan();
    plan.beats.front().marks.clear();
    EXPECT_EQ(frame_picture(analysed(plan).shots.front(), 240), nullptr);
}

TEST(FramePicture, SafeAreasAreSharesOfTheFrame) {
    Marks marks;
    draw_frame_picture(marks, {10.0, 20.0, 160.0, 90.0}, std::make_shared<Pixels>(), true);
    ASSERT_EQ(marks.size(), 4U);
    // SMPTE ST 2046-1: 93 % and 90 % of each side, in the middle.
    const auto& action = std::get<Path>(marks[1]).points;
    EXPECT_NEAR(action[2].x() - action[0].x(), 148.8, 1e-9);
    EXPECT_NEAR(action[2].y() - action[0].y(), 83.7, 1e-9);
    EXPECT_NEAR(action[0].x() - 10.0, 5.6, 1e-9);
    const auto& title = std::get<Path>(marks[2]).points;
    EXPECT_NEAR(title[2].x() - title[0].x(), 144.0, 1e-9);
    EXPECT_NEAR(title[2].y() - title[0].y(), 81.0, 1e-9);
}

TEST(FrameSurfaces, NormalsLookAtTheLens) {
    const checks::Analysis analysis = analysed(full_plan());
    const checks::ShotScene& scene = analysis.shots.front();
    const FrameSurfaces surfaces = surfaces_over_frame(scene.stage, *scene.view, 64, 36);
    ASSERT_EQ(surfaces.cells.size(), 64U * 36U);
    for (const FrameSurface& surface : surfaces.cells) {
        if (surface.owner >= 0) {
            EXPECT_NEAR(surface.normal.norm(), 1.0, 1e-9);
            EXPECT_LE(surface.normal.dot(surface.point - scene.view->pose.lens), 1e-9);
        }
    }
}

TEST(FrameSurfaces, AFlatWallHasNoSeamsAndTwoThingsHaveOne) {
    stage::Stage stage;
    stage.solids.resize(2);
    FrameSurface a;
    a.owner = 0;
    a.solid = 0;
    a.normal = Vec3::UnitX();
    FrameSurface b = a;
    b.point = {0.0, 0.4, 0.1};
    EXPECT_EQ(seam_between(stage, a, b), Seam::none);
    FrameSurface nearer = b;
    nearer.point.x() = 0.3;
    EXPECT_EQ(seam_between(stage, a, nearer), Seam::outline);
    FrameSurface turned = b;
    turned.normal = Vec3::UnitY();
    turned.point = a.point;
    EXPECT_EQ(seam_between(stage, a, turned), Seam::crease);
    FrameSurface other = b;
    other.owner = 1;
    EXPECT_EQ(seam_between(stage, a, other), Seam::outline);
}

} // namespace
} // namespace throwline::sheet
