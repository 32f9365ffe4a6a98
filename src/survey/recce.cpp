#include "survey/recce.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace throwline::survey {

namespace {

/// A survey with numbers for names, and what each observation is.
struct Numbered {
    Network network;
    std::vector<std::string> names;
    /// One an observation.
    std::vector<SurveyedReading> observed;
};

SurveyedReading reading_of(ReadingKind kind, std::size_t source, double read, double sigma) {
    SurveyedReading reading;
    reading.kind = kind;
    reading.source = static_cast<int>(source);
    reading.read = read;
    reading.sigma = sigma;
    return reading;
}

class Numbering {
  public:
    Numbering(const plan::Survey& survey, const std::vector<std::string>& left_out)
        : survey_{survey} {
        result_.names = survey.corners;
        for (const plan::FloorPoint& point : survey.points) {
            if (std::find(left_out.begin(), left_out.end(), point.name) == left_out.end()) {
                result_.names.push_back(point.name);
                if (point.outside) {
                    result_.network.outside.push_back(static_cast<int>(result_.names.size()) - 1);
                }
            }
        }
        for (std::size_t i = 0; i < result_.names.size(); ++i) {
            numbers_[result_.names[i]] = static_cast<int>(i);
        }
    }

    Numbered made() {
        Network& network = result_.network;
        network.points = static_cast<int>(result_.names.size());
        network.outline = static_cast<int>(survey_.corners.size());
        network.walk = survey_.clockwise ? Walk::clockwise : Walk::anticlockwise;
        for (std::size_t i = 0; i < survey_.readings.size(); ++i) {
            const plan::TapeReading& reading = survey_.readings[i];
            add_distance(ReadingKind::tape, i, reading, reading.length,
                         tape_sigma_m(survey_, reading.length));
        }
        for (std::size_t i = 0; i < survey_.chains.size(); ++i) {
            const plan::Chain& chain = survey_.chains[i];
            if (chain.to_the_end) {
                add_distance(ReadingKind::chain, i, chain, chain_sum(chain),
                             chain_sigma_m(survey_, chain));
            }
        }
        for (std::size_t i = 0; i < survey_.square_corners.size(); ++i) {
            add_square(i);
        }
        return std::move(result_);
    }

  private:
    /// A reading between points of which one was left out is no observation.
    template <class Measure>
    void add_distance(ReadingKind kind, std::size_t source, const Measure& measure, Length read,
                      double sigma_m) {
        const auto from = numbers_.find(measure.from);
        const auto to = numbers_.find(measure.to);
        if (from == numbers_.end() || to == numbers_.end()) {
            return;
        }
        result_.network.observations.push_back(
            {Distance{from->second, to->second}, read.m(), sigma_m, false});
        SurveyedReading& added =
            result_.observed.emplace_back(reading_of(kind, source, read.m(), sigma_m));
        added.from = measure.from;
        added.to = measure.to;
    }

    void add_square(std::size_t source) {
        const std::string& name = survey_.square_corners[source];
        const int count = result_.network.outline;
        const int corner = numbers_.at(name);
        const Corner sight{(corner + count - 1) % count, corner, (corner + 1) % count};
        constexpr double kSquare_rad = std::numbers::pi / 2.0;
        const double sigma_rad = survey_.squareness.rad();
        result_.network.observations.push_back({sight, kSquare_rad, sigma_rad, true});
        result_.observed
            .emplace_back(reading_of(ReadingKind::square_corner, source, kSquare_rad, sigma_rad))
            .from = name;
    }

    const plan::Survey& survey_;
    std::map<std::string, int> numbers_;
    Numbered result_;
};

Unsettled named(const Undetermined& undetermined, const std::vector<std::string>& names) {
    Unsettled unsettled;
    const auto name = [&](int number) { return names[static_cast<std::size_t>(number)]; };
    for (const int point : undetermined.loose) {
        unsettled.loose.push_back(name(point));
    }
    for (const auto& [from, to] : undetermined.wanted) {
        unsettled.wanted.emplace_back(name(from), name(to));
    }
    unsettled.needed = undetermined.needed;
    unsettled.two_shapes = undetermined.two_shapes;
    return unsettled;
}

/// Whether all loose points are floor points, so that the room stands without them.
bool spares_the_room(const Undetermined& undetermined, const Network& network) {
    return !undetermined.loose.empty()
           && std::all_of(undetermined.loose.begin(), undetermined.loose.end(),
                          [&](int point) { return point >= network.outline; });
}

Verdict verdict_of(const SurveyedReading& reading, bool doubted) {
    if (reading.suspect) {
        return Verdict::wrong;
    }
    if (reading.outcome.redundancy < kHardlyChecked || !reading.outcome.standardised) {
        return Verdict::hardly_checked;
    }
    const bool off = std::abs(*reading.outcome.standardised) >= kWorthALook;
    return off || doubted ? Verdict::worth_a_look : Verdict::fine;
}

/// Puts what the adjustment says to each observation.
void judge(std::vector<SurveyedReading>& observed, const Solution& solution) {
    std::vector<bool> doubted(observed.size(), false);
    for (const Suspect& suspect : solution.suspects) {
        observed[static_cast<std::size_t>(suspect.observation)].suspect = suspect;
        for (const int other : suspect.or_else) {
            doubted[static_cast<std::size_t>(other)] = true;
        }
    }
    for (std::size_t i = 0; i < observed.size(); ++i) {
        observed[i].outcome = solution.adjustment.observations[i];
        observed[i].verdict = verdict_of(observed[i], doubted[i]);
    }
}

/// Readings to points that could not be placed stand in the table too, as not used.
void add_unused(RecceResult& result) {
    for (std::size_t i = 0; i < result.survey.readings.size(); ++i) {
        const plan::TapeReading& reading = result.survey.readings[i];
        if (result.find(reading.from) != nullptr && result.find(reading.to) != nullptr) {
            continue;
        }
        SurveyedReading& unused = result.readings.emplace_back(reading_of(
            ReadingKind::tape, i, reading.length.m(), tape_sigma_m(result.survey, reading.length)));
        unused.from = reading.from;
        unused.to = reading.to;
        unused.verdict = Verdict::not_used;
    }
}

std::optional<CeilingFit> fitted_ceiling(const plan::Survey& survey) {
    if (survey.heights.empty()) {
        return std::nullopt;
    }
    CeilingFit fit;
    fit.lowest = survey.heights.front().height;
    fit.highest = fit.lowest;
    double weights = 0.0;
    double sum = 0.0;
    double largest_m = 0.0;
    for (const plan::HeightReading& reading : survey.heights) {
        const double sigma_m = tape_sigma_m(survey, reading.height);
        weights += 1.0 / (sigma_m * sigma_m);
        sum += reading.height.m() / (sigma_m * sigma_m);
        largest_m = std::max(largest_m, sigma_m);
        fit.lowest = std::min(fit.lowest, reading.height);
        fit.highest = std::max(fit.highest, reading.height);
    }
    fit.height = Length::metres(sum / weights);
    fit.sigma_m = std::sqrt(1.0 / weights);
    fit.differs = (fit.highest - fit.lowest).m() > kWrong * std::numbers::sqrt2 * largest_m;
    return fit;
}

RecceResult result_of(const plan::Survey& survey, Numbered numbered, const Solution& solution) {
    RecceResult result;
    result.survey = survey;
    const Adjustment& adjustment = solution.adjustment;
    for (std::size_t i = 0; i < numbered.names.size(); ++i) {
        result.points.push_back({numbered.names[i], adjustment.points[i], adjustment.errors[i]});
    }
    judge(numbered.observed, solution);
    result.readings = std::move(numbered.observed);
    for (const Suspect& suspect : solution.suspects) {
        result.suspects.push_back(suspect.observation);
    }
    for (const plan::Chain& chain : survey.chains) {
        const Vec2 along = result.find(chain.to)->at - result.find(chain.from)->at;
        result.chains.push_back(fitted_chain(survey, chain, Length::metres(along.norm())));
    }
    result.ceiling = fitted_ceiling(survey);
    result.degrees_of_freedom = adjustment.degrees_of_freedom;
    result.weighted_sum = adjustment.weighted_sum;
    result.unit_weight_error = adjustment.unit_weight_error;
    result.test = adjustment.test;
    result.unexplained = solution.unexplained;
    return result;
}

} // namespace

const SurveyedPoint* RecceResult::find(const std::string& name) const {
    const auto found = std::find_if(points.begin(), points.end(),
                                    [&](const SurveyedPoint& point) { return point.name == name; });
    return found == points.end() ? nullptr : &*found;
}

bool RecceResult::needs_another_look() const {
    return !suspects.empty() || unexplained || test == GlobalTest::fails
           || std::any_of(chains.begin(), chains.end(),
                          [](const ChainFit& chain) { return !chain.closes; });
}

tl::expected<RecceResult, Unsettled> surveyed(const plan::Survey& survey) {
    std::vector<std::string> left_out;
    std::vector<Unsettled> unplaced;
    while (true) {
        Numbered numbered = Numbering{survey, left_out}.made();
        const auto solution = solved(numbered.network);
        if (solution) {
            RecceResult result = result_of(survey, std::move(numbered), *solution);
            result.unplaced = std::move(unplaced);
            add_unused(result);
            return result;
        }
        const Unsettled unsettled = named(solution.error(), numbered.names);
        if (!spares_the_room(solution.error(), numbered.network)) {
            return tl::unexpected{unsettled};
        }
        // Each turn leaves out one point at least, so this comes to an end.
        left_out.insert(left_out.end(), unsettled.loose.begin(), unsettled.loose.end());
        unplaced.push_back(unsettled);
    }
}

} // namespace throwline::survey
