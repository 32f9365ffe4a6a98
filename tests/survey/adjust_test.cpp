#include "support/survey_case.h"
#include "survey/adjust.h"
#include "survey/least_squares.h"
#include "survey/simulated_room.h"

#include <gtest/gtest.h>
#include <numeric>

namespace throwline::survey {
namespace {

double redundancies(const Adjustment& adjustment) {
    return std::accumulate(
        adjustment.observations.begin(), adjustment.observations.end(), 0.0,
        [](double sum, const ObservationResult& result) { return sum + result.redundancy; });
}

TEST(Adjust, RedundanciesAddUpToTheDegreesOfFreedom) {
    Chance chance(3);
    for (int i = 0; i < 50; ++i) {
        const SimulatedRoom room = simulated_room(chance);
        const auto result = adjusted(room.network, room.truth);
        ASSERT_TRUE(result) << i;
        EXPECT_NEAR(redundancies(*result), result->degrees_of_freedom, 1e-7) << i;
    }
}

TEST(Adjust, TheResultIsInTheDatumWhereverItStarts) {
    Chance chance(4);
    const SimulatedRoom room = simulated_room(chance);
    std::vector<Vec2> elsewhere;
    for (const Vec2& point : room.truth) {
        elsewhere.push_back(rotated(point, 2.0) + Vec2(100.0, -30.0));
    }
    const auto here = adjusted(room.network, room.truth);
    const auto there = adjusted(room.network, elsewhere);
    ASSERT_TRUE(here && there);
    EXPECT_EQ(here->points[0], Vec2(0, 0));
    EXPECT_EQ(here->points[1].y(), 0.0);
    EXPECT_GT(here->points[1].x(), 0.0);
    for (std::size_t i = 0; i < here->points.size(); ++i) {
        EXPECT_NEAR((here->points[i] - there->points[i]).norm(), 0.0, 1e-8) << i;
    }
    EXPECT_EQ(here->errors[0].semi_major, 0.0);
    EXPECT_EQ(here->errors[1].sigma_y, 0.0);
}

TEST(Adjust, NothingComesOfReadingsThatLeaveAPartLoose) {
    SurveyCase room(4);
    room.read(1, 2, 4.0).read(2, 3, 3.0).read(3, 4, 4.0).read(4, 1, 3.0);
    EXPECT_FALSE(adjusted(room.network, std::vector<Vec2>{{0, 0}, {4, 0}, {4, 3}, {0, 3}}));
}

TEST(Adjust, NothingIsCheckedWithoutASpareReading) {
    SurveyCase room(3);
    room.read(1, 2, 4.0).read(2, 3, 3.0).read(3, 1, 5.0);
    const auto result = adjusted(room.network, std::vector<Vec2>{{0, 0}, {4, 0}, {3, 2}});
    ASSERT_TRUE(result);
    EXPECT_EQ(result->test, GlobalTest::nothing_checked);
    EXPECT_EQ(result->degrees_of_freedom, 0);
    EXPECT_EQ(result->unit_weight_error, 1.0);
    EXPECT_NEAR((result->points[2] - Vec2(4, 3)).norm(), 0.0, 1e-9);
    for (const ObservationResult& reading : result->observations) {
        EXPECT_NEAR(reading.redundancy, 0.0, 1e-9);
        EXPECT_FALSE(reading.standardised);
        EXPECT_FALSE(reading.detectable);
    }
}

// The same length read twice, 20 and 10 mm: the mean weighs 1 to 4, and the redundancy of each is
// the share of its variance in the sum: 0.8 and 0.2.
TEST(Adjust, TwoReadingsOfOneLengthShareTheirErrorByWeight) {
    SurveyCase room(3);
    room.tape(1, 2, 4.050, 0.020).tape(1, 2, 4.000, 0.010).tape(2, 3, 3.0).tape(3, 1, 5.0);
    const auto result = adjusted(room.network, std::vector<Vec2>{{0, 0}, {4, 0}, {3, 2}});
    ASSERT_TRUE(result);
    EXPECT_NEAR(result->points[1].x(), 4.010, 1e-9);
    EXPECT_NEAR(result->errors[1].sigma_x, 0.020 / std::sqrt(5.0), 1e-9);
    EXPECT_NEAR(result->observations[0].redundancy, 0.8, 1e-9);
    EXPECT_NEAR(result->observations[1].redundancy, 0.2, 1e-9);
    // Both say the same: 50 mm apart, whose standard error is 10 mm times the root of 5.
    EXPECT_NEAR(result->observations[0].standardised.value_or(0.0), -std::sqrt(5.0), 1e-9);
    EXPECT_NEAR(result->observations[1].standardised.value_or(0.0), std::sqrt(5.0), 1e-9);
    EXPECT_NEAR(result->weighted_sum, 5.0, 1e-9);
    EXPECT_EQ(result->test, GlobalTest::doubtful);
    EXPECT_NEAR(result->observations[0].detectable.value_or(0.0), 4.132 * 0.020 / std::sqrt(0.8),
                1e-9);
}

// A point tied to both ends of a wall of 6 m from 5 m each: along the wall the two readings are
// weighed against each other, across it they agree. With s = 5 / 4 and t = 5 / 3 of the reading's
// standard error, halved by two readings: sigma_y = 5 / (4 root 2), sigma_x = 5 / (3 root 2) of it,
// when the wall itself is without error.
TEST(Adjust, TheErrorEllipseIsThatOfTwoTies) {
    SurveyCase room(3);
    room.tape(1, 2, 6.0, 1e-6).tape(1, 3, 5.0, 0.01).tape(2, 3, 5.0, 0.01);
    const auto result = adjusted(room.network, std::vector<Vec2>{{0, 0}, {6, 0}, {3, 4}});
    ASSERT_TRUE(result);
    const PointError& error = result->errors[2];
    EXPECT_NEAR(error.sigma_x, 0.01 * 5.0 / (3.0 * std::sqrt(2.0)), 1e-8);
    EXPECT_NEAR(error.sigma_y, 0.01 * 5.0 / (4.0 * std::sqrt(2.0)), 1e-8);
    EXPECT_NEAR(error.semi_major, error.sigma_x, 1e-9);
    EXPECT_NEAR(error.semi_minor, error.sigma_y, 1e-9);
    EXPECT_NEAR(std::sin(error.major_angle_rad), 0.0, 1e-4);
}

TEST(Adjust, ReadingOnePartAgainMovesOnlyWhatDependsOnIt) {
    // A room with a floor mark, and another mark that hangs on the wall by two readings without a
    // check: whatever is read of it moves neither the room nor the first mark.
    SurveyCase room(4);
    room.read(1, 2, 6.102).read(2, 3, 4.279).read(3, 4, 6.108).read(4, 1, 4.252);
    room.read(1, 3, 7.477).read(2, 4, 7.421);
    room.read(5, 1, 3.668).read(5, 2, 3.756).read(5, 3, 3.811).read(6, 1, 2.0).read(6, 2, 5.0);
    const auto before = solved(room.network);
    room.network.observations.back().value += 0.1;
    const auto after = solved(room.network);
    ASSERT_TRUE(before && after);
    for (std::size_t i = 0; i < 5; ++i) {
        const Vec2 moved = after->adjustment.points[i] - before->adjustment.points[i];
        EXPECT_LT(moved.norm(), 1e-9) << i;
    }
    EXPECT_GT((after->adjustment.points[5] - before->adjustment.points[5]).norm(), 0.05);
    EXPECT_NEAR(after->adjustment.observations.back().redundancy, 0.0, 1e-9);
    EXPECT_EQ(after->adjustment.degrees_of_freedom, before->adjustment.degrees_of_freedom);
    EXPECT_NEAR(after->adjustment.weighted_sum, before->adjustment.weighted_sum, 1e-6);
}

TEST(LeastSquares, UnknownsThatNothingDeterminesGiveNothing) {
    Eigen::MatrixXd design(3, 2);
    design << 1, 1, 2, 2, 3, 3;
    EXPECT_FALSE(weighted_least_squares(design, Eigen::Vector3d(1, 2, 3), Eigen::Vector3d::Ones()));
}

// A straight line through four points, worked by hand: y = 0.1 + 1.1 x through (0, 0), (1, 1.5),
// (2, 2), (3, 3.5); residuals 0.1, -0.3, 0.3, -0.1; share of each that shows 0.3, 0.7, 0.7, 0.3.
TEST(LeastSquares, AStraightLineIsAsWorkedByHand) {
    Eigen::MatrixXd design(4, 2);
    design << 1, 0, 1, 1, 1, 2, 1, 3;
    const auto fit = weighted_least_squares(design, Eigen::Vector4d(0, 1.5, 2, 3.5),
                                            Eigen::Vector4d::Constant(0.5));
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->unknowns[0], 0.1, 1e-12);
    EXPECT_NEAR(fit->unknowns[1], 1.1, 1e-12);
    EXPECT_TRUE(fit->residuals.isApprox(Eigen::Vector4d(0.1, -0.3, 0.3, -0.1), 1e-9));
    EXPECT_TRUE(fit->redundancies.isApprox(Eigen::Vector4d(0.3, 0.7, 0.7, 0.3), 1e-9));
    EXPECT_NEAR(fit->weighted_sum, 0.2 / 0.25, 1e-12);
    EXPECT_NEAR(fit->covariance(1, 1), 0.25 / 5.0, 1e-12);
}

} // namespace
} // namespace throwline::survey
