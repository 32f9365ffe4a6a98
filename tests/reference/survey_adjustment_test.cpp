#include "support/survey_case.h"
#include "survey/adjust.h"
#include "survey/least_squares.h"

#include <array>
#include <cmath>
#include <gsl/gsl_cdf.h>
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

} // namespace
} // namespace throwline::survey
