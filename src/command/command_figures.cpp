#include "checks/check.h"
#include "command/arguments.h"
#include "command/catalogue_input.h"
#include "command/commands.h"
#include "command/figures_output.h"
#include "command/plan_input.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::command {

namespace {

constexpr Option kShot{"--shot", "", "SHOT", "only this shot; may be given again", true};

std::vector<ShotRow> rows_of(const checks::Analysis& analysis,
                             const catalogue::Catalogue& catalogue,
                             const std::vector<std::string>& wanted) {
    const checks::CheckInput input{*analysis.plan, catalogue, analysis.shots, analysis.beats};
    std::vector<ShotRow> rows;
    for (const checks::ShotScene& scene : analysis.shots) {
        const bool asked =
            wanted.empty()
            || std::find(wanted.begin(), wanted.end(), scene.shot->id.name) != wanted.end();
        if (std::optional<checks::ShotFigures> figures =
                asked ? checks::figures_of(scene) : std::nullopt) {
            rows.push_back(
                {std::move(*figures), checks::light_at_marks(input, scene), &scene.stage});
        }
    }
    return rows;
}

Errors unknown_shots(const plan::Plan& plan, const std::vector<std::string>& wanted) {
    std::vector<std::string> known;
    for (const plan::Shot& shot : plan.shots) {
        known.push_back(shot.id.name);
    }
    Errors errors;
    for (const std::string& name : wanted) {
        if (std::find(known.begin(), known.end(), name) == known.end()) {
            errors.push_back({unknown_name("shot", name, known), {}});
        }
    }
    return errors;
}

Checked<Answer> answer(const Arguments& arguments, std::istream& in) {
    const auto input = plan_input(arguments, in);
    if (!input) {
        return tl::unexpected{input.error()};
    }
    const std::vector<std::string> wanted = arguments.values(kShot.name);
    if (Errors errors = unknown_shots(*input->plan, wanted); !errors.empty()) {
        return tl::unexpected{std::move(errors)};
    }
    // Nobody asks this one to stop, so there is always an analysis.
    const auto analysis = checks::analyse(input->plan, input->catalogue);
    const std::vector<ShotRow> rows = rows_of(*analysis, input->catalogue, wanted);
    Answer answer;
    answer.text = figures_text(rows, input->plan->units);
    answer.json = figures_json(rows);
    return answer;
}

} // namespace

Command figures_command() {
    return {.name = "figures",
            .summary = "what each shot takes in, and the light at each mark",
            .operands = "PLAN",
            .operands_min = 1,
            .operands_max = 1,
            .options = {kShot, kLensdata, kJson},
            .example = "throwline figures demo/cookery.json --shot 1B",
            .answer = answer};
}

} // namespace throwline::command
