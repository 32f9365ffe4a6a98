#include "command/survey_output.h"

#include "base/length_text.h"
#include "base/utf8.h"
#include "base/words.h"
#include "survey/recce_sentences.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::command {

namespace {

using survey::ReadingKind;
using survey::RecceResult;
using survey::SurveyedPoint;
using survey::SurveyedReading;
using survey::Verdict;

using Row = std::vector<std::string>;

std::string padded(const std::string& text, std::size_t width) {
    const std::size_t length = characters_of(text).size();
    return text + std::string(width > length ? width - length : 0, ' ');
}

/// Columns as wide as their widest cell; the last is left as long as it is.
std::string table_text(const std::vector<Row>& rows) {
    std::vector<std::size_t> widths(rows.front().size(), 0);
    for (const Row& row : rows) {
        for (std::size_t i = 0; i < row.size(); ++i) {
            widths[i] = std::max(widths[i], characters_of(row[i]).size());
        }
    }
    std::string text;
    for (const Row& row : rows) {
        text += "  ";
        for (std::size_t i = 0; i + 1 < row.size(); ++i) {
            text += padded(row[i], widths[i] + 2);
        }
        text += row.back() + "\n";
    }
    return text;
}

std::string lines_text(std::string_view title, const std::vector<std::string>& lines) {
    if (lines.empty()) {
        return {};
    }
    std::string text = fmt::format("{}\n", title);
    for (const std::string& line : lines) {
        text += fmt::format("  {}\n", on_one_line(line));
    }
    return text;
}

std::string value_text(const SurveyedReading& reading, double value, UnitSystem units) {
    return reading.kind == ReadingKind::square_corner
               ? degrees_text(Angle::radians(std::abs(value)), 2)
               : survey::tape_text(Length::metres(value), units);
}

std::string residual_text(const SurveyedReading& reading, UnitSystem units) {
    const double residual = reading.outcome.residual;
    if (reading.kind == ReadingKind::square_corner) {
        const double sign = reading.outcome.adjusted < 0.0 ? -1.0 : 1.0;
        return fixed(Angle::radians(residual * sign).deg(), 2) + "°";
    }
    return units == UnitSystem::metric ? fixed(residual * 1000.0, 1) + " mm"
                                       : fixed(Length::metres(residual).in(), 2) + " in";
}

Row reading_row(const RecceResult& result, const SurveyedReading& reading, UnitSystem units) {
    const std::string verdict = survey::verdict_text(result, reading, units);
    const std::string label = on_one_line(survey::label_of(reading));
    if (reading.verdict == Verdict::not_used) {
        return {label, value_text(reading, reading.read, units), "", "", "", "", verdict};
    }
    const bool wrong = reading.verdict == Verdict::wrong;
    return {label,
            value_text(reading, reading.read, units),
            value_text(reading, reading.outcome.adjusted, units),
            residual_text(reading, units),
            wrong ? "" : share_text(reading.outcome.redundancy),
            reading.outcome.standardised ? fixed(*reading.outcome.standardised, 1) : "",
            verdict};
}

std::string readings_text(const RecceResult& result, UnitSystem units) {
    std::vector<Row> rows{{"from-to", "read", "adjusted", "moved", "checked", "off", "verdict"}};
    for (const SurveyedReading& reading : result.readings) {
        rows.push_back(reading_row(result, reading, units));
    }
    return "Readings (moved: adjusted less read; checked: the share of an error that would show; "
           "off: in standard errors)\n"
           + table_text(rows);
}

std::string points_text(const RecceResult& result, UnitSystem units) {
    std::vector<Row> rows{{"", "x", "y", "good to"}};
    for (std::size_t i = 0; i < result.points.size(); ++i) {
        const SurveyedPoint& point = result.points[i];
        rows.push_back(
            {on_one_line(point.name), survey::tape_text(Length::metres(point.at.x()), units),
             survey::tape_text(Length::metres(point.at.y()), units),
             i == 0 ? "the origin"
                    : survey::difference_text(Length::metres(point.error.semi_major), units)});
    }
    return fmt::format("Corners and points ({} to {} is the x axis; one standard error, at its "
                       "widest)\n{}",
                       on_one_line(result.points[0].name), on_one_line(result.points[1].name),
                       table_text(rows));
}

std::vector<std::string> wrong_lines(const RecceResult& result, UnitSystem units) {
    std::vector<std::string> lines;
    for (const int index : result.suspects) {
        const SurveyedReading& reading = result.readings[static_cast<std::size_t>(index)];
        lines.push_back(fmt::format("{}: read {}; {}.", survey::label_of(reading),
                                    value_text(reading, reading.read, units),
                                    survey::verdict_text(result, reading, units)));
    }
    for (std::size_t i = 0; i < result.chains.size(); ++i) {
        if (!result.chains[i].closes) {
            lines.push_back(survey::chain_text(result, i, units));
        }
    }
    return lines;
}

std::vector<std::string> chain_lines(const RecceResult& result, UnitSystem units) {
    std::vector<std::string> lines;
    for (std::size_t i = 0; i < result.chains.size(); ++i) {
        if (result.chains[i].closes) {
            lines.push_back(survey::chain_text(result, i, units));
        }
    }
    return lines;
}

std::vector<std::string> unplaced_lines(const RecceResult& result) {
    std::vector<std::string> lines;
    for (const survey::Unsettled& unsettled : result.unplaced) {
        lines.push_back(survey::unsettled_text(unsettled, result.survey));
    }
    return lines;
}

std::vector<std::string> note_lines(const plan::Survey& survey) {
    std::vector<std::string> lines;
    for (const plan::SiteNote& note : survey.notes) {
        lines.push_back(survey::note_text(note));
    }
    return lines;
}

std::string_view verdict_word(Verdict verdict) {
    switch (verdict) {
    case Verdict::fine:
        return "fine";
    case Verdict::worth_a_look:
        return "worth a look";
    case Verdict::wrong:
        return "wrong";
    case Verdict::hardly_checked:
        return "not really checked";
    case Verdict::not_used:
        return "not used";
    }
    return {};
}

std::string_view kind_word(ReadingKind kind) {
    switch (kind) {
    case ReadingKind::tape:
        return "tape";
    case ReadingKind::chain:
        return "chain";
    case ReadingKind::square_corner:
        return "square corner";
    }
    return {};
}

std::string_view test_word(survey::GlobalTest test) {
    switch (test) {
    case survey::GlobalTest::nothing_checked:
        return "nothing checked";
    case survey::GlobalTest::passes:
        return "passes";
    case survey::GlobalTest::doubtful:
        return "doubtful";
    case survey::GlobalTest::fails:
        return "fails";
    }
    return {};
}

JsonValue reading_json(const RecceResult& result, const SurveyedReading& reading,
                       UnitSystem units) {
    const bool angle = reading.kind == ReadingKind::square_corner;
    const bool used = reading.verdict != Verdict::not_used;
    // Metres, or degrees of a corner.
    const auto value = [&](double raw) { return angle ? Angle::radians(raw).deg() : raw; };
    const auto if_used = [&](double raw) {
        return used ? std::optional{value(raw)} : std::nullopt;
    };
    std::optional<double> probable;
    JsonValue::Array or_else;
    if (reading.suspect) {
        probable = value(reading.suspect->probable);
        for (const int other : reading.suspect->or_else) {
            or_else.emplace_back(
                survey::label_of(result.readings[static_cast<std::size_t>(other)]));
        }
    }
    const auto& detectable = reading.outcome.detectable;
    return JsonValue::Object{
        {"label", survey::label_of(reading)},
        {"kind", std::string{kind_word(reading.kind)}},
        {"unit", angle ? "deg" : "m"},
        {"read", value(reading.read)},
        {"standard_error", value(reading.sigma)},
        {"adjusted", if_used(reading.outcome.adjusted)},
        {"residual", if_used(reading.outcome.residual)},
        {"redundancy", used ? std::optional{reading.outcome.redundancy} : std::nullopt},
        {"standardised", reading.outcome.standardised},
        {"detectable", detectable ? std::optional{value(*detectable)} : std::nullopt},
        {"verdict", std::string{verdict_word(reading.verdict)}},
        {"probable", probable},
        {"or_else", std::move(or_else)},
        {"says", survey::verdict_text(result, reading, units)}};
}

JsonValue points_json(const RecceResult& result, std::size_t from, std::size_t to) {
    JsonValue::Array points;
    for (std::size_t i = from; i < to; ++i) {
        const SurveyedPoint& point = result.points[i];
        points.emplace_back(JsonValue::Object{
            {"name", point.name},
            {"x_m", point.at.x()},
            {"y_m", point.at.y()},
            {"standard_error_x_m", point.error.sigma_x},
            {"standard_error_y_m", point.error.sigma_y},
            {"ellipse_m", JsonValue::Array{point.error.semi_major, point.error.semi_minor}},
            {"ellipse_angle_deg", Angle::radians(point.error.major_angle_rad).deg()}});
    }
    return points;
}

JsonValue chains_json(const RecceResult& result, UnitSystem units) {
    JsonValue::Array chains;
    for (std::size_t i = 0; i < result.chains.size(); ++i) {
        const survey::ChainFit& fit = result.chains[i];
        const plan::Chain& chain = result.survey.chains[i];
        chains.emplace_back(JsonValue::Object{{"from", chain.from},
                                              {"to", chain.to},
                                              {"read_m", fit.read.m()},
                                              {"wall_m", fit.wall.m()},
                                              {"misclosure_m", fit.misclosure.m()},
                                              {"tolerance_m", fit.tolerance.m()},
                                              {"to_the_end", chain.to_the_end},
                                              {"closes", fit.closes},
                                              {"says", survey::chain_text(result, i, units)}});
    }
    return chains;
}

JsonValue ceiling_json(const RecceResult& result, UnitSystem units) {
    if (!result.ceiling) {
        return nullptr;
    }
    const survey::CeilingFit& ceiling = *result.ceiling;
    return JsonValue::Object{
        {"height_m", ceiling.height.m()}, {"standard_error_m", ceiling.sigma_m},
        {"lowest_m", ceiling.lowest.m()}, {"highest_m", ceiling.highest.m()},
        {"differs", ceiling.differs},     {"says", survey::ceiling_text(result, units)}};
}

JsonValue texts_json(const std::vector<std::string>& texts) {
    return JsonValue::Array(texts.begin(), texts.end());
}

JsonValue unplaced_json(const survey::Unsettled& unsettled, const plan::Survey& survey) {
    JsonValue::Array wanted;
    for (const auto& [from, to] : unsettled.wanted) {
        wanted.emplace_back(JsonValue::Array{from, to});
    }
    return JsonValue::Object{{"says", survey::unsettled_text(unsettled, survey)},
                             {"loose", texts_json(unsettled.loose)},
                             {"wanted", std::move(wanted)},
                             {"needed", unsettled.needed},
                             {"two_shapes", unsettled.two_shapes}};
}

} // namespace

std::string survey_text(const RecceResult& result, UnitSystem units) {
    std::string text = lines_text("Wrong: measure again", wrong_lines(result, units));
    text += lines_text("Not placed", unplaced_lines(result));
    text += survey::agreement_text(result) + "\n";
    text += points_text(result, units);
    text += readings_text(result, units);
    text += lines_text("Chains", chain_lines(result, units));
    text += lines_text("Believed, not read", survey::assumptions(result, units));
    const std::string ceiling = survey::ceiling_text(result, units);
    text += ceiling.empty() ? "No height of the ceiling was read.\n" : ceiling + "\n";
    return text + lines_text("Notes", note_lines(result.survey));
}

JsonValue::Object survey_json(const RecceResult& result, UnitSystem units) {
    JsonValue::Array readings;
    for (const SurveyedReading& reading : result.readings) {
        readings.push_back(reading_json(result, reading, units));
    }
    JsonValue::Array unplaced;
    for (const survey::Unsettled& unsettled : result.unplaced) {
        unplaced.push_back(unplaced_json(unsettled, result.survey));
    }
    return {{"determined", true},
            {"wrong", texts_json(wrong_lines(result, units))},
            {"agreement", JsonValue::Object{{"test", std::string{test_word(result.test)}},
                                            {"degrees_of_freedom", result.degrees_of_freedom},
                                            {"weighted_sum", result.weighted_sum},
                                            {"unit_weight_error", result.unit_weight_error},
                                            {"unexplained", result.unexplained},
                                            {"says", survey::agreement_text(result)}}},
            {"corners", points_json(result, 0, result.corner_count())},
            {"points", points_json(result, result.corner_count(), result.points.size())},
            {"readings", std::move(readings)},
            {"chains", chains_json(result, units)},
            {"believed", texts_json(survey::assumptions(result, units))},
            {"unplaced", std::move(unplaced)},
            {"ceiling", ceiling_json(result, units)},
            {"notes", texts_json(note_lines(result.survey))}};
}

std::string unsettled_text(const survey::Unsettled& unsettled, const plan::Survey& survey) {
    return fmt::format("The readings leave the shape of the room open.\n{}\n",
                       on_one_line(survey::unsettled_text(unsettled, survey)));
}

JsonValue::Object unsettled_json(const survey::Unsettled& unsettled, const plan::Survey& survey) {
    return {{"determined", false}, {"unsettled", unplaced_json(unsettled, survey)}};
}

} // namespace throwline::command
