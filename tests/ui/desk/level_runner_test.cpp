#include "ui/desk/level_runner.h"

#include "support/small_plan.h"
#include "ui/desk_case.h"

#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

using support::came_to;

plan::PlanPtr lit_room(double level) {
    using namespace testing_support;
    plan::Plan plan = bare_room(8.0, 6.0, 4.0);
    hang_lamp(plan, "spot", "Fresnel 1 kW", {2, 1, 3.5}, Vec3{4, 3, 1.0}).level = level;
    hang_lamp(plan, "panel", "LED panel 60x60 soft", {6, 2, 3.2}, Vec3{4, 4, 0.8});
    add_scenery(plan, "crate", box_piece({4.4, 3.3}, 0.8, 0.6, 1.4));
    return std::make_shared<const plan::Plan>(std::move(plan));
}

/// A runner, and what arrived from it.
struct Running {
    CataloguePtr catalogue = support::shared_catalogue();
    LevelRunner runner;
    std::vector<FloorLevels> arrived;

    Running() {
        QObject::connect(&runner, &LevelRunner::arrived, &runner,
                         [this](const FloorLevels& levels) { arrived.push_back(levels); });
    }
    LevelsWanted of(plan::PlanPtr plan) const { return {std::move(plan), catalogue, {"1"}}; }
    bool has_ended() const {
        return came_to([&] { return !runner.is_running(); });
    }
    sheet::LevelPicture fresh(const plan::Plan& plan) const {
        const stage::Stage stage = stage::raise(plan, *catalogue, {"1"});
        return sheet::level_picture(*stage::level_map(stage, plan.room.outline, {}), plan.units);
    }
};

TEST(LevelRunner, MapsTheLightOfABeat) {
    Running running;
    const plan::PlanPtr plan = lit_room(1.0);
    running.runner.ask(running.of(plan));
    EXPECT_TRUE(running.runner.is_running());
    ASSERT_TRUE(running.has_ended());
    ASSERT_EQ(running.arrived.size(), 1U);
    EXPECT_EQ(running.arrived.front().of, running.of(plan));
    EXPECT_EQ(*running.arrived.front().picture->pixels, *running.fresh(*plan).pixels);
}

TEST(LevelRunner, OnlyWhatWasAskedForLastArrives) {
    Running running;
    const plan::PlanPtr last = lit_room(0.5);
    for (const double level : {1.0, 0.9, 0.8}) {
        running.runner.ask(running.of(lit_room(level)));
    }
    running.runner.ask(running.of(last));
    ASSERT_TRUE(running.has_ended());
    ASSERT_EQ(running.arrived.size(), 1U);
    EXPECT_EQ(running.arrived.front().of.plan, last);
}

TEST(LevelRunner, AnAlteredPlanIsMappedLikeAFreshOne) {
    Running running;
    running.runner.ask(running.of(lit_room(1.0)));
    ASSERT_TRUE(running.has_ended());
    const plan::PlanPtr altered = lit_room(0.4);
    running.runner.ask(running.of(altered));
    ASSERT_TRUE(running.has_ended());
    EXPECT_EQ(*running.arrived.back().picture->pixels, *running.fresh(*altered).pixels);
}

TEST(LevelRunner, WhatIsKnownIsNotAskedTwice) {
    Running running;
    const plan::PlanPtr plan = lit_room(1.0);
    running.runner.ask(running.of(plan));
    ASSERT_TRUE(running.has_ended());
    running.runner.ask(running.of(plan));
    EXPECT_FALSE(running.runner.is_running());
}

TEST(LevelRunner, NothingArrivesOfWhatWasGivenUp) {
    Running running;
    running.runner.ask(running.of(lit_room(1.0)));
    running.runner.stop();
    EXPECT_FALSE(running.runner.is_running());
    const plan::PlanPtr next = lit_room(0.5);
    running.runner.ask(running.of(next));
    ASSERT_TRUE(running.has_ended());
    ASSERT_EQ(running.arrived.size(), 1U);
    EXPECT_EQ(running.arrived.front().of.plan, next);
}

TEST(LevelRunner, WhatWasGivenUpCanBeAskedForAgain) {
    Running running;
    const plan::PlanPtr plan = lit_room(1.0);
    running.runner.ask(running.of(plan));
    running.runner.stop();
    running.runner.ask(running.of(plan));
    ASSERT_TRUE(running.has_ended());
    EXPECT_EQ(running.arrived.size(), 1U);
}

TEST(LevelRunner, APlanWithoutARoomHasNoMap) {
    Running running;
    running.runner.ask(running.of(std::make_shared<const plan::Plan>()));
    ASSERT_TRUE(running.has_ended());
    ASSERT_EQ(running.arrived.size(), 1U);
    EXPECT_EQ(running.arrived.front().picture, nullptr);
}

TEST(LevelRunner, TellsHowFarItIs) {
    Running running;
    std::vector<double> told;
    QObject::connect(&running.runner, &LevelRunner::went_on, &running.runner,
                     [&](double share) { told.push_back(share); });
    running.runner.ask(running.of(lit_room(1.0)));
    ASSERT_TRUE(running.has_ended());
    ASSERT_FALSE(told.empty());
    EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
    EXPECT_DOUBLE_EQ(told.back(), 1.0);
}

} // namespace
} // namespace throwline::ui
