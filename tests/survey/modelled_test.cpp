#include "survey/modelled.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <random>

namespace throwline::survey {
namespace {

constexpr double kSquare_rad = std::numbers::pi / 2.0;

std::vector<Vec2> points_by_chance(std::mt19937_64& chance) {
    std::uniform_real_distribution<double> coordinate(-5.0, 5.0);
    std::vector<Vec2> points;
    for (int i = 0; i < 3; ++i) {
        points.emplace_back(coordinate(chance), coordinate(chance));
    }
    return points;
}

/// Greatest difference between a slope and the change over a small step either way.
double worst_slope_error(const Observation& observation, const std::vector<Vec2>& points) {
    constexpr double kStep_m = 1e-5;
    const Modelled model = modelled(observation, points);
    double worst = 0.0;
    for (std::size_t k = 0; k < static_cast<std::size_t>(model.count); ++k) {
        for (int axis = 0; axis < 2; ++axis) {
            std::vector<Vec2> ahead = points;
            std::vector<Vec2> behind = points;
            ahead[static_cast<std::size_t>(model.point[k])][axis] += kStep_m;
            behind[static_cast<std::size_t>(model.point[k])][axis] -= kStep_m;
            const double change =
                modelled_value(observation, ahead) - modelled_value(observation, behind);
            worst = std::max(worst, std::abs(change / (2.0 * kStep_m) - model.slope[k][axis]));
        }
    }
    return worst;
}

TEST(Modelled, SlopesAreThoseOfSmallSteps) {
    std::mt19937_64 chance(7);
    int compared = 0;
    for (int round = 0; round < 200; ++round) {
        const std::vector<Vec2> points = points_by_chance(chance);
        // Where two points all but meet, a step of finite size says nothing of the slope.
        if ((points[0] - points[1]).norm() < 0.5 || (points[1] - points[2]).norm() < 0.5) {
            continue;
        }
        ++compared;
        for (const Sight& sight : {Sight{Distance{0, 1}}, Sight{Corner{0, 1, 2}},
                                   Sight{Along{0, 1, 2}}, Sight{Offset{0, 1, 2}}}) {
            for (const double observed : {kSquare_rad, -kSquare_rad}) {
                EXPECT_LT(worst_slope_error({sight, observed, 0.01, false}, points), 2e-8)
                    << round << ' ' << sight.index();
            }
        }
    }
    EXPECT_GT(compared, 150);
}

TEST(Modelled, ValuesAreThoseOfASketch) {
    // A wall along +x of 4 m, and a point 3 m along it and 1 m to its left.
    const std::vector<Vec2> points{{0, 0}, {4, 0}, {3, 1}};
    const auto value = [&points](Sight sight, double observed) {
        return modelled_value({sight, observed, 0.01, false}, points);
    };
    EXPECT_DOUBLE_EQ(value(Distance{0, 1}, 4.0), 4.0);
    EXPECT_DOUBLE_EQ(value(Along{2, 0, 1}, 3.0), 3.0);
    EXPECT_DOUBLE_EQ(value(Offset{2, 0, 1}, 1.0), 1.0);
    EXPECT_DOUBLE_EQ(value(Along{2, 1, 0}, 1.0), 1.0);
    EXPECT_DOUBLE_EQ(value(Offset{2, 1, 0}, -1.0), -1.0);
    EXPECT_NEAR(value(Corner{0, 1, 2}, kSquare_rad), std::numbers::pi / 4.0, 1e-12);
}

TEST(Modelled, ACornerTakesTheSignOfWhatWasObserved) {
    const std::vector<Vec2> points{{4, 0}, {0, 0}, {0, 3}};
    for (const double observed : {kSquare_rad, -kSquare_rad}) {
        EXPECT_DOUBLE_EQ(modelled_value({Corner{0, 1, 2}, observed, 0.01, false}, points),
                         observed);
        EXPECT_DOUBLE_EQ(modelled_value({Corner{2, 1, 0}, observed, 0.01, false}, points),
                         observed);
    }
}

TEST(Modelled, TheDatumHoldsThreeCoordinates) {
    Network network;
    network.points = 5;
    EXPECT_EQ(unknowns_of(network), 7);
    EXPECT_EQ(unknown_index(0, 0), -1);
    EXPECT_EQ(unknown_index(0, 1), -1);
    EXPECT_EQ(unknown_index(1, 0), 0);
    EXPECT_EQ(unknown_index(1, 1), -1);
    EXPECT_EQ(unknown_index(2, 0), 1);
    EXPECT_EQ(unknown_index(4, 1), 6);
    const std::vector<Vec2> moved = in_datum(std::vector<Vec2>{{3, 1}, {3, 5}, {1, 1}});
    EXPECT_NEAR((moved[1] - Vec2(4, 0)).norm(), 0.0, 1e-12);
    EXPECT_NEAR((moved[2] - Vec2(0, 2)).norm(), 0.0, 1e-12);
}

} // namespace
} // namespace throwline::survey
