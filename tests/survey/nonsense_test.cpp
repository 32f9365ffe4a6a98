#include "survey/adjust.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

namespace throwline::survey {
namespace {

using Chance = std::mt19937_64;

int below(Chance& chance, int limit) {
    return std::uniform_int_distribution<int>(0, limit - 1)(chance);
}

Observation any_observation(Chance& chance, int points) {
    const int a = below(chance, points);
    const int b = below(chance, points);
    const int c = below(chance, points);
    const double length_m = std::uniform_real_distribution<double>(0.0, 12.0)(chance);
    switch (below(chance, 6)) {
    case 0:
        return {Corner{a, b, c}, std::acos(0.0), 0.01, true};
    case 1:
        return {Along{a, b, c}, length_m, 0.003, false};
    case 2:
        return {Offset{a, b, c}, below(chance, 2) == 0 ? 0.0 : length_m - 6.0, 0.003, false};
    default:
        return {Distance{a, b}, below(chance, 20) == 0 ? 0.0 : length_m, 0.003, false};
    }
}

/// Readings between any points, also from a point to itself, of any length.
Network any_network(Chance& chance) {
    Network network;
    network.outline = 3 + below(chance, 4);
    network.points = network.outline + below(chance, 3);
    network.walk = below(chance, 2) == 0 ? Walk::anticlockwise : Walk::clockwise;
    const int count = below(chance, 25);
    for (int i = 0; i < count; ++i) {
        network.observations.push_back(any_observation(chance, network.points));
    }
    if (network.points > network.outline && below(chance, 2) == 0) {
        network.outside.push_back(network.outline);
    }
    return network;
}

void expect_sound(const Network& network, const Solution& solution) {
    ASSERT_EQ(solution.adjustment.points.size(), static_cast<std::size_t>(network.points));
    ASSERT_EQ(solution.adjustment.observations.size(), network.observations.size());
    ASSERT_EQ(solution.with_all.observations.size(), network.observations.size());
    EXPECT_TRUE(std::isfinite(solution.adjustment.weighted_sum));
    for (std::size_t i = 0; i < solution.adjustment.points.size(); ++i) {
        EXPECT_TRUE(solution.adjustment.points[i].allFinite());
        EXPECT_TRUE(std::isfinite(solution.adjustment.errors[i].semi_minor));
        EXPECT_TRUE(std::isfinite(solution.adjustment.errors[i].semi_major));
    }
    for (const Suspect& suspect : solution.suspects) {
        EXPECT_TRUE(std::isfinite(suspect.probable) && std::isfinite(suspect.probable_sigma));
        EXPECT_TRUE(std::isfinite(suspect.strength));
    }
}

void expect_sound(const Network& network, const Undetermined& undetermined) {
    for (const int point : undetermined.loose) {
        EXPECT_TRUE(point >= 0 && point < network.points);
    }
    for (const auto& [from, to] : undetermined.wanted) {
        EXPECT_TRUE(from >= 0 && from < to && to < network.points);
    }
}

TEST(Nonsense, WhateverWasReadGivesAnAnswerOrSaysWhatIsMissing) {
    Chance chance(11);
    int with_answer = 0;
    for (int i = 0; i < 200; ++i) {
        const Network network = any_network(chance);
        const auto solution = solved(network);
        if (solution) {
            ++with_answer;
            expect_sound(network, *solution);
        } else {
            expect_sound(network, solution.error());
        }
    }
    // Both ways were taken.
    EXPECT_GT(with_answer, 10);
    EXPECT_LT(with_answer, 190);
}

} // namespace
} // namespace throwline::survey
