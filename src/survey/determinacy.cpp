#include "survey/determinacy.h"

#include "survey/modelled.h"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <functional>

namespace throwline::survey {
namespace {

// A part that errors of reading alone let move by more than this (one standard error) is not held.
constexpr double kLoose_m = 0.25;
// What nothing holds at all counts as good to this, so that it does not outweigh all others.
constexpr double kFree_m = 10.0;
// Pairs of points whose distance changes by less than this share of the most keep it.
constexpr double kKeepsDistance = 0.05;
// Shapes whose distances differ by less agree.
constexpr double kSameDistance_m = 0.02;
// Corners of the room are easier to find again than points on the floor.
constexpr double kCornerPreference = 1.5;
// Default precision of a tape: weighs one wanted pair against another.
constexpr double kTape_m = 0.002;
constexpr double kTapePerMetre = 0.0005;
constexpr std::size_t kMostWanted = 4;

using Pair = std::pair<int, int>;
using Keeps = std::function<bool(int, int)>;

Eigen::MatrixXd free_normal(const Network& network, std::span<const Vec2> points) {
    const Eigen::Index size = 2 * network.points;
    Eigen::MatrixXd normal = Eigen::MatrixXd::Zero(size, size);
    for (const Observation& observation : network.observations) {
        const Modelled model = modelled(observation, points);
        Eigen::VectorXd row = Eigen::VectorXd::Zero(size);
        for (std::size_t k = 0; k < static_cast<std::size_t>(model.count); ++k) {
            row.segment<2>(2 * model.point[k]) += model.slope[k] / observation.sigma;
        }
        normal += row * row.transpose();
    }
    return normal;
}

/// Shifts and turn of the whole, orthonormal columns.
Eigen::MatrixXd whole_motions(std::span<const Vec2> points) {
    const auto count = static_cast<Eigen::Index>(points.size());
    Vec2 centre = Vec2::Zero();
    for (const Vec2& point : points) {
        centre += point / static_cast<double>(count);
    }
    Eigen::MatrixXd motions = Eigen::MatrixXd::Zero(2 * count, 3);
    for (Eigen::Index i = 0; i < count; ++i) {
        motions(2 * i, 0) = 1.0;
        motions(2 * i + 1, 1) = 1.0;
        motions.col(2).segment<2>(2 * i) =
            turned_left(points[static_cast<std::size_t>(i)] - centre);
    }
    motions.colwise().normalize();
    return motions;
}

/// Movements that nothing holds, one a column, each as long as it is uncertain.
Eigen::MatrixXd free_motions(const Network& network, std::span<const Vec2> points) {
    Eigen::MatrixXd normal = free_normal(network, points);
    const Eigen::MatrixXd whole = whole_motions(points);
    const double held = normal.trace() + 1.0;
    normal += held * whole * whole.transpose();
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> modes(normal);
    Eigen::Index count = 0;
    while (count < normal.rows() && modes.eigenvalues()[count] < 1.0 / (kLoose_m * kLoose_m)) {
        ++count;
    }
    Eigen::MatrixXd motions = modes.eigenvectors().leftCols(count);
    for (Eigen::Index k = 0; k < count; ++k) {
        const double weight = std::max(modes.eigenvalues()[k], 1.0 / (kFree_m * kFree_m));
        motions.col(k) /= std::sqrt(weight);
    }
    return motions;
}

/// How the distance between two points changes in each of the motions.
Eigen::VectorXd stretch(const Eigen::MatrixXd& motions, std::span<const Vec2> points, Pair pair) {
    const Vec2 apart = points[static_cast<std::size_t>(pair.second)]
                       - points[static_cast<std::size_t>(pair.first)];
    const Eigen::RowVector2d along = apart.normalized().transpose();
    return (along
            * (motions.middleRows(2 * pair.second, 2) - motions.middleRows(2 * pair.first, 2)))
        .transpose();
}

std::vector<Pair> all_pairs(int points) {
    std::vector<Pair> pairs;
    for (int i = 0; i < points; ++i) {
        for (int j = i + 1; j < points; ++j) {
            pairs.emplace_back(i, j);
        }
    }
    return pairs;
}

/// The most points that keep all their distances, by adding to each pair whatever fits.
std::vector<int> largest_body(int points, const Keeps& keeps) {
    std::vector<int> best{0};
    for (const auto& [first, second] : all_pairs(points)) {
        if (!keeps(first, second)) {
            continue;
        }
        std::vector<int> body{first, second};
        for (int point = 0; point < points; ++point) {
            const bool belongs = point != first && point != second
                                 && std::all_of(body.begin(), body.end(),
                                                [&](int member) { return keeps(member, point); });
            if (belongs) {
                body.push_back(point);
            }
        }
        if (body.size() > best.size()) {
            best = body;
        }
    }
    return best;
}

std::vector<int> outside_of(const std::vector<int>& body, int points) {
    std::vector<int> others;
    for (int point = 0; point < points; ++point) {
        if (std::find(body.begin(), body.end(), point) == body.end()) {
            others.push_back(point);
        }
    }
    return others;
}

bool is_read(const Network& network, Pair pair) {
    return std::any_of(network.observations.begin(), network.observations.end(),
                       [&](const Observation& observation) {
                           const auto* tape = std::get_if<Distance>(&observation.sight);
                           return tape != nullptr
                                  && std::minmax(tape->from, tape->to)
                                         == std::minmax(pair.first, pair.second);
                       });
}

/// How well a tape between two points would hold the motions.
double worth(const Network& network, const Eigen::VectorXd& stretch, std::span<const Vec2> points,
             Pair pair) {
    const double length_m = (points[static_cast<std::size_t>(pair.second)]
                             - points[static_cast<std::size_t>(pair.first)])
                                .norm();
    const double preference = pair.second < network.outline ? kCornerPreference : 1.0;
    return preference * stretch.norm() / std::hypot(kTape_m, kTapePerMetre * length_m);
}

struct Ranked {
    Pair pair;
    double worth;
};

std::vector<Ranked> ranked_pairs(const Network& network, std::span<const Vec2> points,
                                 const std::function<double(Pair)>& worth_of) {
    std::vector<Ranked> ranked;
    for (const Pair& pair : all_pairs(static_cast<int>(points.size()))) {
        if (!is_read(network, pair)) {
            ranked.push_back({pair, worth_of(pair)});
        }
    }
    std::stable_sort(ranked.begin(), ranked.end(),
                     [](const Ranked& a, const Ranked& b) { return a.worth > b.worth; });
    return ranked;
}

std::vector<Pair> first_pairs(const std::vector<Ranked>& ranked) {
    // A pair that does a fifth of what the best does is no advice.
    constexpr double kPoorAdvice = 0.2;
    std::vector<Pair> pairs;
    for (const Ranked& candidate : ranked) {
        if (pairs.size() < kMostWanted && candidate.worth > 0.0
            && candidate.worth >= kPoorAdvice * ranked.front().worth) {
            pairs.push_back(candidate.pair);
        }
    }
    return pairs;
}

/// As many pairs as there are motions, each the best once those before hold theirs.
std::vector<Pair> pairs_for_all(const Network& network, std::span<const Vec2> points,
                                Eigen::MatrixXd motions) {
    std::vector<Pair> pairs;
    for (Eigen::Index k = 0; k < motions.cols(); ++k) {
        const std::vector<Ranked> ranked = ranked_pairs(network, points, [&](Pair pair) {
            return worth(network, stretch(motions, points, pair), points, pair);
        });
        if (ranked.empty() || !(ranked.front().worth > 0.0)) {
            break;
        }
        pairs.push_back(ranked.front().pair);
        const Eigen::VectorXd held = stretch(motions, points, pairs.back()).normalized();
        motions -= (motions * held) * held.transpose();
    }
    return pairs;
}

} // namespace

std::optional<Undetermined> looseness(const Network& network, std::span<const Vec2> points) {
    const Eigen::MatrixXd motions = free_motions(network, points);
    if (motions.cols() == 0) {
        return std::nullopt;
    }
    double most = 0.0;
    for (const Pair& pair : all_pairs(network.points)) {
        most = std::max(most, stretch(motions, points, pair).norm());
    }
    const std::vector<int> body = largest_body(network.points, [&](int a, int b) {
        return stretch(motions, points, std::minmax(a, b)).norm() < kKeepsDistance * most;
    });
    Undetermined result;
    result.loose = outside_of(body, network.points);
    result.needed = static_cast<int>(motions.cols());
    result.wanted =
        motions.cols() == 1
            ? first_pairs(ranked_pairs(network, points,
                                       [&](Pair pair) {
                                           return worth(network, stretch(motions, points, pair),
                                                        points, pair);
                                       }))
            : pairs_for_all(network, points, motions);
    return result;
}

Undetermined two_shapes(const Network& network, std::span<const Vec2> a, std::span<const Vec2> b) {
    const auto differs = [a, b](Pair pair) {
        const auto i = static_cast<std::size_t>(pair.first);
        const auto j = static_cast<std::size_t>(pair.second);
        return std::abs((a[i] - a[j]).norm() - (b[i] - b[j]).norm());
    };
    const std::vector<int> body = largest_body(
        network.points, [&](int i, int j) { return differs({i, j}) < kSameDistance_m; });
    Undetermined result;
    result.two_shapes = true;
    result.loose = outside_of(body, network.points);
    result.wanted = first_pairs(ranked_pairs(network, a, [&](Pair pair) {
        return differs(pair) * (pair.second < network.outline ? kCornerPreference : 1.0);
    }));
    return result;
}

} // namespace throwline::survey
