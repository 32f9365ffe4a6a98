#include "base/text_file.h"
#include "command/catalogue_input.h"
#include "command/commands.h"
#include "command/plan_input.h"
#include "command/survey_output.h"
#include "survey/recce_text.h"
#include "survey/recce_working.h"
#include "survey/to_plan.h"

#include <filesystem>
#include <fmt/format.h>

namespace throwline::command {

namespace {

constexpr Option kInto{"--into", "", "PLAN", "put the room into this plan; the rest of it stays"};
constexpr Option kOutput{"--output", "-o", "PLAN", "write the plan to this file"};
constexpr Option kTitle{"--title", "", "TEXT", "of a new plan; the file's name unless said"};

struct SurveyInput {
    catalogue::Catalogue catalogue;
    plan::Survey survey;
    UnitSystem units = UnitSystem::metric;
    /// The plan that the room goes into.
    std::optional<plan::Plan> into;
};

/// A recce never begins with a brace.
bool is_json(std::string_view text) {
    const std::size_t first = text.find_first_not_of("\xEF\xBB\xBF \t\r\n");
    return first != std::string_view::npos && text[first] == '{';
}

Checked<plan::SurveyFile> survey_of(const std::string& text, const catalogue::Catalogue& catalogue,
                                    const std::string& label) {
    if (is_json(text)) {
        return plan::read_survey(text, catalogue, label);
    }
    auto recce = survey::read_recce(text, label);
    if (!recce) {
        return tl::unexpected{recce.error()};
    }
    return plan::SurveyFile{std::move(recce->survey), recce->units};
}

bool is_same_file(const std::string& a, const std::string& b) {
    std::error_code none;
    return a == b || std::filesystem::equivalent(a, b, none);
}

Errors usage_errors(const Arguments& arguments) {
    OptionReader options{arguments};
    options.system();
    const std::string& file = arguments.operands().front();
    const auto output = arguments.value(kOutput.name);
    const auto into = arguments.value(kInto.name);
    if (output && is_same_file(*output, file) && !(into && is_same_file(*into, file))) {
        options.fail(fmt::format("-o {} would write over the readings themselves", *output));
    }
    if (into && arguments.has(kTitle.name)) {
        options.fail("--title is for a new plan; --into keeps the title that is there");
    }
    return options.errors();
}

Checked<SurveyInput> survey_input(const Arguments& arguments, std::istream& in) {
    auto catalogue = catalogue_for(arguments);
    if (!catalogue) {
        return tl::unexpected{catalogue.error()};
    }
    const std::string& name = arguments.operands().front();
    const Result<std::string> text = text_input(name, in, plan::kLargestPlanBytes);
    if (!text) {
        return tl::unexpected{Errors{text.error()}};
    }
    auto read = survey_of(*text, *catalogue, file_label(name));
    if (!read) {
        return tl::unexpected{read.error()};
    }
    SurveyInput input{std::move(*catalogue), std::move(read->survey), read->units, std::nullopt};
    if (const auto into = arguments.value(kInto.name)) {
        auto plan = plan::read_plan_file(*into, input.catalogue);
        if (!plan) {
            return tl::unexpected{plan.error()};
        }
        input.into = std::move(*plan);
        input.units = input.into->units;
    }
    if (arguments.has(kSystem.name)) {
        input.units = OptionReader{arguments}.system();
    }
    return input;
}

std::string title_of(const Arguments& arguments) {
    if (const auto title = arguments.value(kTitle.name)) {
        return *title;
    }
    const std::string& file = arguments.operands().front();
    // "kitchen" of "kitchen.recce.txt".
    const std::string name = std::filesystem::path{file}.filename().string();
    const std::string stem = name.substr(0, name.find('.'));
    return file == "-" || stem.empty() ? "Room" : stem;
}

/// The plan with the room in it, once it is sure that it reads back.
Checked<survey::RecceInPlan> plan_with(const survey::RecceResult& result, SurveyInput& input,
                                       const std::string& title) {
    auto made = input.into ? survey::put_into(std::move(*input.into), result)
                           : survey::plan_of(result, title, input.units);
    if (made) {
        const auto again = plan::read_plan(plan::written(made->plan), input.catalogue, "the plan");
        if (!again) {
            return tl::unexpected{again.error()};
        }
    }
    return made;
}

void say_nothing_written(Answer& answer, const std::string& file, const Errors& why) {
    answer.code = ExitCode::findings;
    answer.text += fmt::format("Nothing was written to {}:\n", file);
    JsonValue::Array reasons;
    for (const Error& error : why) {
        answer.text += fmt::format("  {}\n", text_of(error));
        reasons.emplace_back(text_of(error));
    }
    answer.json.emplace_back("written", nullptr);
    answer.json.emplace_back("not_written_because", std::move(reasons));
}

/// Writes the plan where one is wanted; an error only when the file itself cannot be written.
Result<void> write_plan(const Arguments& arguments, const survey::RecceResult& result,
                        SurveyInput& input, Answer& answer) {
    const auto into = arguments.value(kInto.name);
    const auto output = arguments.value(kOutput.name);
    if (!into && !output) {
        return {};
    }
    const std::string file = output ? *output : *into;
    const auto made = plan_with(result, input, title_of(arguments));
    if (!made) {
        say_nothing_written(answer, file, made.error());
        return {};
    }
    if (const auto written = write_file_whole(file, plan::written(made->plan)); !written) {
        return tl::unexpected{written.error()};
    }
    JsonValue::Array remarks;
    for (const std::string& remark : made->remarks) {
        answer.text += fmt::format("{}\n", remark);
        remarks.emplace_back(remark);
    }
    answer.text += fmt::format("{}: the room is written\n", file);
    answer.json.emplace_back("written", file);
    answer.json.emplace_back("remarks", std::move(remarks));
    return {};
}

Answer unsettled_answer(const Arguments& arguments, const survey::Unsettled& unsettled,
                        const plan::Survey& survey) {
    Answer answer;
    answer.code = ExitCode::findings;
    answer.text = unsettled_text(unsettled, survey);
    answer.json = unsettled_json(unsettled, survey);
    const auto output = arguments.value(kOutput.name);
    if (const auto file = output ? output : arguments.value(kInto.name)) {
        say_nothing_written(answer, *file, {{"the room has no settled shape yet", {}}});
    }
    return answer;
}

Checked<Answer> answer(const Arguments& arguments, std::istream& in) {
    if (Errors errors = usage_errors(arguments); !errors.empty()) {
        return tl::unexpected{std::move(errors)};
    }
    auto input = survey_input(arguments, in);
    if (!input) {
        return tl::unexpected{input.error()};
    }
    const auto result = survey::surveyed(input->survey);
    if (!result) {
        return unsettled_answer(arguments, result.error(), input->survey);
    }
    Answer answer;
    answer.code = result->needs_another_look() ? ExitCode::findings : ExitCode::clean;
    answer.text = survey_text(*result, input->units);
    answer.json = survey_json(*result, input->units);
    if (arguments.has(kWorking.name)) {
        answer.workings = survey::recce_workings(*result);
    }
    if (const auto written = write_plan(arguments, *result, *input, answer); !written) {
        return tl::unexpected{Errors{written.error()}};
    }
    return answer;
}

} // namespace

Command survey_command() {
    return {.name = "survey",
            .summary = "the room that tape readings give, and which reading is wrong",
            .operands = "FILE",
            .operands_min = 1,
            .operands_max = 1,
            .options = {kOutput, kInto, kTitle, kSystem, kLensdata, kJson, kWorking},
            .example = "throwline survey demo/harbour_kitchen.recce.txt -o kitchen.json",
            .answer = answer};
}

} // namespace throwline::command
