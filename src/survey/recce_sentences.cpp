#include "survey/recce_sentences.h"

#include "base/length_text.h"
#include "base/words.h"
#include "plan/names.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace throwline::survey {

namespace {

constexpr std::size_t kMostChoices = 4;

std::string off_square_text(const SurveyedReading& reading) {
    const Angle came_out = Angle::radians(std::abs(reading.outcome.adjusted));
    const Angle off = Angle::radians(std::abs(came_out.rad() - std::numbers::pi / 2.0));
    return fmt::format("came out {}, {} off square", degrees_text(came_out, 2),
                       degrees_text(off, 2));
}

/// "A-C or B-D"; of many the first few "and others".
std::string some_of(const std::vector<std::string>& names, std::string_view joint) {
    const std::size_t count = std::min(names.size(), kMostChoices);
    std::string text;
    for (std::size_t i = 0; i < count; ++i) {
        const bool last = i + 1 == names.size();
        text += fmt::format("{}{}",
                            i == 0 ? ""
                            : last ? fmt::format(" {} ", joint)
                                   : ", ",
                            names[i]);
    }
    return names.size() <= kMostChoices ? text : text + " and others";
}

std::string others_text(const RecceResult& result, const Suspect& suspect) {
    std::vector<std::string> names;
    for (const int other : suspect.or_else) {
        names.push_back(label_of(result.readings[static_cast<std::size_t>(other)]));
    }
    return some_of(names, "or");
}

std::string wrong_text(const RecceResult& result, const SurveyedReading& reading,
                       UnitSystem units) {
    const Suspect& suspect = *reading.suspect;
    if (reading.kind == ReadingKind::square_corner) {
        return fmt::format("not square: {}", off_square_text(reading));
    }
    const std::string probable = tape_text(Length::metres(suspect.probable), units);
    if (suspect.or_else.empty()) {
        return fmt::format("wrong: probably should be {}", probable);
    }
    return fmt::format("wrong, this one or {} (they cannot be told apart): if this one, it should "
                       "be {}",
                       others_text(result, suspect), probable);
}

/// The wrong reading in whose stead this one may be wrong; null when there is none.
const SurveyedReading* stands_in_for(const RecceResult& result, const SurveyedReading& reading) {
    const auto number = static_cast<int>(&reading - result.readings.data());
    for (const int wrong : result.suspects) {
        const SurveyedReading& other = result.readings[static_cast<std::size_t>(wrong)];
        const std::vector<int>& or_else = other.suspect->or_else;
        if (std::find(or_else.begin(), or_else.end(), number) != or_else.end()) {
            return &other;
        }
    }
    return nullptr;
}

std::string look_text(const RecceResult& result, const SurveyedReading& reading) {
    if (const SurveyedReading* wrong = stands_in_for(result, reading)) {
        return fmt::format("worth a look: may be the wrong one instead of {}", label_of(*wrong));
    }
    return "worth a look";
}

std::string hardly_text(const SurveyedReading& reading, UnitSystem units) {
    if (!reading.outcome.detectable || reading.kind == ReadingKind::square_corner) {
        return "not really checked";
    }
    return fmt::format("not really checked: an error below {} would not show",
                       difference_text(Length::metres(*reading.outcome.detectable), units));
}

bool is_corner(const plan::Survey& survey, const std::string& name) {
    return std::find(survey.corners.begin(), survey.corners.end(), name) != survey.corners.end();
}

/// "corner D", "corners C and D", "corner D and points p and q".
std::string points_text(const std::vector<std::string>& names, const plan::Survey& survey) {
    std::vector<std::string> corners;
    std::vector<std::string> points;
    for (const std::string& name : names) {
        (is_corner(survey, name) ? corners : points).push_back(name);
    }
    const auto said = [](std::string_view noun, const std::vector<std::string>& list) {
        return list.empty() ? std::string{}
                            : fmt::format("{}{} {}", noun, list.size() > 1 ? "s" : "",
                                          throwline::listed(list));
    };
    return fmt::format("{}{}{}", said("corner", corners),
                       corners.empty() || points.empty() ? "" : " and ", said("point", points));
}

std::vector<std::string> pairs_text(const Unsettled& unsettled) {
    std::vector<std::string> pairs;
    for (const auto& [from, to] : unsettled.wanted) {
        pairs.push_back(fmt::format("{}-{}", from, to));
    }
    return pairs;
}

std::string cure_text(const Unsettled& unsettled) {
    const std::vector<std::string> pairs = pairs_text(unsettled);
    if (unsettled.needed <= 1) {
        return fmt::format("one more distance, {}, {}", some_of(pairs, "or"),
                           unsettled.two_shapes ? "tells which" : "would fix it");
    }
    return fmt::format("{} more distances are needed, such as {}", unsettled.needed,
                       some_of(pairs, "and"));
}

} // namespace

std::string tape_text(Length length, UnitSystem units) {
    switch (units) {
    case UnitSystem::metric:
        return metres_text(length, 3);
    case UnitSystem::imperial:
        return feet_inches(length, {.denominator = 8});
    }
    return {};
}

std::string difference_text(Length difference, UnitSystem units) {
    switch (units) {
    case UnitSystem::metric:
        return fixed(std::abs(difference.mm()), std::abs(difference.mm()) < 10.0 ? 1 : 0) + " mm";
    case UnitSystem::imperial:
        return fixed(std::abs(difference.in()), 2) + " in";
    }
    return {};
}

std::string label_of(const SurveyedReading& reading) {
    switch (reading.kind) {
    case ReadingKind::tape:
        return fmt::format("{}-{}", reading.from, reading.to);
    case ReadingKind::chain:
        return fmt::format("chain {}-{}", reading.from, reading.to);
    case ReadingKind::square_corner:
        return fmt::format("corner {}", reading.from);
    }
    return {};
}

std::string verdict_text(const RecceResult& result, const SurveyedReading& reading,
                         UnitSystem units) {
    switch (reading.verdict) {
    case Verdict::fine:
        return "fine";
    case Verdict::worth_a_look:
        return look_text(result, reading);
    case Verdict::wrong:
        return wrong_text(result, reading, units);
    case Verdict::hardly_checked:
        return hardly_text(reading, units);
    case Verdict::not_used:
        return "not used: it leads to a point that could not be placed";
    }
    return {};
}

std::string agreement_text(const RecceResult& result) {
    const std::string less =
        result.suspects.empty()
            ? std::string{"The readings"}
            : fmt::format("Without {} the readings",
                          counted(static_cast<int>(result.suspects.size()), "wrong reading"));
    const std::string_view unexplained =
        result.unexplained ? " No reading by itself explains it: read the walls and diagonals "
                             "again."
                           : "";
    switch (result.test) {
    case GlobalTest::nothing_checked:
        return "Nothing is checked: there are just enough readings for one shape, so a wrong one "
               "would not show. Another diagonal, or a floor point read from every corner, would "
               "check them.";
    case GlobalTest::passes:
        return fmt::format("{} agree as well as the tape can ({} to spare).", less,
                           result.degrees_of_freedom);
    case GlobalTest::doubtful:
        return fmt::format("{} agree a little less than the tape should ({} to spare).{}", less,
                           result.degrees_of_freedom, unexplained);
    case GlobalTest::fails:
        return fmt::format("{} disagree by more than the tape explains ({} to spare).{}", less,
                           result.degrees_of_freedom, unexplained);
    }
    return {};
}

std::string chain_text(const RecceResult& result, std::size_t chain, UnitSystem units) {
    const plan::Chain& read = result.survey.chains[chain];
    const ChainFit& fit = result.chains[chain];
    const std::string name = fmt::format("Chain {}-{}", read.from, read.to);
    const std::string off = difference_text(fit.misclosure, units);
    const bool past = fit.misclosure < Length{};
    if (!fit.closes) {
        return fmt::format("{}: {} {} the wall, more than the {} that the tape explains; a "
                           "stretch is wrong or missing, and none is moved.",
                           name, off, past ? "longer than" : "short of",
                           difference_text(fit.tolerance, units));
    }
    if (!read.to_the_end) {
        return fmt::format("{}: stops {} before the end of the wall.", name,
                           past ? "0" : tape_text(fit.misclosure, units));
    }
    return fmt::format("{}: {} {} the wall, within the tape's {}; spread over its stretches.", name,
                       off, past ? "longer than" : "short of",
                       difference_text(fit.tolerance, units));
}

std::string unsettled_text(const Unsettled& unsettled, const plan::Survey& survey) {
    const bool room = std::any_of(unsettled.loose.begin(), unsettled.loose.end(),
                                  [&](const std::string& name) { return is_corner(survey, name); });
    if (unsettled.loose.empty() || (unsettled.wanted.empty() && room)) {
        return "No shape fits these readings: read the walls and two diagonals again.";
    }
    const std::string points = points_text(unsettled.loose, survey);
    if (unsettled.wanted.empty()) {
        return fmt::format("{} cannot be placed: the distances to it contradict each other; read "
                           "them again.",
                           capitalised(points));
    }
    if (unsettled.two_shapes) {
        return fmt::format("Two shapes fit these readings, which differ in {}: {}.", points,
                           cure_text(unsettled));
    }
    return fmt::format("{} can still move: {}.", capitalised(points), cure_text(unsettled));
}

std::vector<std::string> assumptions(const RecceResult& result, UnitSystem units) {
    std::vector<std::string> sentences;
    for (const SurveyedReading& reading : result.readings) {
        if (reading.kind == ReadingKind::square_corner) {
            sentences.push_back(fmt::format("Corner {} was believed square to {}: {}.",
                                            reading.from, degrees_text(result.survey.squareness, 2),
                                            off_square_text(reading)));
        }
    }
    sentences.push_back(
        fmt::format("Each reading is taken to be good to {} and {} per metre (one standard error).",
                    difference_text(result.survey.precision, UnitSystem::metric),
                    difference_text(Length::millimetres(result.survey.precision_per_metre_mm),
                                    UnitSystem::metric)));
    if (result.ceiling && result.ceiling->differs) {
        sentences.push_back(fmt::format("The ceiling is taken as level at {}.",
                                        tape_text(result.ceiling->height, units)));
    }
    return sentences;
}

std::string ceiling_text(const RecceResult& result, UnitSystem units) {
    if (!result.ceiling) {
        return {};
    }
    const CeilingFit& ceiling = *result.ceiling;
    const std::string mean = fmt::format("Ceiling {}", tape_text(ceiling.height, units));
    if (!ceiling.differs) {
        return mean + ".";
    }
    return fmt::format("{} as the mean of heights from {} to {}, more apart than the tape "
                       "explains: it slopes, or one is wrong.",
                       mean, tape_text(ceiling.lowest, units), tape_text(ceiling.highest, units));
}

std::string note_text(const plan::SiteNote& note) {
    return note.kind == plan::SiteNoteKind::other
               ? note.text
               : fmt::format("{}: {}", plan::name_of(note.kind), note.text);
}

} // namespace throwline::survey
