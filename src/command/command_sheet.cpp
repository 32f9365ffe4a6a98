#include "base/text_file.h"
#include "command/arguments.h"
#include "command/commands.h"
#include "command/plan_input.h"
#include "sheet/floor_plan.h"
#include "ui/paint/paint.h"

#include <array>
#include <filesystem>
#include <fmt/format.h>

namespace throwline::command {

namespace {

enum class Format { pdf, svg, png };

struct FormatName {
    std::string_view extension;
    Format format;
};
constexpr std::array kFormats{FormatName{".pdf", Format::pdf}, FormatName{".svg", Format::svg},
                              FormatName{".png", Format::png}};

constexpr NumberRange kResolutions_dpi{20.0, 1200.0};

struct SheetQuestion {
    std::string file;
    Format format = Format::pdf;
    double dots_per_inch = paint::kUsualDotsPerInch;
    sheet::SheetOptions options;
};

void read_file(OptionReader& options, SheetQuestion& question) {
    question.file = options.text("--output");
    const std::string extension = std::filesystem::path{question.file}.extension().string();
    for (const FormatName& name : kFormats) {
        if (name.extension == extension) {
            question.format = name.format;
            return;
        }
    }
    if (!question.file.empty()) {
        options.fail(fmt::format("--output \"{}\" must end in .pdf, .svg or .png", question.file));
    }
}

void read_orientation(const Arguments& arguments, OptionReader& options,
                      sheet::SheetOptions& sheet) {
    const auto typed = arguments.value("--orientation");
    if (!typed) {
        return;
    }
    for (const auto orientation : {sheet::Orientation::landscape, sheet::Orientation::portrait}) {
        if (*typed == sheet::name_of(orientation)) {
            sheet.orientation = orientation;
            return;
        }
    }
    options.fail(
        fmt::format("--orientation \"{}\" is unknown; it is landscape or portrait", *typed));
}

void read_layers(const Arguments& arguments, OptionReader& options, sheet::SheetOptions& sheet) {
    struct Layer {
        std::string_view name;
        bool* shown;
    };
    const std::array layers{Layer{"ground", &sheet.ground}, Layer{"coverage", &sheet.coverage},
                            Layer{"pools", &sheet.pools}, Layer{"findings", &sheet.findings}};
    for (const std::string& typed : arguments.values("--without")) {
        bool known = false;
        for (const Layer& layer : layers) {
            if (layer.name == typed) {
                *layer.shown = false;
                known = true;
            }
        }
        if (!known) {
            options.fail(fmt::format(
                "--without \"{}\" is unknown; it is ground, coverage, pools or findings", typed));
        }
    }
}

/// Everything that can be read before the plan is.
SheetQuestion question_from(const Arguments& arguments, OptionReader& options) {
    SheetQuestion question;
    read_file(options, question);
    question.dots_per_inch =
        options.optional_number("--dpi", kResolutions_dpi).value_or(question.dots_per_inch);
    sheet::SheetOptions& sheet = question.options;
    read_orientation(arguments, options, sheet);
    read_layers(arguments, options, sheet);
    sheet.scale = arguments.value("--scale").value_or("");
    sheet.extra_scales = arguments.has("--extras");
    sheet.margin = options.optional_length("--margin").value_or(sheet.margin);
    sheet.sheet_name = arguments.value("--name").value_or(sheet.sheet_name);
    sheet.revision = arguments.value("--revision").value_or("");
    for (const std::string& shot : arguments.values("--shot")) {
        sheet.shots.push_back({shot});
    }
    sheet.beat = {arguments.value("--beat").value_or("")};
    if (sheet.margin < Length{}) {
        options.fail("--margin must be 0 or more");
    }
    return question;
}

Result<std::string> rendered(const paint::PaintSession& session, const sheet::Drawing& drawing,
                             const SheetQuestion& question) {
    switch (question.format) {
    case Format::pdf:
        return paint::rendered_pdf(session, drawing);
    case Format::svg:
        return paint::rendered_svg(session, drawing);
    case Format::png:
        return paint::rendered_png(session, drawing, question.dots_per_inch);
    }
    return failure("this kind of file is not known");
}

Answer answer_for(const SheetQuestion& question, const sheet::Drawing& drawing) {
    Answer answer;
    answer.text = fmt::format("{}: {}; print it at 100 %\n", question.file, drawing.subject);
    answer.json = {{"file", question.file},
                   {"title", drawing.title},
                   {"subject", drawing.subject},
                   {"width_mm", drawing.width_mm},
                   {"height_mm", drawing.height_mm}};
    return answer;
}

Checked<Answer> drawn(const PlanInput& input, SheetQuestion question) {
    const bool metric = input.plan->units == UnitSystem::metric;
    if (question.options.paper.empty()) {
        question.options.paper = metric ? "A3" : "tabloid";
    }
    question.options.file_hash = input.mark;
    // Before the analysis starts its threads.
    const paint::PaintSession session;
    // Nobody asks this one to stop, so there is always an analysis.
    const auto analysis = checks::analyse(input.plan, input.catalogue);
    const auto drawing = sheet::floor_plan_sheet(analysis.value(), input.catalogue,
                                                 question.options, session.measure());
    if (!drawing) {
        return tl::unexpected{Errors{drawing.error()}};
    }
    const auto bytes = rendered(session, *drawing, question);
    if (!bytes) {
        return tl::unexpected{Errors{bytes.error()}};
    }
    if (const auto written = write_file_whole(question.file, *bytes); !written) {
        return tl::unexpected{Errors{written.error()}};
    }
    return answer_for(question, *drawing);
}

Checked<Answer> answer(const Arguments& arguments, std::istream& in) {
    OptionReader options{arguments};
    SheetQuestion question = question_from(arguments, options);
    question.options.paper = arguments.value("--paper").value_or("");
    if (!options.errors().empty()) {
        return tl::unexpected{options.errors()};
    }
    const auto input = plan_input(arguments, in);
    if (!input) {
        return tl::unexpected{input.error()};
    }
    return drawn(*input, std::move(question));
}

} // namespace

Command sheet_command() {
    return {
        .name = "sheet",
        .summary = "the floor plan to scale, as PDF, SVG or PNG",
        .operands = "PLAN",
        .operands_min = 1,
        .operands_max = 1,
        .options = {{"--output", "-o", "FILE", "ends in .pdf, .svg or .png"},
                    {"--paper", "", "NAME", "A3 unless said; tabloid for a plan in feet"},
                    {"--orientation", "", "WAY", "landscape or portrait; what fits unless said"},
                    {"--scale", "", "SCALE", "such as 1:50; the largest that fits unless said"},
                    {"--extras", "", "", "allow scales outside the standard set, such as 1:25"},
                    {"--margin", "", "LENGTH", "10mm unless said"},
                    {"--shot", "", "NAME", "only this shot; may be repeated", true},
                    {"--beat", "", "NAME", "only this beat"},
                    {"--without", "", "LAYER",
                     "leave out ground, coverage, pools or findings; may be repeated", true},
                    {"--name", "", "TEXT", "of the sheet, for the title block"},
                    {"--revision", "", "TEXT", "for the title block"},
                    {"--dpi", "", "NUMBER", "of a PNG; 200 unless said"},
                    kLensdata,
                    kJson},
        .example = "throwline sheet demo/cookery.json -o cookery.pdf --paper A3",
        .answer = answer};
}

} // namespace throwline::command
