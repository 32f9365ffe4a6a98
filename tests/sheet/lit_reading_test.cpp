#include "sheet/lit_reading.h"

#include "sheet/lit_levels.h"
#include "sheet/sheet_support.h"
#include "stage/light_at.h"
#include "support/small_plan.h"

#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::sheet_catalogue;

TEST(LitReading, IsTheLevelOnWhatAPlaceShows) {
    const plan::Plan plan = test::full_plan();
    const plan::Shot& shot = plan.shots.front();
    const stage::Stage stage = stage::raise(plan, sheet_catalogue(), shot.beats.front(), shot.id);
    const stage::ShotView view = *stage::view_of(plan, sheet_catalogue(), stage, shot);
    const FrameSurfaces surfaces = surfaces_over_frame(stage, view, 64, 36);
    const LitLevels levels = levels_over_frame(stage, surfaces, 1, 500.0);
    double lightest_lx = 0.0;
    for (int row = 0; row < surfaces.rows; row += 4) {
        for (int column = 0; column < surfaces.columns; column += 4) {
            const Vec2 at{(2.0 * column + 1.0) / surfaces.columns - 1.0,
                          1.0 - (2.0 * row + 1.0) / surfaces.rows};
            const FrameSurface surface = surface_at(stage, view, at);
            EXPECT_EQ(surface.owner, surfaces.at(column, row).owner);
            const double level_lx = level_on_lx(stage, surface);
            lightest_lx = std::max(lightest_lx, level_lx);
            // Those of the picture are filled in between and leave out what cannot be seen.
            EXPECT_NEAR(level_lx, levels.at(column, row), 0.12 * std::max(level_lx, 500.0 / 16.0));
        }
    }
    EXPECT_GT(lightest_lx, 50.0);
}

TEST(LitReading, NothingFallsOnWhatIsOutOfTheRoom) {
    plan::Plan plan = test::full_plan();
    const stage::Stage stage = stage::raise(plan, sheet_catalogue(), {"1"});
    EXPECT_EQ(level_on_lx(stage, FrameSurface{}), 0.0);
}

TEST(LevelWords, TellsHowFarItIsFromWhatTheStopAsksFor) {
    // log2(540 / 640) = -0.245
    EXPECT_EQ(level_words(540.0, 640.0, UnitSystem::metric), "540 lx, 0.2 stops under");
    EXPECT_EQ(level_words(1280.0, 640.0, UnitSystem::metric), "1280 lx, 1 stop over");
    EXPECT_EQ(level_words(650.0, 640.0, UnitSystem::metric), "650 lx, as the stop asks");
    EXPECT_EQ(level_words(2560.0, 640.0, UnitSystem::imperial), "238 fc, 2 stops over");
}

TEST(LevelWords, TenStopsUnderIsNoLight) {
    EXPECT_EQ(level_words(0.0, 640.0, UnitSystem::metric), "no light");
    EXPECT_EQ(level_words(640.0 / 1024.0, 640.0, UnitSystem::metric), "no light");
    EXPECT_EQ(level_words(640.0 / 256.0, 640.0, UnitSystem::metric), "2.5 lx, 8 stops under");
}

TEST(LevelWords, TellsWhatAFrameIsExposedFor) {
    EXPECT_EQ(exposed_words(640.0, UnitSystem::metric), "exposed for 640 lx");
    EXPECT_EQ(exposed_words(640.0, UnitSystem::imperial), "exposed for 59 fc");
}

} // namespace
} // namespace throwline::sheet
