#include "ui/window/level_overlay.h"

#include "edit/moves.h"
#include "ui/desk_case.h"

#include <QPushButton>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

using support::came_to;
using support::demo_plan;

/// The levels of a demo, and what came of them.
struct Overlaid {
    std::unique_ptr<Desk> desk = support::desk_with(demo_plan("workshop_interview.json"));
    QWidget window;
    LevelOverlay overlay{*desk, &window};
    std::vector<FloorLevels> arrived;

    Overlaid() {
        QObject::connect(&overlay, &LevelOverlay::arrived, &overlay,
                         [this](const FloorLevels& levels) { arrived.push_back(levels); });
        window.show();
    }
    void want(bool levels) const {
        sheet::Overlays overlays = desk->overlays();
        overlays.levels = levels;
        desk->set_overlays(overlays);
    }
    bool has(const plan::PlanPtr& plan) const {
        return came_to([&] { return !arrived.empty() && arrived.back().of.plan == plan; });
    }
    edit::Step dimmed() const {
        plan::Plan plan = *desk->plan();
        plan.lamps.front().level = 0.25;
        return {"Dim", std::move(plan), {}};
    }
};

TEST(LevelOverlay, WorksNothingOutUntilLevelsAreWanted) {
    Overlaid overlaid;
    EXPECT_FALSE(overlaid.overlay.is_running());
    overlaid.want(true);
    EXPECT_TRUE(overlaid.overlay.is_running());
    EXPECT_TRUE(overlaid.has(overlaid.desk->plan()));
    EXPECT_FALSE(overlaid.overlay.isVisible());
    overlaid.want(false);
    EXPECT_FALSE(overlaid.overlay.is_running());
}

TEST(LevelOverlay, FollowsTheBeat) {
    Overlaid overlaid;
    overlaid.want(true);
    ASSERT_TRUE(overlaid.has(overlaid.desk->plan()));
    const plan::Id<plan::Beat> last = overlaid.desk->plan()->beats.back().id;
    ASSERT_NE(last, overlaid.desk->now().beat);
    overlaid.desk->set_now({last, {}});
    EXPECT_TRUE(came_to([&] { return overlaid.arrived.back().of.beat == last; }));
}

TEST(LevelOverlay, FollowsAStepAndItsUndoing) {
    Overlaid overlaid;
    overlaid.want(true);
    ASSERT_TRUE(overlaid.desk->take(overlaid.dimmed()));
    EXPECT_TRUE(overlaid.has(overlaid.desk->plan()));
    overlaid.desk->undo();
    EXPECT_TRUE(overlaid.has(overlaid.desk->plan()));
}

TEST(LevelOverlay, MapsADragOnceItPauses) {
    Overlaid overlaid;
    overlaid.want(true);
    ASSERT_TRUE(overlaid.has(overlaid.desk->plan()));
    overlaid.desk->preview(overlaid.dimmed());
    EXPECT_FALSE(overlaid.overlay.is_running());
    EXPECT_TRUE(overlaid.has(overlaid.desk->shown()));
    EXPECT_TRUE(overlaid.desk->is_previewing());
}

TEST(LevelOverlay, StopsUntilToldToGoOnOrThePlanChanges) {
    Overlaid overlaid;
    overlaid.want(true);
    overlaid.overlay.stop();
    EXPECT_FALSE(overlaid.overlay.is_running());
    EXPECT_TRUE(overlaid.overlay.isVisible());
    // Another shot of the same beat has the same light.
    overlaid.desk->set_now({overlaid.desk->now().beat, {}});
    EXPECT_FALSE(overlaid.overlay.is_running());
    QPushButton* again = nullptr;
    for (auto* button : overlaid.overlay.findChildren<QPushButton*>()) {
        again = button->isVisible() ? button : again;
    }
    ASSERT_NE(again, nullptr);
    QTest::mouseClick(again, Qt::LeftButton);
    EXPECT_TRUE(overlaid.has(overlaid.desk->plan()));
    EXPECT_FALSE(overlaid.overlay.isVisible());

    ASSERT_TRUE(overlaid.desk->take(overlaid.dimmed()));
    overlaid.overlay.stop();
    overlaid.desk->undo();
    EXPECT_TRUE(overlaid.has(overlaid.desk->plan()));
}

} // namespace
} // namespace throwline::ui
