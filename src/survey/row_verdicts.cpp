#include "survey/recce_rows.h"
#include "survey/recce_sentences.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::survey {

namespace {

/// Worse comes first.
int rank(Verdict verdict) {
    switch (verdict) {
    case Verdict::wrong:
        return 0;
    case Verdict::worth_a_look:
        return 1;
    case Verdict::not_used:
        return 2;
    case Verdict::hardly_checked:
        return 3;
    case Verdict::fine:
        return 4;
    }
    return 4;
}

std::string words_of(const RecceResult& result, const SurveyedReading& reading, UnitSystem units) {
    if (reading.verdict == Verdict::fine) {
        return {};
    }
    if (reading.verdict == Verdict::wrong && reading.suspect
        && reading.kind != ReadingKind::square_corner) {
        return fmt::format("{} reads {}, others say {}; measure again", label_of(reading),
                           tape_text(Length::metres(reading.read), units),
                           tape_text(Length::metres(reading.suspect->probable), units));
    }
    return fmt::format("{}: {}", label_of(reading), verdict_text(result, reading, units));
}

/// Goes through the rows beside what was read from them.
class Teller {
  public:
    Teller(const RecceResult& result, UnitSystem units) : result_{result}, units_{units} {}

    RowVerdict next(const RecceRow& row) {
        RowVerdict told;
        switch (row.kind) {
        case RowKind::reading:
            tell_reading(told);
            break;
        case RowKind::floor_point:
            while (tape_ < static_cast<int>(result_.survey.readings.size())
                   && result_.survey.readings[static_cast<std::size_t>(tape_)].to == row.from) {
                tell_reading(told);
            }
            break;
        case RowKind::along:
            tell_chain(told);
            break;
        case RowKind::square:
            tell_all(told, ReadingKind::square_corner, -1);
            break;
        case RowKind::height:
            if (result_.ceiling && result_.ceiling->differs) {
                told = {Verdict::worth_a_look, ceiling_text(result_, units_), 0};
            }
            break;
        case RowKind::corners:
        case RowKind::outlet:
        case RowKind::note:
        case RowKind::bearing:
        case RowKind::solid:
        case RowKind::round:
        case RowKind::point:
        case RowKind::units:
        case RowKind::tape:
        case RowKind::squareness:
        case RowKind::remark:
        case RowKind::unclear:
            break;
        }
        return told;
    }

  private:
    void tell_reading(RowVerdict& told) { tell_all(told, ReadingKind::tape, tape_++); }

    void tell_chain(RowVerdict& told) {
        const int chain = chain_++;
        tell_all(told, ReadingKind::chain, chain);
        const auto index = static_cast<std::size_t>(chain);
        if (index < result_.chains.size() && !result_.chains[index].closes) {
            told = {Verdict::wrong, chain_text(result_, index, units_), 0};
        }
    }

    /// The worst of all readings of a kind with that source; -1 for any.
    void tell_all(RowVerdict& told, ReadingKind kind, int source) const {
        for (const SurveyedReading& reading : result_.readings) {
            if (reading.kind == kind && (source < 0 || reading.source == source)
                && rank(reading.verdict) < rank(told.verdict)) {
                told = {reading.verdict, words_of(result_, reading, units_), 0};
            }
        }
    }

    const RecceResult& result_;
    UnitSystem units_;
    int tape_ = 0;
    int chain_ = 0;
};

} // namespace

std::vector<RowVerdict> row_verdicts(const std::vector<RecceRow>& rows, const RecceResult& result,
                                     UnitSystem units) {
    Teller teller{result, units};
    std::vector<RowVerdict> verdicts;
    for (const RecceRow& row : rows) {
        verdicts.push_back(teller.next(row));
    }
    int number = 0;
    for (const Verdict doubtful : {Verdict::wrong, Verdict::worth_a_look}) {
        for (RowVerdict& verdict : verdicts) {
            if (verdict.verdict == doubtful) {
                verdict.number = ++number;
            }
        }
    }
    return verdicts;
}

} // namespace throwline::survey
