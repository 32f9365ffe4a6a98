#include "survey/least_squares.h"

#include <Eigen/Cholesky>

namespace throwline::survey {
namespace {

// Share of a diagonal element of the normal matrix that is left once the unknowns before it are
// eliminated; below, rounding is all that is left.
constexpr double kDependent = 1e-11;

bool determines(const Eigen::LLT<Eigen::MatrixXd>& factor, const Eigen::MatrixXd& normal) {
    if (factor.info() != Eigen::Success) {
        return false;
    }
    for (Eigen::Index i = 0; i < normal.rows(); ++i) {
        const double pivot = factor.matrixLLT()(i, i);
        if (!(pivot * pivot > kDependent * normal(i, i))) {
            return false;
        }
    }
    return true;
}

} // namespace

std::optional<LinearFit> weighted_least_squares(const Eigen::MatrixXd& design,
                                                const Eigen::VectorXd& observed,
                                                const Eigen::VectorXd& sigma) {
    const Eigen::VectorXd root_weight = sigma.cwiseInverse();
    const Eigen::MatrixXd scaled = root_weight.asDiagonal() * design;
    const Eigen::MatrixXd normal = scaled.transpose() * scaled;
    const Eigen::LLT<Eigen::MatrixXd> factor(normal);
    if (!determines(factor, normal)) {
        return std::nullopt;
    }
    LinearFit fit;
    fit.unknowns = factor.solve(scaled.transpose() * root_weight.cwiseProduct(observed));
    fit.covariance = factor.solve(Eigen::MatrixXd::Identity(normal.rows(), normal.cols()));
    fit.residuals = design * fit.unknowns - observed;
    const Eigen::MatrixXd spread = scaled * fit.covariance;
    fit.redundancies =
        Eigen::VectorXd::Ones(sigma.size()) - spread.cwiseProduct(scaled).rowwise().sum();
    fit.weighted_sum = root_weight.cwiseProduct(fit.residuals).squaredNorm();
    return fit;
}

} // namespace throwline::survey
