#include "lists/cable_run.h"
#include "lists/list_cases.h"
#include "support/rig_case.h"

#include <gtest/gtest.h>

namespace throwline::lists {
namespace {

/// The room is 10 m by 8 m; an outlet at the middle of the lower wall.
plan::Plan wired_room() {
    plan::Plan plan = support::small_room();
    support::put_circuit(plan, "C1", 230.0, 16.0).outlets = {{5.0, 0.0}};
    return plan;
}

// From (5, 0) over 2 m and up to (3, 3): 5 m level. From 0.3048 m up to 3.5 m, then 0.5 m down.
TEST(CableRun, GoesUpAlongAndDownToAHungLamp) {
    plan::Plan plan = wired_room();
    support::put_grid(plan, plan::PipeRun::both);
    plan::Lamp& lamp = support::hang_on_grid(plan, "1", "B2");
    lamp.circuit = {"C1"};
    std::get<plan::GridHang>(lamp.mount).drop = Length::metres(0.5);
    const auto run = cable_run(plan, lamp);
    ASSERT_TRUE(run);
    EXPECT_EQ(run->way, CableWay::overhead);
    EXPECT_NEAR(run->level_m, 5.0, 1e-9);
    EXPECT_NEAR(run->rise_m, 3.5 - 0.3048 + 0.5, 1e-9);
    EXPECT_NEAR(with_slack(*run, UnitSystem::metric).m(), 8.6952 * 1.1 + 1.5, 1e-9);
}

// To a stand 1 m off the left wall, 2 m up it: 5 m along the lower wall, 2 m up the left one, 1 m
// off; the other way round is longer.
TEST(CableRun, FollowsTheWallsTheShorterWay) {
    plan::Plan plan = wired_room();
    plan::Lamp& lamp = support::plug_in(plan, "1", "C1");
    lamp.mount = plan::StandMount{{1.0, 2.0}, Length::metres(2.0), "test stand"};
    const auto run = cable_run(plan, lamp);
    ASSERT_TRUE(run);
    EXPECT_EQ(run->way, CableWay::along_walls);
    EXPECT_NEAR(run->level_m, 8.0, 1e-9);
    EXPECT_NEAR(run->rise_m, 2.3048, 1e-9);
    EXPECT_TRUE(run->passes.empty());
}

TEST(CableRun, TellsTheDoorsThatItPasses) {
    plan::Plan plan = wired_room();
    plan::Opening door;
    door.id = {"stage door"};
    door.wall = 0;
    door.from_start = Length::metres(2.0);
    door.width = Length::metres(1.0);
    plan.room.openings.push_back(door);
    plan::Lamp& lamp = support::plug_in(plan, "1", "C1");
    lamp.mount = plan::StandMount{{1.0, 2.0}, Length::metres(2.0), "test stand"};
    EXPECT_EQ(cable_run(plan, lamp)->passes.size(), 1U);
    lamp.mount = plan::StandMount{{9.0, 2.0}, Length::metres(2.0), "test stand"};
    EXPECT_TRUE(cable_run(plan, lamp)->passes.empty());
}

TEST(CableRun, CrossesTheFloorFromAnOutletInIt) {
    plan::Plan plan = wired_room();
    plan.circuits.front().outlets = {{5.0, 4.0}};
    plan::Lamp& lamp = support::plug_in(plan, "1", "C1");
    lamp.mount = plan::StandMount{{2.0, 2.0}, Length::metres(2.0), "test stand"};
    const auto run = cable_run(plan, lamp);
    EXPECT_EQ(run->way, CableWay::over_floor);
    EXPECT_NEAR(run->level_m, 5.0, 1e-9);
}

TEST(CableRun, TakesTheNearestOutlet) {
    plan::Plan plan = wired_room();
    plan.circuits.front().outlets = {{5.0, 0.0}, {0.0, 3.0}, {10.0, 1.0}};
    plan::Lamp& lamp = support::plug_in(plan, "1", "C1");
    lamp.mount = plan::StandMount{{1.0, 2.0}, Length::metres(2.0), "test stand"};
    EXPECT_EQ(cable_run(plan, lamp)->outlet, (Vec2{0.0, 3.0}));
}

TEST(CableRun, NeedsACircuitWithAnOutlet) {
    plan::Plan plan = wired_room();
    plan.circuits.front().outlets.clear();
    EXPECT_FALSE(cable_run(plan, support::plug_in(plan, "1", "C1")));
    EXPECT_FALSE(cable_run(plan, support::plug_in(plan, "2", "")));
}

TEST(CablesList, ReachesAndAddsUp) {
    for (const lists_test::Production& production : lists_test::productions()) {
        const Table cables = lists_test::list(production, "cables");
        double sum_m = 0.0;
        double totals_m = 0.0;
        for (const Section& section : cables.sections) {
            for (const Row& row : section.rows) {
                const double cable_m =
                    lists_test::cell(cables, row, "cable_m").number.value_or(0.0);
                (row.total ? totals_m : sum_m) += cable_m;
                if (!row.total) {
                    EXPECT_GE(cable_m,
                              lists_test::cell(cables, row, "with_slack_m").number.value_or(0.0)
                                  - kAtTheWall.m())
                        << production.name;
                }
            }
        }
        EXPECT_NEAR(sum_m, totals_m, 1e-6) << production.name;
    }
}

} // namespace
} // namespace throwline::lists
