#include "base/text_file.h"
#include "command/arguments.h"
#include "command/catalogue_input.h"
#include "command/commands.h"
#include "command/plan_input.h"
#include "lists/list_files.h"
#include "lists/lists.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>

namespace throwline::command {

namespace {

constexpr Option kCsv{"--csv", "", "", "comma-separated values instead of text"};
constexpr Option kOutput{"--output", "-o", "PLACE", "a file, or a folder for a file a list"};
/// Stands for every list.
constexpr std::string_view kAll = "all";

struct ListQuestion {
    /// Each once, in the order of the table.
    std::vector<const lists::ListKind*> kinds;
    lists::ListForm form = lists::ListForm::text;
    std::optional<std::string> place;
};

std::vector<std::string> known_names() {
    std::vector<std::string> names;
    for (const lists::ListKind& kind : lists::all_lists()) {
        names.emplace_back(kind.name);
    }
    names.emplace_back(kAll);
    return names;
}

void read_names(std::span<const std::string> typed, ListQuestion& question, Errors& errors) {
    const std::vector<std::string> known = known_names();
    for (const std::string& name : typed) {
        if (std::find(known.begin(), known.end(), name) == known.end()) {
            errors.push_back({unknown_name("list", name, known), {}});
        }
    }
    const bool all = std::find(typed.begin(), typed.end(), kAll) != typed.end()
                     || (typed.empty() && question.place);
    for (const lists::ListKind& kind : lists::all_lists()) {
        if (all || std::find(typed.begin(), typed.end(), kind.name) != typed.end()) {
            question.kinds.push_back(&kind);
        }
    }
}

/// What was asked for by option, else by the ending of the file's name.
lists::ListForm form_of(const Arguments& arguments, const std::optional<std::string>& place) {
    const std::string ending = place ? std::filesystem::path{*place}.extension().string() : "";
    if (arguments.has(kJson.name) || (ending == ".json" && !arguments.has(kCsv.name))) {
        return lists::ListForm::json;
    }
    return arguments.has(kCsv.name) || ending == ".csv" ? lists::ListForm::csv
                                                        : lists::ListForm::text;
}

Checked<ListQuestion> question_from(const Arguments& arguments) {
    Errors errors;
    ListQuestion question;
    question.place = arguments.value(kOutput.name);
    question.form = form_of(arguments, question.place);
    read_names(std::span{arguments.operands()}.subspan(1), question, errors);
    if (arguments.has(kCsv.name) && arguments.has(kJson.name)) {
        errors.push_back({"--csv and --json cannot both be had", {}});
    }
    const bool in_one = !question.place || !lists::names_folder(*question.place);
    if (question.place && question.place->empty()) {
        errors.push_back(
            {"--output is empty; it names a file, or a folder with a / behind it", {}});
    } else if (errors.empty() && question.form == lists::ListForm::csv && in_one
               && question.kinds.size() != 1) {
        errors.push_back({"CSV holds one list a file: name one, or a folder with -o FOLDER/", {}});
    }
    if (!errors.empty()) {
        return tl::unexpected{std::move(errors)};
    }
    return question;
}

Answer names_of_lists() {
    Answer answer;
    JsonValue::Array kinds;
    for (const lists::ListKind& kind : lists::all_lists()) {
        answer.text += fmt::format("{:<17}  {}\n", kind.name, kind.summary);
        kinds.emplace_back(JsonValue::Object{{"name", std::string{kind.name}},
                                             {"title", std::string{kind.title}},
                                             {"summary", std::string{kind.summary}}});
    }
    answer.text += fmt::format("{:<17}  {}\n", kAll, "every one of them");
    answer.json = {{"lists", std::move(kinds)}};
    return answer;
}

Answer written(const std::vector<std::string>& files) {
    Answer answer;
    JsonValue::Array names;
    for (const std::string& file : files) {
        answer.text += file + "\n";
        names.emplace_back(file);
    }
    answer.json = {{"files", std::move(names)}};
    return answer;
}

Checked<Answer> answer_for(const ListQuestion& question, std::span<const lists::Table> tables) {
    if (!question.place) {
        Answer answer;
        answer.text = lists::lists_in_one(tables, question.form);
        if (question.form == lists::ListForm::json) {
            answer.written_json = answer.text;
        }
        return answer;
    }
    if (lists::names_folder(*question.place)) {
        const auto files = lists::write_each(tables, question.form, *question.place);
        if (!files) {
            return tl::unexpected{Errors{files.error()}};
        }
        return written(*files);
    }
    const auto done = write_file_whole(*question.place, lists::lists_in_one(tables, question.form));
    if (!done) {
        return tl::unexpected{Errors{done.error()}};
    }
    return written({*question.place});
}

Checked<Answer> answer(const Arguments& arguments, std::istream& in) {
    const auto question = question_from(arguments);
    if (!question) {
        return tl::unexpected{question.error()};
    }
    const auto input = plan_input(arguments, in);
    if (!input) {
        return tl::unexpected{input.error()};
    }
    if (question->kinds.empty()) {
        return names_of_lists();
    }
    // Nobody asks this one to stop, so there is always an analysis.
    const auto analysis = checks::analyse(input->plan, input->catalogue);
    const lists::ListInput list_input{analysis.value(), input->catalogue};
    std::vector<lists::Table> tables;
    for (const lists::ListKind* kind : question->kinds) {
        tables.push_back(kind->make(list_input));
    }
    return answer_for(*question, tables);
}

} // namespace

Command list_command() {
    return {.name = "list",
            .summary = "the lists a shoot runs from: shots, cameras, lamps, power, kit and more",
            .operands = "PLAN [NAME ...]",
            .operands_min = 1,
            // Every list and "all"; naming one twice is no use.
            .operands_max = static_cast<int>(lists::all_lists().size()) + 2,
            .options = {kOutput, kCsv, kLensdata, kJson},
            .example = "throwline list demo/cookery.json lamps-by-circuit",
            .answer = answer};
}

} // namespace throwline::command
