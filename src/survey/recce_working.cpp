#include "survey/recce_working.h"

#include "base/length_text.h"
#include "survey/recce_sentences.h"

#include <fmt/format.h>

namespace throwline::survey {

namespace {

constexpr std::string_view kAdjustment =
    "weighted least squares (adjustment computations, textbook, from memory)";
constexpr std::string_view kBaarda = "Baarda's test of single readings, alpha 0.001, power 0.80 "
                                     "(formula from memory)";

std::string millimetres(double metres) {
    return fixed(metres * 1000.0, 2) + " mm";
}

/// A value of a reading in its own unit.
std::string value_text(const SurveyedReading& reading, double value) {
    return reading.kind == ReadingKind::square_corner ? degrees_text(Angle::radians(value), 3)
                                                      : metres_text(Length::metres(value), 4);
}

std::string error_text(const SurveyedReading& reading, double value) {
    return reading.kind == ReadingKind::square_corner ? degrees_text(Angle::radians(value), 3)
                                                      : millimetres(value);
}

Working wrong_working(const SurveyedReading& reading) {
    const Suspect& suspect = *reading.suspect;
    return {"w = (L - p) / sqrt(sigma² + sigma_p²)",
            {{"L", fmt::format("read, {}", label_of(reading)), value_text(reading, reading.read)},
             {"p", "what all other readings say", value_text(reading, suspect.probable)},
             {"sigma", "standard error of the reading", error_text(reading, reading.sigma)},
             {"sigma_p", "standard error of p", error_text(reading, suspect.probable_sigma)},
             {"", "wrong beyond", fixed(kWrong, 4)}},
            fmt::format("|w| = {}", fixed(suspect.strength, 2)),
            std::string{kBaarda}};
}

} // namespace

Working point_working(const RecceResult& result, const SurveyedPoint& point) {
    const PointError& error = point.error;
    return {"a², b² = (sx² + sy²) / 2 ± sqrt(((sx² - sy²) / 2)² + sxy²)",
            {{"sx", fmt::format("standard error of {} along x", point.name),
              millimetres(error.sigma_x)},
             {"sy", "along y", millimetres(error.sigma_y)},
             {"sxy", "covariance", fixed(error.covariance_xy * 1e6, 2) + " mm²"},
             {"", "held fixed",
              fmt::format("{} at the origin, {} on the x axis", result.points[0].name,
                          result.points[1].name)}},
            fmt::format("a = {}, b = {}, a at {} from x", millimetres(error.semi_major),
                        millimetres(error.semi_minor),
                        degrees_text(Angle::radians(error.major_angle_rad))),
            std::string{kAdjustment}};
}

Working reading_working(const RecceResult&, const SurveyedReading& reading) {
    if (reading.suspect) {
        return wrong_working(reading);
    }
    const ObservationResult& outcome = reading.outcome;
    return {"w = v / (sigma sqrt(r)), v = adjusted - read",
            {{"", fmt::format("read, {}", label_of(reading)), value_text(reading, reading.read)},
             {"", "adjusted", value_text(reading, outcome.adjusted)},
             {"v", "residual", error_text(reading, outcome.residual)},
             {"sigma", "standard error of the reading", error_text(reading, reading.sigma)},
             {"r", "redundancy, the share of an error that shows", fixed(outcome.redundancy, 3)}},
            outcome.standardised ? fmt::format("w = {}", fixed(*outcome.standardised, 2))
                                 : std::string{"none: nothing checks this reading"},
            std::string{kBaarda}};
}

Working detectable_working(const RecceResult&, const SurveyedReading& reading) {
    return {"least error found = 4.132 sigma / sqrt(r)",
            {{"sigma", fmt::format("standard error, {}", label_of(reading)),
              error_text(reading, reading.sigma)},
             {"r", "redundancy", fixed(reading.outcome.redundancy, 3)}},
            error_text(reading, reading.outcome.detectable.value_or(0.0)),
            std::string{kBaarda}};
}

Working agreement_working(const RecceResult& result) {
    const int spare = result.degrees_of_freedom;
    return {"T = sum of (v / sigma)²; doubtful above chi²(0.95), fails above chi²(0.99)",
            {{"r", "readings to spare", fmt::format("{}", spare)},
             {"", "chi²(0.95)", fixed(chi_square_quantile(0.95, spare), 3)},
             {"", "chi²(0.99)", fixed(chi_square_quantile(0.99, spare), 3)}},
            fmt::format("T = {}, standard error of unit weight {}", fixed(result.weighted_sum, 3),
                        fixed(result.unit_weight_error, 3)),
            "chi-square test of the adjustment (textbook, from memory)"};
}

std::vector<Working> recce_workings(const RecceResult& result) {
    std::vector<Working> workings;
    if (result.degrees_of_freedom > 0) {
        workings.push_back(agreement_working(result));
    }
    for (const SurveyedPoint& point : result.points) {
        workings.push_back(point_working(result, point));
    }
    for (const SurveyedReading& reading : result.readings) {
        if (reading.verdict == Verdict::not_used) {
            continue;
        }
        workings.push_back(reading_working(result, reading));
        if (reading.outcome.detectable && !reading.suspect) {
            workings.push_back(detectable_working(result, reading));
        }
    }
    for (std::size_t i = 0; i < result.chains.size(); ++i) {
        workings.push_back(chain_working(result.survey, result.survey.chains[i], result.chains[i]));
    }
    return workings;
}

} // namespace throwline::survey
