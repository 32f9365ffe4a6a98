#include "survey/blunders.h"

#include "survey/least_squares.h"
#include "survey/modelled.h"
#include "survey/screen.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>

namespace throwline::survey {
namespace {

// Two readings that explain a disagreement within this share cannot be told apart.
constexpr double kTie = 0.02;
// Rounding must not decide between readings that explain exactly as much: the first is named.
constexpr double kRounding = 1e-7;
// The shape moves once wrong readings are out; the search is repeated until it names the same.
constexpr int kMostRounds = 4;

/// Half of what is spare, so that as much is left to confirm as is set aside; and a fifth of all:
/// who is wrong more often has not measured this room.
int most_wrong(const Network& network) {
    const int count = static_cast<int>(network.observations.size());
    const int half_of_spare = (count - unknowns_of(network) + 1) / 2;
    return std::max(1, std::min(half_of_spare, std::max(2, count / 5)));
}

class Search {
  public:
    Search(const Network& network, Screen screen)
        : network_(network), all_(std::move(screen)), most_(most_wrong(network)) {}

    /// `hint` are readings that may be wrong, such as those that miss a shape found otherwise.
    std::vector<int> wrong_readings(const std::vector<int>& hint) const {
        std::vector<int> best = one_by_one({});
        const bool doubtful = best.size() > 1 || !explained(best);
        reinstate(best);
        std::vector<std::vector<int>> others;
        if (static_cast<int>(hint.size()) <= most_) {
            others.push_back(one_by_one(hint));
        }
        if (doubtful && most_ >= 2) {
            others.push_back(one_by_one(best_pair()));
        }
        for (std::vector<int>& other : others) {
            reinstate(other);
            if (is_better(other, best)) {
                best = other;
            }
        }
        return best;
    }

    /// Others that explain as much as one of those set aside.
    std::vector<int> alternatives(const std::vector<int>& wrong, int suspect) const {
        const Screen rest = left_out(all_, others(wrong, suspect));
        const double strength = std::abs(rest.standardised(suspect));
        std::vector<int> ties;
        for (int i = 0; i < count(); ++i) {
            const bool set_aside = std::find(wrong.begin(), wrong.end(), i) != wrong.end();
            if (!set_aside && std::abs(rest.standardised(i)) >= (1.0 - kTie) * strength) {
                ties.push_back(i);
            }
        }
        return ties;
    }

    /// Takes back what agrees with the others after all, the best agreeing first.
    void reinstate(std::vector<int>& out) const {
        while (!out.empty()) {
            const auto least = std::min_element(out.begin(), out.end(), [&](int a, int b) {
                return strength(out, a) < strength(out, b);
            });
            if (strength(out, *least) > kWrong) {
                return;
            }
            out.erase(least);
        }
    }

    double strength(const std::vector<int>& wrong, int suspect) const {
        return std::abs(left_out(all_, others(wrong, suspect)).standardised(suspect));
    }

  private:
    int count() const { return static_cast<int>(network_.observations.size()); }

    /// What is believed comes after what was read and explains as much.
    double handicap(int i) const {
        return network_.observations[static_cast<std::size_t>(i)].assumed ? 1.0 - kTie : 1.0;
    }

    static std::vector<int> others(const std::vector<int>& wrong, int suspect) {
        std::vector<int> rest;
        std::copy_if(wrong.begin(), wrong.end(), std::back_inserter(rest),
                     [suspect](int i) { return i != suspect; });
        return rest;
    }

    /// The reading with the largest standardised residual. Of several that explain as much the one
    /// that has to be wrong by least.
    int worst(const Screen& screen) const {
        double most = 0.0;
        for (int i = 0; i < count(); ++i) {
            most = std::max(most, std::abs(screen.standardised(i)) * handicap(i));
        }
        int worst = -1;
        for (int i = 0; i < count(); ++i) {
            const double size = std::abs(screen.standardised(i)) * handicap(i);
            const bool least_wrong =
                worst < 0 || wrong_by(screen, i) < wrong_by(screen, worst) * (1.0 - kRounding);
            if (size > 0.0 && size >= most * (1.0 - kTie) && least_wrong) {
                worst = i;
            }
        }
        return worst;
    }

    static double wrong_by(const Screen& screen, int i) {
        return std::abs(screen.residual[i]) / screen.shows(i, i);
    }

    bool explained(const std::vector<int>& out) const {
        const Screen rest = left_out(all_, out);
        const int worst_left = worst(rest);
        const int degrees = count() - unknowns_of(network_) - static_cast<int>(out.size());
        return (worst_left < 0 || std::abs(rest.standardised(worst_left)) <= kWrong)
               && (degrees < 1 || rest.weighted_sum <= chi_square_quantile(0.99, degrees));
    }

    std::vector<int> one_by_one(std::vector<int> out) const {
        Screen screen = left_out(all_, out);
        while (static_cast<int>(out.size()) < most_) {
            const int next = worst(screen);
            if (next < 0 || std::abs(screen.standardised(next)) <= kWrong) {
                break;
            }
            out.push_back(next);
            screen = left_out(screen, next);
        }
        return out;
    }

    /// The two readings that leave least to explain when both are wrong, counting what it costs
    /// that they are.
    std::vector<int> best_pair() const {
        std::vector<int> best;
        double least = all_.weighted_sum;
        for (int i = 0; i < count(); ++i) {
            if (all_.shows(i, i) <= kNoRedundancy) {
                continue;
            }
            const Screen rest = left_out(all_, i);
            for (int j = i + 1; j < count(); ++j) {
                if (rest.shows(j, j) > kNoRedundancy) {
                    const double left = cost_of_pair(rest, i, j);
                    if (left < least * (1.0 - kRounding)) {
                        least = left;
                        best = {i, j};
                    }
                }
            }
        }
        return best;
    }

    /// What is left of the weighted sum without both, and the costs of two errors of that size;
    /// `rest` is without the first.
    double cost_of_pair(const Screen& rest, int i, int j) const {
        const double second = rest.residual[j] / rest.shows(j, j);
        const double first = (all_.residual[i] - all_.shows(i, j) * second) / all_.shows(i, i);
        const double left = rest.weighted_sum - std::pow(rest.standardised(j), 2);
        const double belief = 2.0 - handicap(i) - handicap(j);
        return left + cost_of(first) + cost_of(second) + belief * all_.weighted_sum;
    }

    /// What is left of the weighted sum, and the costs of errors as large as they have to be.
    double cost_of_all(const std::vector<int>& out) const {
        const auto size = static_cast<Eigen::Index>(out.size());
        Eigen::MatrixXd shows(size, size);
        Eigen::VectorXd residual(size);
        for (Eigen::Index i = 0; i < size; ++i) {
            residual[i] = all_.residual[out[static_cast<std::size_t>(i)]];
            for (Eigen::Index j = 0; j < size; ++j) {
                shows(i, j) =
                    all_.shows(out[static_cast<std::size_t>(i)], out[static_cast<std::size_t>(j)]);
            }
        }
        const Eigen::VectorXd wrong_by = shows.llt().solve(residual);
        double cost = all_.weighted_sum - wrong_by.dot(residual);
        for (Eigen::Index i = 0; i < size; ++i) {
            cost += cost_of(wrong_by[i]);
            cost += (1.0 - handicap(out[static_cast<std::size_t>(i)])) * all_.weighted_sum;
        }
        return cost;
    }

    bool is_better(const std::vector<int>& a, const std::vector<int>& b) const {
        const bool explains = explained(a);
        if (explains != explained(b)) {
            return explains;
        }
        return cost_of_all(a) < cost_of_all(b) * (1.0 - kRounding);
    }

    const Network& network_;
    Screen all_;
    int most_;
};

struct Chosen {
    std::vector<int> wrong;
    Adjustment adjustment;
};

/// Whether readings that were kept still disagree.
bool is_unexplained(const Adjustment& kept) {
    return kept.test == GlobalTest::fails
           || std::any_of(kept.observations.begin(), kept.observations.end(),
                          [](const ObservationResult& result) {
                              return std::abs(result.standardised.value_or(0.0)) > kWrong;
                          });
}

std::optional<Chosen> chosen_without(const Network& network, std::vector<int> wrong,
                                     std::span<const Vec2> start) {
    std::optional<Adjustment> adjustment = adjusted(without(network, wrong), start);
    if (!adjustment) {
        return std::nullopt;
    }
    return Chosen{std::move(wrong), *std::move(adjustment)};
}

/// What a search in the linear model finds; repeated from the shape without the wrong readings.
std::optional<Chosen> found_near(const Network& network, std::span<const Vec2> shape) {
    std::optional<Chosen> found;
    std::vector<Vec2> points(shape.begin(), shape.end());
    std::vector<int> hint = missing_readings(network, shape);
    for (int round = 0; round < kMostRounds; ++round) {
        const std::optional<Screen> screen = screen_at(network, points);
        if (!screen) {
            return found;
        }
        std::vector<int> wrong = Search(network, *screen).wrong_readings(hint);
        if (found && wrong == found->wrong) {
            return found;
        }
        std::optional<Chosen> next = chosen_without(network, wrong, points);
        if (!next) {
            return found;
        }
        points = next->adjustment.points;
        hint = std::move(wrong);
        found = std::move(next);
    }
    return found;
}

/// What misses a shape, left out as it is.
std::optional<Chosen> as_missed(const Network& network, std::span<const Vec2> shape) {
    const std::vector<int> missing = missing_readings(network, shape);
    if (static_cast<int>(missing.size()) > most_wrong(network)) {
        return std::nullopt;
    }
    std::optional<Chosen> chosen = chosen_without(network, missing, shape);
    const auto screen = chosen ? screen_at(network, chosen->adjustment.points) : std::nullopt;
    if (!screen) {
        return std::nullopt;
    }
    std::vector<int> wrong = missing;
    Search(network, *screen).reinstate(wrong);
    return chosen_without(network, std::move(wrong), chosen->adjustment.points);
}

/// What it costs to believe a choice.
double cost_of(const Network& network, const Chosen& chosen) {
    // Two and a half standard errors: what would be gained by leaving out a reading that is right.
    constexpr double kUnexplained = 6.0;
    return cost_of(network, chosen.adjustment.points)
           + (is_unexplained(chosen.adjustment) ? kUnexplained : 0.0);
}

/// The one that costs least of what comes out from several shapes.
std::optional<Chosen> chosen_from(const Network& network, std::span<const Shape> shapes) {
    std::optional<Chosen> best;
    double least = 0.0;
    for (const Shape& shape : shapes) {
        for (auto* const way : {&found_near, &as_missed}) {
            std::optional<Chosen> chosen = (*way)(network, shape.points);
            const double cost = chosen ? cost_of(network, *chosen) : 0.0;
            if (chosen && (!best || cost < least * (1.0 - kRounding))) {
                best = std::move(chosen);
                least = cost;
            }
        }
    }
    return best;
}

/// Variances that the shape without the wrong readings predicts for all readings.
Eigen::VectorXd predicted_variances(const Network& network, const Chosen& chosen) {
    const std::vector<Vec2>& points = chosen.adjustment.points;
    const Network rest = without(network, chosen.wrong);
    const auto fit = weighted_least_squares(design_matrix(rest, points), misclosures(rest, points),
                                            sigmas_of(rest));
    const Eigen::MatrixXd design = design_matrix(network, points);
    if (!fit) {
        return Eigen::VectorXd::Zero(design.rows());
    }
    return (design * fit->covariance).cwiseProduct(design).rowwise().sum();
}

/// Results for all observations from those of the ones that were kept.
void put_back(const Network& network, const Eigen::VectorXd& variances, Chosen& chosen) {
    std::vector<ObservationResult> all;
    auto kept = chosen.adjustment.observations.begin();
    for (std::size_t i = 0; i < network.observations.size(); ++i) {
        const int number = static_cast<int>(i);
        if (std::find(chosen.wrong.begin(), chosen.wrong.end(), number) == chosen.wrong.end()) {
            all.push_back(*kept++);
            continue;
        }
        const Observation& observation = network.observations[i];
        ObservationResult result;
        result.adjusted = modelled_value(observation, chosen.adjustment.points);
        result.residual = result.adjusted - observation.value;
        result.redundancy = 1.0;
        const double variance = variances[number] + observation.sigma * observation.sigma;
        result.standardised = result.residual / std::sqrt(variance);
        all.push_back(result);
    }
    chosen.adjustment.observations = std::move(all);
}

std::vector<Suspect> suspects_of(const Network& network, const Eigen::VectorXd& variances,
                                 const Chosen& chosen) {
    std::vector<Suspect> suspects;
    const std::optional<Screen> screen = screen_at(network, chosen.adjustment.points);
    if (!screen) {
        return suspects;
    }
    const Search search(network, *screen);
    for (const int wrong : chosen.wrong) {
        const ObservationResult& result =
            chosen.adjustment.observations[static_cast<std::size_t>(wrong)];
        suspects.push_back({.observation = wrong,
                            .strength = std::abs(result.standardised.value_or(0.0)),
                            .probable = result.adjusted,
                            .probable_sigma = std::sqrt(variances[wrong]),
                            .or_else = search.alternatives(chosen.wrong, wrong)});
    }
    std::stable_sort(suspects.begin(), suspects.end(),
                     [](const Suspect& a, const Suspect& b) { return a.strength > b.strength; });
    return suspects;
}

/// The readings contradict each other so much that nothing can be said: all points are loose.
Undetermined nothing_settles(const Network& network) {
    Undetermined result;
    result.needed = 0;
    for (int point = 0; point < network.points; ++point) {
        result.loose.push_back(point);
    }
    return result;
}

} // namespace

tl::expected<Solution, Undetermined> without_wrong_readings(const Network& network,
                                                            std::span<const Shape> shapes) {
    std::optional<Adjustment> with_all = adjusted(network, shapes.front().points);
    std::optional<Chosen> chosen = chosen_from(network, shapes);
    if (!chosen) {
        return tl::make_unexpected(nothing_settles(network));
    }
    if (!with_all) {
        with_all = assessed(network, chosen->adjustment.points);
    }
    const Eigen::VectorXd variances = predicted_variances(network, *chosen);
    Solution solution;
    solution.unexplained = is_unexplained(chosen->adjustment);
    put_back(network, variances, *chosen);
    solution.suspects = suspects_of(network, variances, *chosen);
    solution.with_all = with_all ? *std::move(with_all) : chosen->adjustment;
    solution.adjustment = std::move(chosen->adjustment);
    return solution;
}

} // namespace throwline::survey
