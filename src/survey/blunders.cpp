#include "survey/blunders.h"

#include "survey/least_squares.h"
#include "survey/modelled.h"

#include <algorithm>
#include <cmath>

namespace throwline::survey {
namespace {

// Redundancy by which nothing can be divided.
constexpr double kNoRedundancy = 1e-4;
// Two readings that explain a disagreement within this share cannot be told apart.
constexpr double kTie = 0.02;
// Rounding must not decide between readings that explain exactly as much: the first is named.
constexpr double kRounding = 1e-7;
// The shape moves once wrong readings are out; the search is repeated until it names the same.
constexpr int kMostRounds = 4;

/// Residuals in standard errors, and how an error in one reading shows in all of them; for any set
/// of readings left out, in the linear model at one shape.
struct Screen {
    Eigen::VectorXd residual;
    Eigen::MatrixXd shows;
    double weighted_sum = 0.0;

    double standardised(int i) const {
        const double redundancy = shows(i, i);
        return redundancy > kNoRedundancy ? residual[i] / std::sqrt(redundancy) : 0.0;
    }
};

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

/// The same with one more reading left out.
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

class Search {
  public:
    Search(const Network& network, Screen screen) : network_(network), all_(std::move(screen)) {
        const int spare = static_cast<int>(network.observations.size()) - unknowns_of(network);
        // Half of what is spare, so that as much is left to confirm as is set aside.
        most_ = std::max(1, (spare + 1) / 2);
    }

    std::vector<int> wrong_readings() const {
        const std::vector<int> singly = one_by_one({});
        std::vector<int> chosen = singly;
        const bool doubtful = singly.size() > 1 || !explained(singly);
        if (doubtful && most_ >= 2) {
            const std::vector<int> pair = one_by_one(best_pair());
            if (is_better(pair, singly)) {
                chosen = pair;
            }
        }
        reinstate(chosen);
        return chosen;
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

    int worst(const Screen& screen) const {
        int worst = -1;
        double most = 0.0;
        for (int i = 0; i < count(); ++i) {
            const double size = std::abs(screen.standardised(i)) * handicap(i);
            if (size > most * (1.0 + kRounding)) {
                worst = i;
                most = size;
            }
        }
        return worst;
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

    std::vector<int> best_pair() const {
        std::vector<int> best;
        double most = 0.0;
        for (int i = 0; i < count(); ++i) {
            if (all_.shows(i, i) <= kNoRedundancy) {
                continue;
            }
            const Screen rest = left_out(all_, i);
            const double first = std::pow(all_.standardised(i), 2);
            for (int j = i + 1; j < count(); ++j) {
                const double taken = (first + std::pow(rest.standardised(j), 2))
                                     * std::pow(handicap(i) * handicap(j), 2);
                if (taken > most * (1.0 + kRounding)) {
                    most = taken;
                    best = {i, j};
                }
            }
        }
        return best;
    }

    bool is_better(const std::vector<int>& a, const std::vector<int>& b) const {
        const bool explains = explained(a);
        if (explains != explained(b)) {
            return explains;
        }
        if (a.size() != b.size()) {
            return a.size() < b.size();
        }
        return left_out(all_, a).weighted_sum < left_out(all_, b).weighted_sum;
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

    const Network& network_;
    Screen all_;
    int most_ = 1;
};

struct Chosen {
    std::vector<int> wrong;
    Adjustment adjustment;
};

/// The readings that are wrong and the shape without them; repeated from the shape without them.
std::optional<Chosen> chosen_at(const Network& network, std::span<const Vec2> shape) {
    std::optional<Chosen> chosen;
    std::vector<Vec2> points(shape.begin(), shape.end());
    for (int round = 0; round < kMostRounds; ++round) {
        const std::optional<Screen> screen = screen_at(network, points);
        if (!screen) {
            return chosen;
        }
        std::vector<int> wrong = Search(network, *screen).wrong_readings();
        if (chosen && wrong == chosen->wrong) {
            return chosen;
        }
        std::optional<Adjustment> adjustment = adjusted(without(network, wrong), points);
        if (!adjustment) {
            return chosen;
        }
        points = adjustment->points;
        chosen = Chosen{std::move(wrong), *std::move(adjustment)};
    }
    return chosen;
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

bool is_unexplained(const Chosen& chosen) {
    const auto& results = chosen.adjustment.observations;
    std::size_t over = 0;
    for (const ObservationResult& result : results) {
        over += std::abs(result.standardised.value_or(0.0)) > kWrong ? 1 : 0;
    }
    return over > chosen.wrong.size() || chosen.adjustment.test == GlobalTest::fails;
}

} // namespace

std::optional<Solution> without_wrong_readings(const Network& network,
                                               std::span<const Vec2> shape) {
    std::optional<Adjustment> with_all = adjusted(network, shape);
    std::optional<Chosen> chosen = chosen_at(network, shape);
    if (!with_all || !chosen) {
        return std::nullopt;
    }
    const Eigen::VectorXd variances = predicted_variances(network, *chosen);
    put_back(network, variances, *chosen);
    Solution solution;
    solution.suspects = suspects_of(network, variances, *chosen);
    solution.unexplained = is_unexplained(*chosen);
    solution.adjustment = std::move(chosen->adjustment);
    solution.with_all = *std::move(with_all);
    return solution;
}

} // namespace throwline::survey
