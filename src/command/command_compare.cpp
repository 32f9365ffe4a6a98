#include "command/arguments.h"
#include "command/catalogue_input.h"
#include "command/commands.h"
#include "command/differences_output.h"
#include "command/plan_input.h"

namespace throwline::command {

namespace {

/// Both plans, or everything that is wrong with either.
struct PlanPair {
    plan::PlanPtr old;
    plan::PlanPtr now;
};

Checked<PlanPair> plans_from(const Arguments& arguments, std::istream& in) {
    const std::vector<std::string>& names = arguments.operands();
    if (names[0] == "-" && names[1] == "-") {
        return tl::unexpected{Errors{{"OLD and NEW cannot both be standard input", {}}}};
    }
    const auto catalogue = catalogue_for(arguments);
    if (!catalogue) {
        return tl::unexpected{catalogue.error()};
    }
    const auto old = named_plan(names[0], *catalogue, in);
    const auto now = named_plan(names[1], *catalogue, in);
    Errors errors;
    for (const auto* read : {&old, &now}) {
        if (!*read) {
            errors.insert(errors.end(), read->error().begin(), read->error().end());
        }
    }
    if (!errors.empty()) {
        return tl::unexpected{errors};
    }
    return PlanPair{old->plan, now->plan};
}

/// That plans differ is no fault, so the code is the same either way.
Checked<Answer> answer(const Arguments& arguments, std::istream& in) {
    const auto plans = plans_from(arguments, in);
    if (!plans) {
        return tl::unexpected{plans.error()};
    }
    const std::vector<plan::Difference> differences = plan::differences(*plans->old, *plans->now);
    Answer answer;
    answer.text = differences_text(differences, arguments.has(kWorking.name));
    answer.json = differences_json(differences);
    return answer;
}

} // namespace

Command compare_command() {
    return {.name = "compare",
            .summary = "what a newer plan changes, in a crew's words; 0 either way",
            .operands = "OLD NEW",
            .operands_min = 2,
            .operands_max = 2,
            .options = {kLensdata, kJson, kWorking},
            .example = "throwline compare demo/cookery.json demo/cookery_set_right.json",
            .answer = answer};
}

} // namespace throwline::command
