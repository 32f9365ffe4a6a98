/// A longer lens on the same camera never takes in more.

#include "stage/shot_view.h"
#include "support/demo_plan.h"

#include <gtest/gtest.h>

namespace throwline {
namespace {

TEST(LongerLens, NeverWidensWhatAShotTakesIn) {
    const plan::Plan plan = support::demo_plan("cookery_set_right.json");
    const catalogue::Catalogue& tables = support::shipped_catalogue();
    for (const plan::Shot& shot : plan.shots) {
        const stage::Stage stage = stage::raise(plan, tables, shot.beats.front(), shot.id);
        plan::Shot longer = shot;
        double last_rad = 10.0;
        for (double focal_mm = 8.0; focal_mm <= 130.0; focal_mm *= 1.17) {
            longer.focal = Length::millimetres(focal_mm);
            const auto view = stage::view_of(plan, tables, stage, longer);
            ASSERT_TRUE(view) << shot.id.name;
            EXPECT_LT(view->angle.horizontal.rad(), last_rad);
            last_rad = view->angle.horizontal.rad();
        }
    }
}

TEST(LongerLens, NeverTakesInAPointThatTheShorterLeavesOut) {
    const plan::Plan plan = support::demo_plan("workshop_interview.json");
    const catalogue::Catalogue& tables = support::shipped_catalogue();
    plan::Shot shot = plan.shots.front();
    const stage::Stage stage = stage::raise(plan, tables, shot.beats.front(), shot.id);
    // Aim and place stay, so the frames are nested.
    shot.aim = Vec3{3.3, 2.6, 1.1};
    shot.focal = Length::millimetres(28);
    const auto wide = stage::view_of(plan, tables, stage, shot);
    shot.focal = Length::millimetres(50);
    const auto tight = stage::view_of(plan, tables, stage, shot);
    ASSERT_TRUE(wide && tight);
    int in_tight = 0;
    for (double x = 0.0; x <= 5.6; x += 0.2) {
        for (double y = 0.0; y <= 4.4; y += 0.2) {
            for (double z = 0.0; z <= 2.7; z += 0.2) {
                if (tight->frame.contains({x, y, z})) {
                    ++in_tight;
                    EXPECT_TRUE(wide->frame.contains({x, y, z}));
                }
            }
        }
    }
    EXPECT_GT(in_tight, 20);
}

} // namespace
} // namespace throwline
