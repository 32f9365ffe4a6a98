/// Limits of circuits, pipes and the kit that are met to the last figure, and how they are worded.
/// An "LED PAR 100 W wide" of the shipped tables has 4.2 kg and a power factor of 0.95.

#include "checks/power_checks.h"
#include "support/floor_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

/// So many lamps on a circuit "A" of 200 V, each of 100 / (200 x 0.95) = 10 / 19 A.
plan::Plan lamps_on_circuit(int count, double breaker_amps) {
    plan::Plan plan = small_room();
    plan::Circuit& circuit = plan.circuits.emplace_back();
    circuit.id = {"A"};
    circuit.volts = 200.0;
    circuit.breaker_amps = breaker_amps;
    for (int i = 0; i < count; ++i) {
        put_lamp_stand(plan, std::to_string(i), {1.0 + 0.2 * i, 7.0}).circuit = circuit.id;
    }
    return plan;
}

plan::Pipe& put_bar(plan::Plan& plan, const std::string& name) {
    plan::Pipe& pipe = plan.pipes.emplace_back();
    pipe.id = {name};
    pipe.from = {1.0, 7.0};
    pipe.to = {9.0, 7.0};
    pipe.height = Length::metres(3.5);
    return pipe;
}

/// Lamps on a bar so far from its start.
plan::Plan lamps_on_bar(const std::string& name, const std::vector<double>& along_m) {
    plan::Plan plan = small_room();
    put_bar(plan, name);
    for (const double along : along_m) {
        put_lamp_stand(plan, "lamp " + std::to_string(plan.lamps.size() + 1), {1.0, 1.0}).mount =
            plan::PipeHang{{name}, Length::metres(along), Length{}};
    }
    return plan;
}

} // namespace

// 19 x 10 / 19 A = 10 A = 0.8 x 12.5 A; as doubles the sum lies above it.
TEST(PowerLimits, ACircuitMayBeLoadedToTheLimit) {
    EXPECT_TRUE(found_by(circuit_load, lamps_on_circuit(19, 12.5)).empty());
    plan::Plan short_load = lamps_on_circuit(19, 10.0);
    short_load.circuits[0].continuous = false;
    EXPECT_TRUE(found_by(circuit_load, short_load).empty());
}

// 20 x 10 / 19 A = 10.53 A.
TEST(PowerLimits, ABreakerIsShownAsItIsTyped) {
    const auto findings = found_by(circuit_load, lamps_on_circuit(20, 12.5));
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].message,
              "Circuit A would carry 10.5 A (2000 W) from 20 lamps on a 12.5 A breaker, over the "
              "10.0 A planned for loads that stay on.");
}

TEST(PowerLimits, OneLampIsOneAndACircuitIsCalledSoOnce) {
    plan::Plan plan = lamps_on_circuit(1, 0.5);
    plan.circuits[0].id = plan.lamps[0].circuit = {"wall circuit"};
    const auto findings = found_by(circuit_load, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_TRUE(says(findings[0].message, "Wall circuit would carry 0.5 A (100 W) from 1 lamp on"))
        << findings[0].message;
    EXPECT_TRUE(says(text_of(findings[0].working), "load of 1 lamp at full"));
}

TEST(PowerLimits, LampsOnNoCircuitAreShownWhereTheyStand) {
    plan::Plan plan = lamps_on_circuit(0, 16.0);
    put_lamp_stand(plan, "one", {1.0, 2.0});
    EXPECT_EQ(messages(found_by(circuit_load, plan)),
              "1 lamp is on no circuit, so its load is counted nowhere.\n");
    put_lamp_stand(plan, "two", {4.0, 6.0});
    const auto findings = found_by(circuit_load, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].message, "2 lamps are on no circuit, so their load is counted nowhere.");
    EXPECT_LT((findings[0].at - Vec2{2.5, 4.0}).norm(), 1e-9);
}

// 3 x 4.2 kg = 12.6 kg; as doubles the sum lies above it.
TEST(PowerLimits, APipeMayBeLoadedToTheLimit) {
    plan::Plan plan = lamps_on_bar("window bar", {1.0, 2.0, 3.0});
    plan.pipes[0].load_kg = 12.6;
    EXPECT_TRUE(found_by(pipe_load, plan).empty());
}

// 12.6 kg = 27.78 lb; 40 g = 0.088 lb.
TEST(PowerLimits, ALittleTooMuchIsNotToldAsNothing) {
    plan::Plan plan = lamps_on_bar("window bar", {1.0, 2.0, 3.0});
    plan.pipes[0].load_kg = 12.56;
    EXPECT_TRUE(says(messages(found_by(pipe_load, plan)),
                     "Pipe window bar would carry 12.6 kg of lamps, 0.04 kg more than"));
    plan.units = UnitSystem::imperial;
    EXPECT_TRUE(says(messages(found_by(pipe_load, plan)),
                     "Pipe window bar would carry 28 lb of lamps, 0.09 lb more than"));
}

// Two lamps of 4.2 kg at 2 m, one at 3 m.
TEST(PowerLimits, APointOfASinglePipeHasItsOwnLimit) {
    plan::Plan plan = lamps_on_bar("pipe 1", {2.0, 2.0, 3.0});
    plan.pipes[0].point_load_kg = 8.4;
    EXPECT_TRUE(found_by(pipe_load, plan).empty());
    plan.pipes[0].point_load_kg = 8.0;
    const auto findings = found_by(pipe_load, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"lamp 1", "lamp 2"}));
    EXPECT_LT((findings[0].at - Vec2{3.0, 7.0}).norm(), 1e-9);
    EXPECT_TRUE(says(findings[0].message, "Pipe 1 at 2.00 m would carry 8.4 kg"))
        << findings[0].message;
}

TEST(PowerLimits, ASinglePipeIsNotTheGridsPipeOfThatNumber) {
    plan::Plan plan = lamps_on_bar("2", {2.0, 4.0});
    plan.pipes[0].load_kg = 10.0;
    plan.grid = plan::Grid{};
    plan.grid->pitch_x = plan.grid->pitch_y = Length::metres(2.0);
    plan.grid->columns = plan.grid->rows = 3;
    plan.grid->height = Length::metres(3.5);
    plan.grid->pipe_load_kg = 8.0;
    put_lamp_stand(plan, "3", {1.0, 1.0}).mount = plan::GridHang{"B2", Length{}};
    EXPECT_TRUE(found_by(pipe_load, plan).empty());
    put_lamp_stand(plan, "4", {1.0, 1.0}).mount = plan::GridHang{"C2", Length{}};
    const auto findings = found_by(pipe_load, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_TRUE(says(findings[0].message, "Grid pipe 2 would carry 8.4 kg"));
}

TEST(PowerLimits, CamerasAndFiltersAreCountedAgainstTheKit) {
    plan::Plan plan = small_room();
    put_camera(plan, "camera 2", {1.0, 1.0});
    put_lamp_stand(plan, "1", {1.0, 3.0}).filters = {"full blue", "full blue"};
    plan.kit = {{"test chip", 1}, {"full blue", 1}};
    const auto findings = found_by(kit_count, plan);
    ASSERT_EQ(findings.size(), 2U) << messages(findings);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"camera 1", "camera 2"}));
    EXPECT_EQ(findings[1].things, (std::vector<std::string>{"1", "1"}));
    EXPECT_LT((findings[0].at - Vec2{5.0, 4.0}).norm(), 1e-9);
}

} // namespace throwline::checks
