#include "survey/screen.h"

#include "survey/least_squares.h"
#include "survey/modelled.h"

#include <cmath>

namespace throwline::survey {

double Screen::standardised(int observation) const {
    const double redundancy = shows(observation, observation);
    return redundancy > kNoRedundancy ? residual[observation] / std::sqrt(redundancy) : 0.0;
}

std::optional<Screen> screen_at(const Network& network, std::span<const Vec2> shape) {
    const Eigen::MatrixXd design = design_matrix(network, shape);
    const Eigen::VectorXd sigma = sigmas_of(network);
    const auto fit = weighted_least_squares(design, misclosures(network, shape), sigma);
    if (!fit) {
        return std::nullopt;
    }
    const Eigen::VectorXd root_weight = sigma.cwiseInverse();
    const Eigen::MatrixXd scaled = root_weight.asDiagonal() * design;
    Screen screen;
    screen.residual = root_weight.cwiseProduct(fit->residuals);
    screen.shows = Eigen::MatrixXd::Identity(sigma.size(), sigma.size())
                   - scaled * fit->covariance * scaled.transpose();
    screen.weighted_sum = fit->weighted_sum;
    return screen;
}

Screen left_out(const Screen& screen, int out) {
    const Eigen::VectorXd column = screen.shows.col(out);
    const double redundancy = column[out];
    const double residual = screen.residual[out];
    Screen rest = screen;
    rest.residual -= column * (residual / redundancy);
    rest.shows -= column * (column.transpose() / redundancy);
    rest.residual[out] = 0.0;
    rest.shows.row(out).setZero();
    rest.shows.col(out).setZero();
    rest.weighted_sum -= residual * residual / redundancy;
    return rest;
}

Screen left_out(Screen screen, std::span<const int> out) {
    for (const int reading : out) {
        if (screen.shows(reading, reading) > kNoRedundancy) {
            screen = left_out(screen, reading);
        }
    }
    return screen;
}

} // namespace throwline::survey
