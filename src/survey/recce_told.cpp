#include "survey/recce_told.h"

#include "base/words.h"
#include "survey/recce_sentences.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::survey {

namespace {

/// In the order of their marks.
void tell_doubtful(RecceTold& told) {
    std::vector<const RowVerdict*> doubtful;
    for (const RowVerdict& verdict : told.verdicts) {
        if (verdict.number > 0) {
            doubtful.push_back(&verdict);
        }
    }
    std::sort(doubtful.begin(), doubtful.end(),
              [](const RowVerdict* a, const RowVerdict* b) { return a->number < b->number; });
    for (const RowVerdict* verdict : doubtful) {
        const bool ended = verdict->words.ends_with('.');
        told.wanted.push_back(fmt::format("{}{}", capitalised(verdict->words), ended ? "" : "."));
    }
    told.doubtful = static_cast<int>(doubtful.size());
}

void tell_remarks(RecceTold& told, UnitSystem units) {
    const RecceResult& result = *told.result;
    told.remarks.push_back(agreement_text(result));
    for (std::size_t i = 0; i < result.chains.size(); ++i) {
        if (result.chains[i].closes) {
            told.remarks.push_back(chain_text(result, i, units));
        }
    }
    if (const std::string ceiling = ceiling_text(result, units); !ceiling.empty()) {
        told.remarks.push_back(ceiling);
    } else {
        told.wanted.emplace_back("The height of the ceiling was not read yet.");
    }
    for (std::string& belief : assumptions(result, units)) {
        told.remarks.push_back(std::move(belief));
    }
}

bool is_bare(const plan::Plan& plan) {
    return plan.room.outline.empty() && plan.scenery.empty() && plan.people.empty()
           && plan.cameras.empty() && plan.lamps.empty() && plan.pipes.empty() && !plan.grid
           && plan.booms.empty() && plan.circuits.empty();
}

} // namespace

RecceTold told(std::string_view text) {
    RecceTold told;
    told.rows = recce_rows(text);
    Checked<RecceText> read = read_recce(text);
    if (!read) {
        told.errors = std::move(read.error());
        return told;
    }
    const UnitSystem units = read->units;
    told.read = std::move(*read);
    auto solved = surveyed(told.read->survey);
    if (!solved) {
        told.wanted.push_back(unsettled_text(solved.error(), told.read->survey));
        return told;
    }
    told.result = std::move(*solved);
    told.verdicts = row_verdicts(told.rows, *told.result, units);
    tell_doubtful(told);
    for (const Unsettled& loose : told.result->unplaced) {
        told.wanted.push_back(unsettled_text(loose, told.read->survey));
    }
    tell_remarks(told, units);
    return told;
}

Checked<RecceInPlan> room_in(const plan::Plan& plan, const RecceResult& result, UnitSystem units) {
    return is_bare(plan) ? plan_of(result, plan.title, units) : put_into(plan, result);
}

} // namespace throwline::survey
