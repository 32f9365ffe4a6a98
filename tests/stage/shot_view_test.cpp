#include "stage/shot_view.h"

#include "optics/shot_size.h"
#include "support/shipped_catalogue.h"
#include "support/small_plan.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::stage {
namespace {

using namespace testing_support;

const catalogue::Catalogue& shared_catalogue() {
    static const catalogue::Catalogue catalogue = shipped_catalogue();
    return catalogue;
}

/// One person of 1.70 m at (5, 6) who faces the camera at (5, 2).
plan::Plan one_person(plan::Pose pose = plan::Pose::stand) {
    plan::Plan plan = bare_room();
    add_camera(plan, "camera 1");
    add_person(plan, "a", {5, 6}, Angle::degrees(-90), pose);
    add_shot(plan, "1A", "camera 1", {5, 2}, {"a"});
    return plan;
}

struct Seen {
    Stage stage;
    std::optional<ShotView> view;
};
Seen seen_in(const plan::Plan& plan) {
    Seen seen;
    seen.stage = raise(plan, shared_catalogue(), {"1"}, {"1A"});
    seen.view = view_of(plan, shared_catalogue(), seen.stage, plan.shots.front());
    return seen;
}

Vec3 at_height(const Figure& figure, double z_m) {
    return {figure.crown.x(), figure.crown.y(), z_m};
}

TEST(ShotView, TheFrameCutsWhereTheSizeWantsItWithItsHeadroom) {
    for (const auto& [wanted, size] :
         {std::pair{ShotSize::close_up, optics::ShotSize::close_up},
          std::pair{ShotSize::medium, optics::ShotSize::medium},
          std::pair{ShotSize::medium_long, optics::ShotSize::medium_long},
          std::pair{ShotSize::full, optics::ShotSize::full}}) {
        for (const plan::Pose pose : {plan::Pose::stand, plan::Pose::sit}) {
            plan::Plan plan = one_person(pose);
            plan.shots.front().size = wanted;
            const Seen seen = seen_in(plan);
            ASSERT_TRUE(seen.view.has_value());
            EXPECT_TRUE(seen.view->focal_chosen);
            EXPECT_NEAR(seen.view->focal / *seen.view->wanted_focal, 1.0, 1e-9);
            const optics::WantedFrame frame = optics::wanted_frame(size);
            const Figure& figure = seen.stage.figures.front();
            const auto bottom = seen.view->frame.project(
                at_height(figure, figure.landmark_z_m(frame.bottom_cut_share)));
            const auto crown = seen.view->frame.project(figure.crown);
            EXPECT_NEAR(bottom->y(), -1.0, 1e-6);
            EXPECT_NEAR(crown->y(), 1.0 - 2.0 * frame.headroom_share, 1e-6);
            EXPECT_NEAR(crown->x(), 0.0, 1e-9);
        }
    }
}

// Medium shot of 1.70 m on 2/3-type 16:9: frame .773 m high, 2.869 m away with f = 20 mm; pinhole
// geometry. With the lens level with the middle of the frame the wanted focal length is that.
TEST(ShotView, TheWantedFocalLengthIsThatOfTheFrameHeight) {
    plan::Plan plan = one_person();
    plan.shots.front().at = {5, 6 - 2.869};
    plan.shots.front().size = ShotSize::medium;
    const double bottom_m = 0.582 * 1.70;
    plan.shots.front().height = Length::metres(bottom_m + 0.773 / 2.0);
    const Seen seen = seen_in(plan);
    EXPECT_NEAR(seen.view->wanted_focal->mm(), 20.0, 0.05);
    EXPECT_NEAR(seen.view->pose.tilt.deg(), 0.0, 0.05);
    plan.shots.front().aim = Vec3{5, 6, bottom_m + 0.773 / 2.0};
    EXPECT_NEAR(seen_in(plan).view->wanted_focal->mm(), 20.0, 0.05);
}

TEST(ShotView, AFocalLengthInTheShotIsKeptAndTheHeadroomToo) {
    plan::Plan plan = one_person();
    plan.shots.front().size = ShotSize::medium;
    plan.shots.front().focal = Length::millimetres(12);
    const Seen seen = seen_in(plan);
    EXPECT_FALSE(seen.view->focal_chosen);
    EXPECT_DOUBLE_EQ(seen.view->focal.mm(), 12.0);
    EXPECT_GT(seen.view->wanted_focal->mm(), 12.0);
    const double headroom = optics::wanted_frame(optics::ShotSize::medium).headroom_share;
    const auto crown = seen.view->frame.project(seen.stage.figures.front().crown);
    EXPECT_NEAR(crown->y(), 1.0 - 2.0 * headroom, 1e-6);
}

TEST(ShotView, TheLensLimitsTheFocalLengthButNotWhatIsWanted) {
    plan::Plan plan = one_person();
    plan.shots.front().at = {5, 0.6};
    plan.shots.front().size = ShotSize::extreme_close_up;
    const Seen seen = seen_in(plan);
    EXPECT_DOUBLE_EQ(seen.view->focal.mm(), 137.0);
    EXPECT_GT(seen.view->wanted_focal->mm(), 137.0);
    EXPECT_NEAR(seen.view->stop, 2.9, 1e-9);
    plan.shots.front().extender = true;
    const Seen doubled = seen_in(plan);
    EXPECT_NEAR(doubled.view->focal.mm(), std::min(274.0, doubled.view->wanted_focal->mm()), 1e-6);
    EXPECT_GT(doubled.view->stop, 2.0 * 2.0);
}

TEST(ShotView, AllHeadsFitInTheWidth) {
    plan::Plan plan = one_person();
    add_person(plan, "b", {7.5, 5.5}, Angle::degrees(-90), plan::Pose::stand, 1.9);
    plan.shots.front().subjects.push_back({"b"});
    plan.shots.front().size = ShotSize::close_up;
    const Seen seen = seen_in(plan);
    EXPECT_LT(seen.view->focal, *seen.view->wanted_focal);
    double widest = 0.0;
    for (const Figure& figure : seen.stage.figures) {
        const auto place = seen.view->frame.project(figure.eyes);
        widest = std::max(widest, std::abs(place->x()));
        EXPECT_LT(seen.view->frame.project(figure.crown)->y(), 1.0);
    }
    EXPECT_LT(widest, 1.0);
    EXPECT_GT(widest, 0.9);
}

TEST(ShotView, WithoutASizeTheChestIsInTheMiddleAndTheLensIsWide) {
    const Seen seen = seen_in(one_person());
    const auto chest = seen.view->frame.project(seen.stage.figures.front().chest);
    EXPECT_NEAR(chest->x(), 0.0, 1e-9);
    EXPECT_NEAR(chest->y(), 0.0, 1e-9);
    EXPECT_FALSE(seen.view->wanted_focal.has_value());
    EXPECT_DOUBLE_EQ(seen.view->focal.mm(), 7.6);
    EXPECT_DOUBLE_EQ(seen.view->stop, 2.0);
    // 2 atan(9.59 / (2 x 7.6)) = 64.50 degrees.
    EXPECT_NEAR(seen.view->angle.horizontal.deg(), 64.50, 0.01);
}

TEST(ShotView, FocusIsOnTheNearerEyeOfTheFirstSubject) {
    plan::Plan plan = one_person();
    plan.shots.front().size = ShotSize::medium;
    const Seen seen = seen_in(plan);
    const Figure& figure = seen.stage.figures.front();
    EXPECT_NEAR(seen.view->focus_distance.m(),
                std::min(depth_m(seen.view->pose, figure.left_eye),
                         depth_m(seen.view->pose, figure.right_eye)),
                1e-12);
    EXPECT_NEAR(seen.view->focus_distance.m(), 4.0, 0.15);
    plan.shots.front().focus = Length::metres(3.0);
    EXPECT_DOUBLE_EQ(seen_in(plan).view->focus_distance.m(), 3.0);
}

TEST(ShotView, NobodyToLookAtGivesNoView) {
    plan::Plan plan = one_person();
    plan.shots.front().subjects.clear();
    EXPECT_FALSE(seen_in(plan).view.has_value());
    plan.shots.front().aim = Vec3{5, 6, 1};
    EXPECT_TRUE(seen_in(plan).view.has_value());
    plan.cameras.front().lens = "no such lens";
    EXPECT_FALSE(seen_in(plan).view.has_value());
}

TEST(ShotView, TheViewAndTheCameraOnTheFloorAgree) {
    plan::Plan plan = one_person();
    plan.shots.front().size = ShotSize::medium_close_up;
    const Seen seen = seen_in(plan);
    const PlacedCamera* camera = seen.stage.camera({"camera 1"});
    EXPECT_EQ(seen.view->owner, camera->owner);
    EXPECT_DOUBLE_EQ(seen.view->pose.tilt.rad(), camera->pose.tilt.rad());
    EXPECT_DOUBLE_EQ(seen.view->pose.pan.rad(), camera->pose.pan.rad());
}

TEST(ShotView, HitsGoRowByRowFromTheTopLeft) {
    plan::Plan plan = one_person();
    plan.shots.front().aim = Vec3{5, 6, 1.5};
    plan.shots.front().focal = Length::millimetres(8);
    const Seen seen = seen_in(plan);
    const FrameHits hits = hits_over_frame(seen.stage, *seen.view, 33, 21);
    ASSERT_EQ(hits.cells.size(), 33U * 21U);
    const auto owner_at = [&](int column, int row) {
        const int index = row * 33 + column;
        const auto& cell = hits.cells[static_cast<std::size_t>(index)];
        return cell ? seen.stage.owners[static_cast<std::size_t>(cell->owner)].name : "nothing";
    };
    EXPECT_EQ(owner_at(16, 10), "a");
    EXPECT_EQ(owner_at(0, 20), "floor");
    // Wall 4 is at x = 0, left of a camera that looks up the page; wall 3 is straight ahead.
    EXPECT_EQ(owner_at(24, 10), "wall 3");
    EXPECT_EQ(owner_at(0, 10), "wall 3");
    for (const auto& cell : hits.cells) {
        EXPECT_TRUE(cell.has_value());
        EXPECT_NE(cell->owner, seen.view->owner);
    }
}

RC_GTEST_PROP(ShotView, FromWhereverTheShotIsTakenTheHeadroomHolds, ()) {
    plan::Plan plan = one_person();
    plan::Shot& shot = plan.shots.front();
    shot.at = {*rc::gen::inRange(10, 90) / 10.0, *rc::gen::inRange(5, 40) / 10.0};
    shot.height = Length::metres(*rc::gen::inRange(30, 320) / 100.0);
    shot.size = *rc::gen::element(ShotSize::close_up, ShotSize::medium, ShotSize::full);
    const Seen seen = seen_in(plan);
    RC_ASSERT(seen.view.has_value());
    const Figure& figure = seen.stage.figures.front();
    const auto crown = seen.view->frame.project(figure.crown);
    RC_ASSERT(crown.has_value());
    RC_ASSERT(crown->y() < 1.0);
    RC_ASSERT(crown->y() > 0.75);
    RC_ASSERT(seen.view->focal >= seen.view->lens->focal_min);
    RC_ASSERT(seen.view->focal <= seen.view->lens->focal_max);
}

} // namespace
} // namespace throwline::stage
