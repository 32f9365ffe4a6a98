#include "support/survey_case.h"
#include "survey/adjust.h"
#include "survey/least_squares.h"

#include <array>
#include <cmath>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_multifit_nlinear.h>
#include <gtest/gtest.h>

namespace throwline::survey {
namespace {

// Half a unit of the last digit printed, in each of the tables below.
constexpr double kThirdDigit = 0.5e-3;
constexpr double kFourthDigit = 0.5e-4;
constexpr double kFifthDigit = 0.5e-5;

/// Heights differ by what was read from one point to another; fixed points carry a height.
struct Levelled {
    int from;
    int to;
    double rise_m;
    double sigma_m;
};

struct LevelNet {
    Eigen::MatrixXd design;
    Eigen::VectorXd observed;
    Eigen::VectorXd sigma;
};

/// Unknowns are the points from 0 on; negative numbers are fixed: -1 is the first of `fixed_m`.
LevelNet level_net(const std::vector<Levelled>& lines, int unknowns,
                   const std::vector<double>& fixed_m) {
    const auto rows = static_cast<Eigen::Index>(lines.size());
    LevelNet net{Eigen::MatrixXd::Zero(rows, unknowns), Eigen::VectorXd(rows),
                 Eigen::VectorXd(rows)};
    for (Eigen::Index row = 0; row < rows; ++row) {
        const Levelled& line = lines[static_cast<std::size_t>(row)];
        net.observed[row] = line.rise_m;
        net.sigma[row] = line.sigma_m;
        const auto add = [&](int point, double sign) {
            if (point >= 0) {
                net.design(row, point) += sign;
            } else {
                net.observed[row] -= sign * fixed_m[static_cast<std::size_t>(-point - 1)];
            }
        };
        add(line.to, 1.0);
        add(line.from, -1.0);
    }
    return net;
}

double standardised(const LinearFit& fit, const LevelNet& net, Eigen::Index i) {
    return fit.residuals[i] / (net.sigma[i] * std::sqrt(fit.redundancies[i]));
}

// Levelling net of a textbook of linear algebra and geodesy, with the adjustment printout of it
// that a surveyors' forum shows: A, B, C fixed, 6 mm a root kilometre.
TEST(SurveyReference, LevellingNetOfATextbookIsMet) {
    const auto sigma = [](double metres) { return 0.006 * std::sqrt(metres / 1000.0); };
    const LevelNet net = level_net({{-1, 0, 0.732, sigma(970)},
                                    {-1, 1, 1.978, sigma(1002)},
                                    {-2, 0, 0.420, sigma(1070)},
                                    {-3, 1, 0.988, sigma(1110)},
                                    {0, 1, 1.258, sigma(890)}},
                                   2, {10.021, 10.321, 11.002});
    const auto fit = weighted_least_squares(net.design, net.observed, net.sigma);
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->unknowns[0], 10.74450, kFifthDigit);
    EXPECT_NEAR(fit->unknowns[1], 11.99762, kFifthDigit);
    EXPECT_NEAR(1000.0 * std::sqrt(fit->covariance(0, 0)), 3.671, kThirdDigit);
    EXPECT_NEAR(1000.0 * std::sqrt(fit->covariance(1, 1)), 3.711, kThirdDigit);
    const std::array residuals_mm{-8.497, -1.381, 3.503, 7.620, -4.883};
    const std::array redundancies{0.6141, 0.6182, 0.6502, 0.6553, 0.4622};
    const std::array standard{-1.835, -0.292, 0.700, 1.489, -1.269};
    for (std::size_t i = 0; i < residuals_mm.size(); ++i) {
        const auto row = static_cast<Eigen::Index>(i);
        // A whole unit here: the second is 1.3805 and was rounded up from more than that.
        EXPECT_NEAR(1000.0 * fit->residuals[row], residuals_mm[i], 2.0 * kThirdDigit) << i;
        EXPECT_NEAR(fit->redundancies[row], redundancies[i], kFourthDigit) << i;
        EXPECT_NEAR(standardised(*fit, net, row), standard[i], kThirdDigit) << i;
    }
    EXPECT_NEAR(fit->weighted_sum, 4.636, kThirdDigit);
    EXPECT_NEAR(std::sqrt(fit->weighted_sum / 3.0), 1.243, kThirdDigit);
    EXPECT_NEAR(std::sqrt(chi_square_quantile(0.025, 3) / 3.0), 0.268, kThirdDigit);
    EXPECT_NEAR(std::sqrt(chi_square_quantile(0.975, 3) / 3.0), 1.765, kThirdDigit);
}

// Level loop run twice, from the sample output of a free library for network adjustment: point 1a
// fixed, 5 mm each. Unknowns: 4, 3, 2.
TEST(SurveyReference, LevelLoopRunTwiceIsMet) {
    constexpr double kSigma_m = 0.005;
    const LevelNet net = level_net({{-1, 0, -1.225, kSigma_m},
                                    {0, 1, -0.848, kSigma_m},
                                    {1, 2, 1.342, kSigma_m},
                                    {2, -1, 0.720, kSigma_m},
                                    {-1, 2, -0.724, kSigma_m},
                                    {2, 1, -1.335, kSigma_m},
                                    {1, 0, 0.842, kSigma_m},
                                    {0, -1, 1.231, kSigma_m}},
                                   3, {1000.0});
    const auto fit = weighted_least_squares(net.design, net.observed, net.sigma);
    ASSERT_TRUE(fit);
    // The first and the last end in a 5 that is rounded up in print.
    EXPECT_NEAR(fit->unknowns[0], 998.775125, 1e-9);
    EXPECT_NEAR(fit->unknowns[1], 997.93325, 1e-9);
    EXPECT_NEAR(fit->unknowns[2], 999.274875, 1e-9);
    EXPECT_NEAR(1e6 * fit->residuals.squaredNorm(), 146.625, kThirdDigit);
    EXPECT_NEAR(1000.0 * std::sqrt(fit->residuals.squaredNorm() / 5.0), 5.41526, kFifthDigit);
    const auto deviation_mm = [&](int i) { return 1000.0 * std::sqrt(fit->covariance(i, i)); };
    EXPECT_NEAR(deviation_mm(0), 3.1, 0.05);
    EXPECT_NEAR(deviation_mm(1), 3.5, 0.05);
    EXPECT_NEAR(deviation_mm(2), 3.1, 0.05);
    Eigen::Index worst = 0;
    double most = 0.0;
    for (Eigen::Index i = 0; i < 8; ++i) {
        EXPECT_NEAR(fit->redundancies[i], 0.625, 1e-9) << i;
        const double size = std::abs(standardised(*fit, net, i));
        if (size > most) {
            most = size;
            worst = i;
        }
    }
    EXPECT_EQ(worst, 5);
    EXPECT_NEAR(most, 1.67601, kFifthDigit);
}

// Trilateration example of a textbook, "Adjustment Computations" (data from memory; the answers are
// computed): one point from three that are fixed, of equal weight, with each round's result.
TEST(SurveyReference, TextbookTrilaterationIsMetRoundByRound) {
    const std::array<Vec2, 3> fixed{Vec2(865.40, 4527.15), Vec2(2432.55, 2047.25),
                                    Vec2(2865.22, 27.15)};
    const Eigen::Vector3d read_m(6049.00, 4736.83, 5446.49);
    const std::array<Vec2, 3> rounds{Vec2(6907.9638, 3699.1391), Vec2(6861.4037, 3728.1123),
                                     Vec2(6861.3168, 3727.8186)};
    Vec2 point(6600.0, 3000.0);
    std::optional<LinearFit> fit;
    const auto round = [&] {
        Eigen::MatrixXd design(3, 2);
        Eigen::Vector3d closure;
        for (int i = 0; i < 3; ++i) {
            const Vec2 span = point - fixed[static_cast<std::size_t>(i)];
            design.row(i) = span.normalized().transpose();
            closure[i] = read_m[i] - span.norm();
        }
        return weighted_least_squares(design, closure, Eigen::Vector3d::Ones());
    };
    for (const Vec2& expected : rounds) {
        fit = round();
        ASSERT_TRUE(fit);
        point += Vec2(fit->unknowns);
        EXPECT_NEAR(point.x(), expected.x(), kFourthDigit);
        EXPECT_NEAR(point.y(), expected.y(), kFourthDigit);
    }
    fit = round();
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->residuals[0], -0.03737, kFifthDigit);
    EXPECT_NEAR(fit->residuals[1], 0.07679, kFifthDigit);
    EXPECT_NEAR(fit->residuals[2], -0.04737, kFifthDigit);
    EXPECT_NEAR(std::sqrt(fit->weighted_sum), 0.09766, kFifthDigit);
    EXPECT_NEAR(fit->covariance(0, 0), 0.63019, kFifthDigit);
    EXPECT_NEAR(fit->covariance(0, 1), -0.72835, kFifthDigit);
    EXPECT_NEAR(fit->covariance(1, 1), 2.49469, kFifthDigit);
}

// Quantiles of the chi-square distribution as every table prints them, to three decimals.
TEST(SurveyReference, ChiSquareTableIsMet) {
    const std::array at_95{3.841,  5.991,  7.815,  9.488,  11.070,
                           12.592, 14.067, 15.507, 16.919, 18.307};
    const std::array at_99{6.635,  9.210,  11.345, 13.277, 15.086,
                           16.812, 18.475, 20.090, 21.666, 23.209};
    for (std::size_t i = 0; i < at_95.size(); ++i) {
        const int degrees = static_cast<int>(i) + 1;
        EXPECT_NEAR(chi_square_quantile(0.95, degrees), at_95[i], kThirdDigit) << degrees;
        EXPECT_NEAR(chi_square_quantile(0.99, degrees), at_99[i], kThirdDigit) << degrees;
    }
}

// GNU Scientific Library, gsl_cdf_chisq_Pinv.
TEST(SurveyReference, ChiSquareQuantilesAreThoseOfAScientificLibrary) {
    for (const double probability : {0.001, 0.025, 0.05, 0.5, 0.95, 0.99, 0.999, 0.999999}) {
        for (const int degrees : {1, 2, 3, 5, 10, 31, 100, 250}) {
            const double expected = gsl_cdf_chisq_Pinv(probability, degrees);
            EXPECT_NEAR(chi_square_quantile(probability, degrees), expected, 1e-9 * expected)
                << probability << ' ' << degrees;
        }
    }
}

/// A network as the library wants it: residuals in standard errors, without derivatives.
struct Problem {
    const Network& network;

    std::vector<Vec2> points(const gsl_vector* unknowns) const {
        std::vector<Vec2> points(static_cast<std::size_t>(network.points), Vec2::Zero());
        points[1].x() = gsl_vector_get(unknowns, 0);
        for (std::size_t i = 2; i < points.size(); ++i) {
            points[i] = {gsl_vector_get(unknowns, 2 * i - 3), gsl_vector_get(unknowns, 2 * i - 2)};
        }
        return points;
    }

    /// Written again from the definitions, apart from the program's own.
    static double value(const Observation& observation, const std::vector<Vec2>& points) {
        const auto at = [&points](int i) { return points[static_cast<std::size_t>(i)]; };
        if (const auto* tape = std::get_if<Distance>(&observation.sight)) {
            return std::hypot(at(tape->to).x() - at(tape->from).x(),
                              at(tape->to).y() - at(tape->from).y());
        }
        if (const auto* corner = std::get_if<Corner>(&observation.sight)) {
            const Vec2 first = at(corner->before) - at(corner->corner);
            const Vec2 second = at(corner->after) - at(corner->corner);
            const double angle_rad = std::acos(first.dot(second) / (first.norm() * second.norm()));
            return std::copysign(angle_rad, observation.value);
        }
        const auto* along = std::get_if<Along>(&observation.sight);
        const auto* offset = std::get_if<Offset>(&observation.sight);
        const int from = along != nullptr ? along->from : offset->from;
        const int to = along != nullptr ? along->to : offset->to;
        const int point = along != nullptr ? along->point : offset->point;
        const Vec2 wall = at(to) - at(from);
        const Vec2 span = at(point) - at(from);
        return along != nullptr ? (span.x() * wall.x() + span.y() * wall.y()) / wall.norm()
                                : (wall.x() * span.y() - wall.y() * span.x()) / wall.norm();
    }

    static int residuals(const gsl_vector* unknowns, void* data, gsl_vector* result) {
        const auto& problem = *static_cast<const Problem*>(data);
        const std::vector<Vec2> points = problem.points(unknowns);
        for (std::size_t i = 0; i < problem.network.observations.size(); ++i) {
            const Observation& observation = problem.network.observations[i];
            gsl_vector_set(result, i,
                           (value(observation, points) - observation.value) / observation.sigma);
        }
        return GSL_SUCCESS;
    }
};

/// GNU Scientific Library, gsl_multifit_nlinear: trust region, derivatives by central differences.
std::vector<Vec2> points_by_library(const Network& network, const std::vector<Vec2>& start) {
    constexpr std::size_t kMostRounds = 200;
    constexpr double kTolerance = 1e-14;
    Problem problem{network};
    const std::size_t unknowns = 2 * start.size() - 3;
    gsl_vector* first = gsl_vector_alloc(unknowns);
    gsl_vector_set(first, 0, start[1].x());
    for (std::size_t i = 2; i < start.size(); ++i) {
        gsl_vector_set(first, 2 * i - 3, start[i].x());
        gsl_vector_set(first, 2 * i - 2, start[i].y());
    }
    gsl_multifit_nlinear_fdf system{};
    system.f = &Problem::residuals;
    system.n = network.observations.size();
    system.p = unknowns;
    system.params = &problem;
    gsl_multifit_nlinear_parameters options = gsl_multifit_nlinear_default_parameters();
    options.fdtype = GSL_MULTIFIT_NLINEAR_CTRDIFF;
    gsl_multifit_nlinear_workspace* space =
        gsl_multifit_nlinear_alloc(gsl_multifit_nlinear_trust, &options, system.n, system.p);
    gsl_multifit_nlinear_init(first, &system, space);
    int why = 0;
    gsl_multifit_nlinear_driver(kMostRounds, kTolerance, kTolerance, 0.0, nullptr, nullptr, &why,
                                space);
    std::vector<Vec2> points = problem.points(gsl_multifit_nlinear_position(space));
    gsl_multifit_nlinear_free(space);
    gsl_vector_free(first);
    return points;
}

void expect_as_library(const Network& network, const std::vector<Vec2>& start) {
    constexpr double kAgree_m = 1e-7;
    const auto own = adjusted(network, start);
    ASSERT_TRUE(own);
    const std::vector<Vec2> expected = points_by_library(network, start);
    for (std::size_t i = 0; i < expected.size(); ++i) {
        EXPECT_NEAR((own->points[i] - expected[i]).norm(), 0.0, kAgree_m) << i;
    }
}

TEST(SurveyReference, QuadrilateralIsThatOfAScientificLibrary) {
    SurveyCase room(4);
    room.tape(1, 2, 6.102).tape(2, 3, 4.279).tape(3, 4, 6.108).tape(4, 1, 4.252);
    room.tape(1, 3, 7.577).tape(2, 4, 7.421).square(1).square(3);
    expect_as_library(room.network, {{0, 0}, {6.1, 0}, {6.1, 4.3}, {0, 4.3}});
}

TEST(SurveyReference, LRoomWithADoorIsThatOfAScientificLibrary) {
    SurveyCase room(6);
    room.read(1, 2, 7.203).read(2, 3, 2.998).read(3, 4, 2.701).read(4, 5, 2.402);
    room.read(5, 6, 4.497).read(6, 1, 5.401).read(1, 3, 7.803).read(1, 4, 5.405);
    room.read(1, 5, 7.029).read(2, 4, 4.089).read(2, 6, 8.998).read(4, 6, 5.103);
    room.square(1).square(4).square(5);
    room.along(7, 1, 2, 2.410).offset(7, 1, 2, 0.0, 0.002).read(7, 4, 3.649).read(7, 6, 5.918);
    room.along(8, 6, 1, 1.950).offset(8, 6, 1, 1.105).read(8, 4, 3.440);
    expect_as_library(
        room.network,
        {{0, 0}, {7.2, 0}, {7.2, 3}, {4.5, 3}, {4.5, 5.4}, {0, 5.4}, {2.4, 0}, {1.1, 3.4}});
}

TEST(SurveyReference, SplayedRoomWithABayIsThatOfAScientificLibrary) {
    SurveyCase room(8);
    const std::vector<Vec2> truth{{0, 0}, {6.2, 0}, {6.6, 5.1}, {4.5, 4.9},
                                  {4, 6}, {2.2, 6}, {1.7, 5.0}, {-0.3, 5}};
    double by_m = 0.004;
    for (int i = 1; i <= 8; ++i) {
        for (int j = i + 1; j <= 8; ++j) {
            const double length_m =
                (truth[static_cast<std::size_t>(i - 1)] - truth[static_cast<std::size_t>(j - 1)])
                    .norm();
            // Errors of some millimetres that repeat no pattern of the room.
            by_m = std::fmod(7.0 * by_m + 0.0031, 0.009) - 0.0045;
            room.read(i, j, length_m + by_m);
        }
    }
    expect_as_library(room.network, truth);
}

} // namespace
} // namespace throwline::survey
