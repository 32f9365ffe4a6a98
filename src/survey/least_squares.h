#pragma once

#include <Eigen/Core>
#include <optional>

namespace throwline::survey {

/// The best linear unbiased estimate from more observations than unknowns (textbook method of
/// adjustment computations, from memory).
struct LinearFit {
    Eigen::VectorXd unknowns;
    /// Covariance of the unknowns from the given standard errors: the inverse of the normal matrix.
    Eigen::MatrixXd covariance;
    /// adjusted - observed
    Eigen::VectorXd residuals;
    /// Share of an error in each observation that shows in its residual, 0 .. 1; they add up to the
    /// observations less the unknowns.
    Eigen::VectorXd redundancies;
    /// Sum of (residual / sigma)².
    double weighted_sum = 0.0;
};

/// Solves design * x = observed with standard errors `sigma` (> 0, uncorrelated). Nothing when the
/// observations do not determine the unknowns.
std::optional<LinearFit> weighted_least_squares(const Eigen::MatrixXd& design,
                                                const Eigen::VectorXd& observed,
                                                const Eigen::VectorXd& sigma);

} // namespace throwline::survey
