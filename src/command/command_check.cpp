#include "checks/check.h"
#include "command/arguments.h"
#include "command/cautions.h"
#include "command/commands.h"
#include "command/findings_output.h"
#include "command/plan_input.h"

#include <algorithm>

namespace throwline::command {

namespace {

constexpr Option kList{"--list", "", "", "say what is checked, and by which rule; needs no plan"};

Answer list_of_checks() {
    Answer answer;
    JsonValue::Array checks;
    for (const checks::Check& check : checks::all_checks()) {
        answer.text += std::string{check.id} + ": " + std::string{check.rule} + "\n";
        checks.emplace_back(JsonValue::Object{{"check", std::string{check.id}},
                                              {"title", std::string{check.title}},
                                              {"rule", std::string{check.rule}},
                                              {"source", std::string{check.source}}});
    }
    answer.json = {{"checks", std::move(checks)}};
    return answer;
}

bool stops_the_shoot(const checks::Finding& finding) {
    return finding.severity == checks::Severity::error && !finding.accepted;
}

Checked<Answer> answer(const Arguments& arguments, std::istream& in) {
    if (arguments.has(kList.name)) {
        return list_of_checks();
    }
    if (arguments.operands().empty()) {
        return tl::unexpected{Errors{{"check needs PLAN", {}}}};
    }
    const auto input = plan_input(arguments, in);
    if (!input) {
        return tl::unexpected{input.error()};
    }
    // Nobody asks this one to stop, so there is always an analysis.
    const auto analysis = checks::analyse(input->plan, input->catalogue);
    const std::vector<checks::Finding>& findings = analysis.value().findings;
    Answer answer;
    answer.text = findings_text(findings, arguments.has(kWorking.name));
    answer.json = findings_json(findings);
    if (std::any_of(findings.begin(), findings.end(), stops_the_shoot)) {
        answer.code = ExitCode::findings;
    }
    return answer;
}

} // namespace

Command check_command() {
    return {.name = "check",
            .summary = "what is wrong with a plan, worst first",
            .operands = "PLAN",
            .operands_min = 0,
            .operands_max = 1,
            .options = {kList, kLensdata, kJson, kWorking},
            .example = "throwline check demo/cookery.json --working",
            .answer = answer};
}

} // namespace throwline::command
