#include "command/arguments.h"
#include "command/catalogue_input.h"
#include "command/commands.h"
#include "sheet/paper_size.h"
#include "sheet/scale_choice.h"

#include <fmt/format.h>

namespace throwline::command {

namespace {

/// Copies the question's paper from the catalogue. Unless said: A3, or tabloid for imperial scales.
void read_paper(const Arguments& arguments, const catalogue::Catalogue& catalogue,
                OptionReader& options, sheet::ScaleQuestion& question) {
    const std::string usual = question.system == UnitSystem::metric ? "A3" : "tabloid";
    const std::string name = arguments.value("--paper").value_or(usual);
    const auto paper = sheet::paper_named(name, catalogue);
    if (!paper) {
        options.fail(fmt::format("--paper: {}", paper.error().message));
        return;
    }
    question.paper = *paper;
}

sheet::ScaleQuestion question_from(const Arguments& arguments,
                                   const catalogue::Catalogue& catalogue, OptionReader& options) {
    sheet::ScaleQuestion question;
    question.system = options.system();
    question.width = options.positive_length("--width");
    question.depth = options.positive_length("--depth");
    read_paper(arguments, catalogue, options, question);
    question.margin = options.optional_length("--margin").value_or(question.margin);
    question.strip = options.optional_length("--strip").value_or(Length{});
    question.with_extras = arguments.has("--extras");
    for (const auto& [option, free] :
         {std::pair{"--margin", question.margin}, std::pair{"--strip", question.strip}}) {
        if (free < Length{}) {
            options.fail(fmt::format("{} must be 0 or more", option));
        }
    }
    return question;
}

JsonValue json_of(const sheet::ScaleAlternative& alternative) {
    return JsonValue::Object{
        {"ratio", alternative.scale.ratio},
        {"name", alternative.scale.name},
        {"orientation", std::string{sheet::name_of(alternative.orientation)}},
        {"paper", alternative.paper.empty() ? JsonValue{} : JsonValue{alternative.paper}}};
}

std::vector<sheet::ScaleAlternative> alternatives(const sheet::ScaleChoice& choice) {
    std::vector<sheet::ScaleAlternative> all = choice.larger;
    if (choice.smaller) {
        all.push_back(*choice.smaller);
    }
    return all;
}

JsonValue::Object json_of(const sheet::ScaleChoice& choice) {
    JsonValue::Array others;
    for (const sheet::ScaleAlternative& alternative : alternatives(choice)) {
        others.push_back(json_of(alternative));
    }
    return {{"ratio", choice.scale.ratio},
            {"name", choice.scale.name},
            {"orientation", std::string{sheet::name_of(choice.orientation)}},
            {"drawn_width_mm", choice.drawn_width_mm},
            {"drawn_height_mm", choice.drawn_height_mm},
            {"needed_ratio", choice.needed_ratio},
            {"alternatives", std::move(others)}};
}

std::string text_of(const sheet::ScaleQuestion& question, const sheet::ScaleChoice& choice) {
    std::string text =
        fmt::format("{} on {} {}: drawn {} by {} mm\n", choice.scale.name, question.paper.name,
                    sheet::name_of(choice.orientation), fixed(choice.drawn_width_mm, 1),
                    fixed(choice.drawn_height_mm, 1));
    for (const sheet::ScaleAlternative& other : choice.larger) {
        text += fmt::format("larger: {} {}\n", other.scale.name,
                            other.paper.empty() ? "fits no paper of this family"
                                                : fmt::format("needs {} {}", other.paper,
                                                              sheet::name_of(other.orientation)));
    }
    if (choice.smaller) {
        text += fmt::format("smaller: {}\n", choice.smaller->scale.name);
    }
    return text;
}

std::string size_text(Length width, Length height) {
    return fmt::format("{} by {} mm", fixed(width.mm(), 1), fixed(height.mm(), 1));
}

Working working_of(const sheet::ScaleQuestion& question, const sheet::ScaleChoice& choice) {
    return {"needed ratio = larger of width / usable width and depth / usable height; the smallest "
            "standard ratio that is not below it",
            {{"", "real size", size_text(question.width, question.depth)},
             {"", "paper", size_text(question.paper.width, question.paper.height)},
             {"", "margin", fmt::format("{} mm", shortest(question.margin.mm()))},
             {"", "strip at the foot", fmt::format("{} mm", shortest(question.strip.mm()))},
             {"", "usable",
              size_text(Length::millimetres(choice.usable_width_mm),
                        Length::millimetres(choice.usable_height_mm))},
             {"", "needed ratio", fixed(choice.needed_ratio, 3)}},
            choice.scale.name,
            choice.scale.source};
}

Result<sheet::ScaleChoice> chosen(const Arguments& arguments, const sheet::ScaleQuestion& question,
                                  const catalogue::Catalogue& catalogue) {
    const auto wanted = arguments.value("--scale");
    return wanted ? sheet::check_scale(question, *wanted, catalogue)
                  : sheet::choose_scale(question, catalogue);
}

Checked<Answer> answer(const Arguments& arguments, std::istream&) {
    const auto catalogue = catalogue_for(arguments);
    if (!catalogue) {
        return tl::unexpected{catalogue.error()};
    }
    OptionReader options{arguments};
    const sheet::ScaleQuestion question = question_from(arguments, *catalogue, options);
    if (!options.errors().empty()) {
        return tl::unexpected{options.errors()};
    }
    const auto choice = chosen(arguments, question, *catalogue);
    if (!choice) {
        return tl::unexpected{Errors{choice.error()}};
    }
    return Answer{.text = text_of(question, *choice),
                  .json = json_of(*choice),
                  .workings = {working_of(question, *choice)},
                  .code = ExitCode::clean};
}

} // namespace

Command scale_command() {
    return {.name = "scale",
            .summary = "the largest standard scale at which a floor fits a sheet",
            .operands = "",
            .operands_min = 0,
            .operands_max = 0,
            .options = {{"--width", "", "LENGTH", "of what is to be drawn"},
                        {"--depth", "", "LENGTH", "of what is to be drawn"},
                        {"--paper", "", "NAME",
                         "or a size, such as 500x700mm; A3 unless said, tabloid for imperial"},
                        {"--margin", "", "LENGTH", "kept free all round; 10mm unless said"},
                        {"--strip", "", "LENGTH", "kept free along the foot; nothing unless said"},
                        {"--scale", "", "SCALE", "ask whether this one fits, such as 1:50 or 1:37"},
                        {"--extras", "", "", "offer scales outside the standard set, such as 1:25"},
                        kSystem,
                        kLensdata,
                        kJson,
                        kWorking},
            .example = "throwline scale --width 12m --depth 9m --paper a3 --margin 10mm",
            .answer = answer};
}

} // namespace throwline::command
