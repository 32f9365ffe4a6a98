#include "checks/power_checks.h"
#include "support/finding_signature.h"
#include "support/rig_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;
using plan::PipeRun;

namespace {

std::vector<Finding> loads(const plan::Plan& plan) {
    return rig_findings(pipe_load, plan);
}

/// Lamps of 10 kg at A2, C2 and C1, and another one of 4 kg at C2.
plan::Plan four_on_grid(PipeRun run) {
    plan::Plan plan = small_room();
    put_grid(plan, run);
    hang_on_grid(plan, "one", "A2");
    hang_on_grid(plan, "two", "C2");
    hang_on_grid(plan, "three", "C1");
    hang_on_grid(plan, "four", "C2", "led lamp");
    return plan;
}

} // namespace

// 10 + 10 + 4 = 24 kg.
TEST(PipeLoad, APipeCarriesTheSumOfItsLamps) {
    plan::Plan plan = small_room();
    put_pipe(plan, "bar", 24.1);
    hang_on_pipe(plan, "one", "bar", 1.0);
    hang_on_pipe(plan, "two", "bar", 2.0);
    hang_on_pipe(plan, "three", "bar", 6.0, "led lamp");
    EXPECT_TRUE(loads(plan).empty());
    plan.pipes[0].load_kg = 23.9;
    const auto findings = loads(plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].working.result, "24.0 kg");
    EXPECT_TRUE(is_about(findings[0], {"one", "two", "three"})) << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "0.1 kg more than the 23.9 kg")) << findings[0].message;
    // Along x at 2, 3 and 7 m: their middle is at 4 m.
    EXPECT_LT((findings[0].at - Vec2{4.0, 7.0}).norm(), 1e-9);
}

// Number 2 has A2 and both of C2: 24 kg; number 1 has 10 kg.
TEST(PipeLoad, PipesAlongTheLettersAreNumbered) {
    plan::Plan plan = four_on_grid(PipeRun::along_letters);
    plan.grid->pipe_load_kg = 23.9;
    const auto findings = loads(plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_TRUE(says(findings[0].message, "ipe 2 would carry 24.0 kg")) << findings[0].message;
    EXPECT_TRUE(is_about(findings[0], {"one", "two", "four"}));
    plan.grid->pipe_load_kg = 24.1;
    EXPECT_TRUE(loads(plan).empty());
}

// Letter C has C1 and both of C2: 24 kg; letter A has 10 kg.
TEST(PipeLoad, PipesAlongTheNumbersAreLettered) {
    plan::Plan plan = four_on_grid(PipeRun::along_numbers);
    plan.grid->pipe_load_kg = 23.9;
    const auto findings = loads(plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_TRUE(says(findings[0].message, "ipe C would carry 24.0 kg")) << findings[0].message;
    EXPECT_TRUE(is_about(findings[0], {"two", "three", "four"}));
}

TEST(PipeLoad, AGridThatRunsBothWaysLoadsBothPipes) {
    plan::Plan plan = four_on_grid(PipeRun::both);
    plan.grid->pipe_load_kg = 23.9;
    const auto findings = loads(plan);
    EXPECT_EQ(findings.size(), 2U) << messages(findings);
    EXPECT_TRUE(says(messages(findings), "ipe 2 would carry 24.0 kg"));
    EXPECT_TRUE(says(messages(findings), "ipe C would carry 24.0 kg"));
}

// C2 carries 14 kg, typed in either case.
TEST(PipeLoad, APointCarriesWhatHangsFromIt) {
    plan::Plan plan = four_on_grid(PipeRun::both);
    std::get<plan::GridHang>(plan.lamps[3].mount).position = "c2";
    plan.grid->point_load_kg = 13.9;
    const auto findings = loads(plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_TRUE(says(findings[0].message, "point C2 would carry 14.0 kg")) << findings[0].message;
    EXPECT_TRUE(is_about(findings[0], {"two", "four"}));
    // Letter C is 2 pitches of 2 m from x = 1 m, number 2 one from y = 1 m.
    EXPECT_LT((findings[0].at - Vec2{5.0, 3.0}).norm(), 1e-9);
    plan.grid->point_load_kg = 14.1;
    EXPECT_TRUE(loads(plan).empty());
}

TEST(PipeLoad, NothingIsSaidWhereNoLimitIsGiven) {
    plan::Plan plan = four_on_grid(PipeRun::both);
    put_pipe(plan, "bar", 0.0);
    hang_on_pipe(plan, "five", "bar", 1.0);
    EXPECT_TRUE(loads(plan).empty());
}

TEST(PipeLoad, LampsOnStandsHangFromNothing) {
    plan::Plan plan = small_room();
    put_pipe(plan, "bar", 1.0);
    plug_in(plan, "floor lamp", "");
    EXPECT_TRUE(loads(plan).empty());
}

// 24 kg = 24 / 0.45359237 = 52.91 lb, on 10 kg = 22.05 lb; 14 kg = 30.86 lb too many.
TEST(PipeLoad, APlanInFeetIsToldInPounds) {
    plan::Plan plan = four_on_grid(PipeRun::along_letters);
    plan.units = UnitSystem::imperial;
    plan.grid->pipe_load_kg = 10.0;
    const auto findings = loads(plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_TRUE(says(findings[0].message, "53 lb of lamps, 31 lb more than the 22 lb"))
        << findings[0].message;
}

} // namespace throwline::checks
