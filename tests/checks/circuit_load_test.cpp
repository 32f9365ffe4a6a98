#include "checks/power_checks.h"
#include "support/rig_case.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

/// A circuit of 100 V, so that a lamp of 1 kW draws 10 A, with so many of them.
plan::Plan lamps_on(int count, double breaker_amps) {
    plan::Plan plan = small_room();
    put_circuit(plan, "C1", 100.0, breaker_amps);
    for (int i = 1; i <= count; ++i) {
        plug_in(plan, std::to_string(i), "C1");
    }
    return plan;
}

std::vector<Finding> loads(const plan::Plan& plan) {
    return rig_findings(circuit_load, plan);
}

} // namespace

// 2 x 10 A on 80 % of 25.1 A = 20.08 A, and on 80 % of 24.9 A = 19.92 A.
TEST(CircuitLoad, WhatStaysOnIsHeldToEightyPercent) {
    EXPECT_TRUE(loads(lamps_on(2, 25.1)).empty());
    const auto findings = loads(lamps_on(2, 24.9));
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"C1", "1", "2"}));
    EXPECT_EQ(findings[0].working.result, "20.00 A");
    EXPECT_TRUE(says(findings[0].message, "20.0 A (2000 W)")) << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "over the 19.9 A")) << findings[0].message;
}

TEST(CircuitLoad, MoreThanTheBreakerIsSaidSo) {
    const auto findings = loads(lamps_on(2, 19.9));
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_TRUE(says(findings[0].message, "more than the breaker holds")) << findings[0].message;
}

TEST(CircuitLoad, AShortLoadMayUseTheWholeBreaker) {
    plan::Plan plan = lamps_on(2, 20.1);
    plan.circuits[0].continuous = false;
    EXPECT_TRUE(loads(plan).empty());
    plan.circuits[0].breaker_amps = 19.9;
    const auto findings = loads(plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].severity, Severity::error);
}

// 3 x 570 W / (100 V x 0.95) = 18.0 A, though 1710 W alone would be 17.1 A.
TEST(CircuitLoad, APowerFactorDrawsMoreThanTheWatts) {
    plan::Plan plan = lamps_on(0, 22.4);
    for (const char* name : {"1", "2", "3"}) {
        plug_in(plan, name, "C1", "led lamp");
    }
    const auto findings = loads(plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].working.result, "18.00 A");
    EXPECT_TRUE(says(findings[0].message, "18.0 A (1710 W)")) << findings[0].message;
    plan.circuits[0].breaker_amps = 22.6;
    EXPECT_TRUE(loads(plan).empty());
}

TEST(CircuitLoad, EachCircuitCarriesItsOwnLamps) {
    plan::Plan plan = lamps_on(2, 26.0);
    put_circuit(plan, "C2", 200.0, 10.0);
    plug_in(plan, "3", "C2");
    plug_in(plan, "4", "C2");
    const auto findings = loads(plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"C2", "3", "4"}));
    EXPECT_EQ(findings[0].working.result, "10.00 A");
}

TEST(CircuitLoad, TheDimmerDoesNotCount) {
    plan::Plan plan = lamps_on(2, 24.9);
    plan.lamps[0].level = 0.0;
    EXPECT_EQ(loads(plan).size(), 1U);
}

TEST(CircuitLoad, IsShownAtTheFirstOutletOrElseAmongItsLamps) {
    plan::Plan plan = lamps_on(2, 19.9);
    EXPECT_LT((loads(plan).at(0).at - Vec2{9.0, 1.0}).norm(), 1e-9);
    plan.circuits[0].outlets = {{0.5, 7.5}, {9.5, 7.5}};
    EXPECT_LT((loads(plan).at(0).at - Vec2{0.5, 7.5}).norm(), 1e-9);
}

TEST(CircuitLoad, LampsOnNoCircuitAreANote) {
    plan::Plan plan = lamps_on(1, 20.0);
    plug_in(plan, "loose", "");
    const auto findings = loads(plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::note);
    EXPECT_EQ(findings[0].things, std::vector<std::string>{"loose"});
}

TEST(CircuitLoad, APlanWithoutCircuitsIsNotAskedForThem) {
    plan::Plan plan = small_room();
    plug_in(plan, "loose", "");
    EXPECT_TRUE(loads(plan).empty());
}

// I = n 1000 / V against 0.8 of the breaker, with neither near the other.
RC_GTEST_PROP(CircuitLoad, IsFoundExactlyWhereTheSumIsTooMuch, ()) {
    const int count = *rc::gen::inRange(1, 8);
    const double breaker_a = *rc::gen::inRange(60, 640) / 10.0;
    const double load_a = count * 10.0;
    RC_PRE(std::abs(load_a - 0.8 * breaker_a) > 0.01);
    RC_ASSERT(loads(lamps_on(count, breaker_a)).empty() == (load_a < 0.8 * breaker_a));
}

} // namespace throwline::checks
