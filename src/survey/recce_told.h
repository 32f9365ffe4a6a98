#pragma once

#include "survey/recce_rows.h"
#include "survey/recce_text.h"
#include "survey/to_plan.h"

/// All that can be said of a recce while it is being typed.
namespace throwline::survey {

struct RecceTold {
    std::vector<RecceRow> rows;
    /// What cannot be read, in the order of the text; then there is nothing further.
    Errors errors;
    std::optional<RecceText> read;
    /// Nothing while the readings settle no shape.
    std::optional<RecceResult> result;
    /// One a row when there is a result; else empty.
    std::vector<RowVerdict> verdicts;
    /// What is to be measured, or measured again, a sentence each, most pressing first.
    std::vector<std::string> wanted;
    /// How many of those, the first ones, are about rows with a mark: the n-th about number n.
    int doubtful = 0;
    /// How well the readings agree, how the chains close, the ceiling, what was believed.
    std::vector<std::string> remarks;
};
RecceTold told(std::string_view text);

/// The room as read in a plan: by itself where nothing stands in the plan yet, else put into it.
/// Errors: as of plan_of() and put_into().
Checked<RecceInPlan> room_in(const plan::Plan& plan, const RecceResult& result, UnitSystem units);

} // namespace throwline::survey
