#include "survey/adjust.h"

#include "survey/least_squares.h"
#include "survey/modelled.h"
#include "survey/screen.h"
#include "survey/settling.h"

#include <algorithm>
#include <cmath>

namespace throwline::survey {
namespace {

// Non-centrality for alpha 0.001 and power 0.80 (Baarda's tables; computed from the normal
// distribution: 3.2905 + 0.8416).
constexpr double kNonCentrality = 4.132;

double covariance_at(const LinearFit& fit, int row, int column) {
    return row < 0 || column < 0 ? 0.0 : fit.covariance(row, column);
}

PointError point_error(const LinearFit& fit, int point) {
    const int x = unknown_index(point, 0);
    const int y = unknown_index(point, 1);
    const double xx = covariance_at(fit, x, x);
    const double yy = covariance_at(fit, y, y);
    const double xy = covariance_at(fit, x, y);
    const double mean = (xx + yy) / 2.0;
    const double reach = std::hypot((xx - yy) / 2.0, xy);
    return {.sigma_x = std::sqrt(xx),
            .sigma_y = std::sqrt(yy),
            .covariance_xy = xy,
            .semi_major = std::sqrt(mean + reach),
            .semi_minor = std::sqrt(std::max(0.0, mean - reach)),
            .major_angle_rad = 0.5 * std::atan2(2.0 * xy, xx - yy)};
}

ObservationResult observation_result(const Observation& observation, std::span<const Vec2> points,
                                     double redundancy) {
    ObservationResult result;
    result.adjusted = modelled_value(observation, points);
    result.residual = result.adjusted - observation.value;
    result.redundancy = std::clamp(redundancy, 0.0, 1.0);
    if (result.redundancy > kNoRedundancy) {
        const double root = std::sqrt(result.redundancy);
        result.standardised = result.residual / (observation.sigma * root);
        result.detectable = kNonCentrality * observation.sigma / root;
    }
    return result;
}

GlobalTest global_test(double weighted_sum, int degrees_of_freedom) {
    if (degrees_of_freedom < 1) {
        return GlobalTest::nothing_checked;
    }
    if (weighted_sum > chi_square_quantile(0.99, degrees_of_freedom)) {
        return GlobalTest::fails;
    }
    return weighted_sum > chi_square_quantile(0.95, degrees_of_freedom) ? GlobalTest::doubtful
                                                                        : GlobalTest::passes;
}

} // namespace

std::optional<Adjustment> adjusted(const Network& network, std::span<const Vec2> start) {
    Settling settling = settle(network, start);
    if (!settling.settled) {
        return std::nullopt;
    }
    std::optional<Adjustment> result = assessed(network, settling.points);
    if (result) {
        result->iterations = settling.rounds;
    }
    return result;
}

std::optional<Adjustment> assessed(const Network& network, std::span<const Vec2> points) {
    const std::optional<LinearFit> fit = weighted_least_squares(
        design_matrix(network, points), misclosures(network, points), sigmas_of(network));
    if (!fit) {
        return std::nullopt;
    }
    Adjustment result;
    for (int point = 0; point < network.points; ++point) {
        result.errors.push_back(point_error(*fit, point));
    }
    for (std::size_t i = 0; i < network.observations.size(); ++i) {
        result.observations.push_back(observation_result(
            network.observations[i], points, fit->redundancies[static_cast<Eigen::Index>(i)]));
    }
    result.degrees_of_freedom =
        static_cast<int>(network.observations.size()) - unknowns_of(network);
    for (std::size_t i = 0; i < network.observations.size(); ++i) {
        const double ratio = result.observations[i].residual / network.observations[i].sigma;
        result.weighted_sum += ratio * ratio;
    }
    if (result.degrees_of_freedom > 0) {
        result.unit_weight_error = std::sqrt(result.weighted_sum / result.degrees_of_freedom);
    }
    result.test = global_test(result.weighted_sum, result.degrees_of_freedom);
    result.points.assign(points.begin(), points.end());
    return result;
}

} // namespace throwline::survey
