#include "survey/settling.h"

#include "survey/modelled.h"

#include <Eigen/Cholesky>
#include <cmath>

namespace throwline::survey {
namespace {

// Damping, as a share of the diagonal of the normal matrix.
constexpr double kFirstDamping = 1e-6;
constexpr double kMostDamping = 1e8;
constexpr double kDampingStep = 10.0;
// Near the end the loss cannot fall by more than rounding, and may seem to rise by it.
constexpr double kRelativeRounding = 1e-9;
constexpr double kAbsoluteRounding = 1e-12;
// Added to each diagonal element before damping, 1/m², so that points that nothing holds stay put;
// a reading good to 1 m weighs as much.
constexpr double kHold = 1.0;

struct Normal {
    Eigen::MatrixXd matrix;
    Eigen::VectorXd pull;
};

double loss_of(double scaled, double cauchy_scale) {
    if (cauchy_scale <= 0.0) {
        return scaled * scaled;
    }
    const double ratio = scaled / cauchy_scale;
    return cauchy_scale * cauchy_scale * std::log1p(ratio * ratio);
}

double weight_of(double scaled, double cauchy_scale) {
    if (cauchy_scale <= 0.0) {
        return 1.0;
    }
    const double ratio = scaled / cauchy_scale;
    return 1.0 / (1.0 + ratio * ratio);
}

double total_loss(const Network& network, std::span<const Vec2> points, double cauchy_scale) {
    double total = 0.0;
    for (const Observation& observation : network.observations) {
        const double misses = observation.value - modelled_value(observation, points);
        total += loss_of(misses / observation.sigma, cauchy_scale);
    }
    return total;
}

struct Slope {
    int unknown;
    double slope;
};

/// The slopes with the unknowns; returns how many.
int slopes_of(const Modelled& model, std::array<Slope, 6>& slopes) {
    int count = 0;
    for (std::size_t k = 0; k < static_cast<std::size_t>(model.count); ++k) {
        for (int axis = 0; axis < 2; ++axis) {
            const int unknown = unknown_index(model.point[k], axis);
            if (unknown >= 0) {
                slopes[static_cast<std::size_t>(count++)] = {unknown, model.slope[k][axis]};
            }
        }
    }
    return count;
}

Normal normal_equations(const Network& network, std::span<const Vec2> points, double cauchy_scale) {
    const Eigen::Index unknowns = unknowns_of(network);
    Normal normal{Eigen::MatrixXd::Zero(unknowns, unknowns), Eigen::VectorXd::Zero(unknowns)};
    std::array<Slope, 6> slopes{};
    for (const Observation& observation : network.observations) {
        const Modelled model = modelled(observation, points);
        const double misses = observation.value - model.value;
        const double weight = weight_of(misses / observation.sigma, cauchy_scale)
                              / (observation.sigma * observation.sigma);
        const int count = slopes_of(model, slopes);
        for (int a = 0; a < count; ++a) {
            const Slope& row = slopes[static_cast<std::size_t>(a)];
            normal.pull[row.unknown] += weight * row.slope * misses;
            for (int b = 0; b < count; ++b) {
                const Slope& column = slopes[static_cast<std::size_t>(b)];
                normal.matrix(row.unknown, column.unknown) += weight * row.slope * column.slope;
            }
        }
    }
    return normal;
}

std::optional<Eigen::VectorXd> step_of(const Normal& normal, double damping) {
    Eigen::MatrixXd damped = normal.matrix;
    damped.diagonal().array() += damping * (normal.matrix.diagonal().array() + kHold);
    const Eigen::LLT<Eigen::MatrixXd> factor(damped);
    if (factor.info() != Eigen::Success) {
        return std::nullopt;
    }
    Eigen::VectorXd step = factor.solve(normal.pull);
    if (!step.allFinite()) {
        return std::nullopt;
    }
    return step;
}

std::vector<Vec2> stepped(std::span<const Vec2> points, const Eigen::VectorXd& step) {
    std::vector<Vec2> moved(points.begin(), points.end());
    for (std::size_t i = 1; i < moved.size(); ++i) {
        for (int axis = 0; axis < 2; ++axis) {
            const int unknown = unknown_index(static_cast<int>(i), axis);
            if (unknown >= 0) {
                moved[i][axis] += step[unknown];
            }
        }
    }
    return moved;
}

/// One round: the step that lowers the loss, damped as much as it takes. Returns how far the
/// coordinate that moves most moves; nothing when no step helps.
std::optional<double> improve(const Network& network, Settling& state, double& damping,
                              double cauchy_scale) {
    const Normal normal = normal_equations(network, state.points, cauchy_scale);
    while (damping <= kMostDamping) {
        if (const std::optional<Eigen::VectorXd> step = step_of(normal, damping)) {
            std::vector<Vec2> moved = stepped(state.points, *step);
            const double loss = total_loss(network, moved, cauchy_scale);
            if (loss <= state.loss * (1.0 + kRelativeRounding) + kAbsoluteRounding) {
                state.points = std::move(moved);
                state.loss = loss;
                damping = damping > kFirstDamping ? damping / kDampingStep : 0.0;
                return step->cwiseAbs().maxCoeff();
            }
        }
        damping = damping > 0.0 ? damping * kDampingStep : kFirstDamping;
    }
    return std::nullopt;
}

} // namespace

Settling settle(const Network& network, std::span<const Vec2> start, const SettleOptions& options) {
    Settling state;
    state.points = in_datum(start);
    state.loss = total_loss(network, state.points, options.cauchy_scale);
    double damping = 0.0;
    while (state.rounds < options.most_rounds && !state.settled) {
        ++state.rounds;
        const std::optional<double> moved_m =
            improve(network, state, damping, options.cauchy_scale);
        if (!moved_m) {
            break;
        }
        state.settled = *moved_m < options.stop_m;
    }
    // Where the datum's second point was passed, the whole is turned half round.
    state.points = in_datum(state.points);
    return state;
}

} // namespace throwline::survey
