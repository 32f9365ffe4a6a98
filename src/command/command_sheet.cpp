#include "base/text_file.h"
#include "command/arguments.h"
#include "command/commands.h"
#include "command/plan_input.h"
#include "command/section_line_input.h"
#include "plan/differences.h"
#include "sheet/sheet_kinds.h"
#include "sheet/tiles.h"
#include "ui/paint/paint.h"
#include "ui/paint/read_picture.h"

#include <array>
#include <filesystem>
#include <fmt/format.h>

namespace throwline::command {

namespace {

constexpr Option kList{"--list", "", "", "say which kinds of sheet there are; needs no plan"};

enum class Format { pdf, svg, png };

struct FormatName {
    std::string_view extension;
    Format format;
};
constexpr std::array kFormats{FormatName{".pdf", Format::pdf}, FormatName{".svg", Format::svg},
                              FormatName{".png", Format::png}};

constexpr NumberRange kResolutions_dpi{20.0, 1200.0};

/// How far tiles may overlap: none, to be taped edge to edge, up to a hand's breadth.
struct Overlaps {
    Length least;
    Length most;
};
constexpr Overlaps kOverlaps{Length::millimetres(0), Length::millimetres(50)};

struct SheetQuestion {
    std::string file;
    Format format = Format::pdf;
    double dots_per_inch = paint::kUsualDotsPerInch;
    sheet::SheetOptions options;
    /// Kinds of sheet, in order.
    std::vector<std::string> which;
    bool with_underlay = true;
    /// What the plan's file is called; pictures stand beside it.
    std::string plan_name;
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

void read_layers(const Arguments& arguments, OptionReader& options, SheetQuestion& question) {
    sheet::SheetOptions& sheet = question.options;
    struct Layer {
        std::string_view name;
        bool* shown;
    };
    const std::array layers{Layer{"underlay", &question.with_underlay},
                            Layer{"ground", &sheet.ground}, Layer{"coverage", &sheet.coverage},
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
                "--without \"{}\" is unknown; it is underlay, ground, coverage, pools or "
                "findings",
                typed));
        }
    }
}

void read_tiles(const Arguments& arguments, OptionReader& options, sheet::SheetOptions& sheet) {
    const auto overlap = options.optional_length("--overlap");
    if (!arguments.has("--tile")) {
        if (overlap) {
            options.fail("--overlap is of tiles; add --tile");
        }
        return;
    }
    if (sheet.scale.empty()) {
        options.fail("--tile needs --scale: without one, the drawing gets the largest scale that "
                     "fits a single sheet");
    }
    sheet.tile_overlap = overlap.value_or(sheet::kUsualOverlap);
    if (*sheet.tile_overlap < kOverlaps.least || *sheet.tile_overlap > kOverlaps.most) {
        options.fail(fmt::format("--overlap must be {} to {} mm", shortest(kOverlaps.least.mm()),
                                 shortest(kOverlaps.most.mm())));
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
    read_layers(arguments, options, question);
    sheet.scale = arguments.value("--scale").value_or("");
    read_tiles(arguments, options, sheet);
    sheet.extra_scales = arguments.has("--extras");
    sheet.margin = options.optional_length("--margin").value_or(sheet.margin);
    sheet.sheet_name = arguments.value("--name").value_or("");
    question.which = arguments.values("--which");
    if (question.which.empty()) {
        question.which = {"floor-plan"};
    }
    sheet.revision = arguments.value("--revision").value_or("");
    for (const std::string& shot : arguments.values("--shot")) {
        sheet.shots.push_back({shot});
    }
    sheet.beat = {arguments.value("--beat").value_or("")};
    read_section_line(arguments, options, sheet.section);
    if (sheet.margin < Length{}) {
        options.fail("--margin must be 0 or more");
    }
    return question;
}

/// A file and what goes into it.
struct Output {
    std::string file;
    std::string bytes;
};

/// "plan.svg" for the only sheet, else "plan-03.svg" for the third.
std::string numbered_file(const std::string& file, std::size_t index, std::size_t count) {
    if (count == 1) {
        return file;
    }
    const std::filesystem::path path{file};
    const std::string name =
        fmt::format("{}-{:02}{}", path.stem().string(), index + 1, path.extension().string());
    return (path.parent_path() / name).string();
}

/// One PDF takes all sheets; pictures take one each.
Result<std::vector<Output>> rendered(const paint::PaintSession& session,
                                     std::span<const sheet::Drawing> drawings,
                                     const SheetQuestion& question) {
    std::vector<Output> outputs;
    const auto add = [&](const std::string& file, const Result<std::string>& bytes) {
        if (bytes) {
            outputs.push_back({file, *bytes});
        }
        return bytes.map([](const std::string& /*bytes*/) {});
    };
    if (question.format == Format::pdf) {
        const auto added = add(question.file, paint::rendered_pdf(session, drawings));
        return added.map([&] { return std::move(outputs); });
    }
    for (std::size_t i = 0; i < drawings.size(); ++i) {
        const std::string file = numbered_file(question.file, i, drawings.size());
        const auto added =
            add(file, question.format == Format::svg
                          ? paint::rendered_svg(session, drawings[i])
                          : paint::rendered_png(session, drawings[i], question.dots_per_inch));
        if (!added) {
            return tl::unexpected{added.error()};
        }
    }
    return outputs;
}

/// "A1 landscape or 4 tiles"
std::string needs_text(const sheet::LargerScale& larger) {
    std::string text = larger.paper;
    if (larger.tiles > 0) {
        text += fmt::format("{}{} tiles", text.empty() ? "" : " or ", larger.tiles);
    }
    return text.empty() ? "more than a hundred tiles" : text;
}

JsonValue::Array json_of(const std::vector<sheet::LargerScale>& larger) {
    JsonValue::Array scales;
    for (const sheet::LargerScale& scale : larger) {
        scales.push_back(
            JsonValue::Object{{"scale", scale.scale},
                              {"paper", scale.paper.empty() ? JsonValue{} : JsonValue{scale.paper}},
                              {"tiles", scale.tiles > 0 ? JsonValue{scale.tiles} : JsonValue{}}});
    }
    return scales;
}

Answer answer_for(const SheetQuestion& question, std::span<const sheet::Drawing> drawings) {
    Answer answer;
    JsonValue::Array sheets;
    for (std::size_t i = 0; i < drawings.size(); ++i) {
        const sheet::Drawing& drawing = drawings[i];
        const std::string file = question.format == Format::pdf
                                     ? question.file
                                     : numbered_file(question.file, i, drawings.size());
        answer.text += fmt::format("{}: {}; print it at 100 %\n", file, drawing.subject);
        sheets.push_back(JsonValue::Object{{"file", file},
                                           {"title", drawing.title},
                                           {"subject", drawing.subject},
                                           {"width_mm", drawing.width_mm},
                                           {"height_mm", drawing.height_mm},
                                           {"scale", drawing.scale},
                                           {"errors_left_out", drawing.errors_left_out},
                                           {"larger", json_of(drawing.larger)}});
        if (drawing.errors_left_out > 0 && !question.options.goes_on) {
            answer.text += fmt::format("{}: {} errors found no room; --which findings lists them\n",
                                       file, drawing.errors_left_out);
        }
        for (const sheet::LargerScale& larger : drawing.larger) {
            answer.text += fmt::format("larger: {} needs {}\n", larger.scale, needs_text(larger));
        }
    }
    answer.json = {{"sheets", std::move(sheets)}};
    return answer;
}

/// Reads the plan that --since names, so that what is different now is clouded.
Errors read_since(const Arguments& arguments, const PlanInput& input, std::istream& in,
                  sheet::SheetOptions& sheet) {
    const auto name = arguments.value("--since");
    if (!name) {
        return {};
    }
    if (*name == "-" && arguments.operands().front() == "-") {
        return {{"PLAN and --since cannot both be standard input", {}}};
    }
    const auto old = named_plan(*name, input.catalogue, in);
    if (!old) {
        return old.error();
    }
    sheet.changes = plan::differences(*old->plan, *input.plan);
    sheet.changes_since = "file " + old->mark;
    return {};
}

/// Reads the picture that the plan has beneath it, from beside the plan's file.
Result<void> read_underlay(const SheetQuestion& question, const plan::Plan& plan,
                           sheet::SheetOptions& sheet) {
    if (!plan.underlay || !question.with_underlay) {
        return {};
    }
    const std::filesystem::path folder = std::filesystem::path{question.plan_name}.parent_path();
    Result<sheet::Pixels> pixels = paint::read_picture(folder / plan.underlay->file);
    if (!pixels) {
        Error error = pixels.error();
        error.message += "; --without underlay draws the sheet without it";
        return tl::unexpected{std::move(error)};
    }
    sheet.underlay = std::make_shared<const sheet::Pixels>(std::move(*pixels));
    return {};
}

Checked<Answer> drawn(const PlanInput& input, SheetQuestion question) {
    const bool metric = input.plan->units == UnitSystem::metric;
    if (question.options.paper.empty()) {
        question.options.paper = metric ? "A3" : "tabloid";
        question.options.text_paper = metric ? "A4" : "letter";
    }
    question.options.file_hash = input.mark;
    // A picture is of one sheet, so that its file keeps its name.
    question.options.goes_on = question.format == Format::pdf;
    // Before the analysis starts its threads.
    const paint::PaintSession session;
    if (const auto read = read_underlay(question, *input.plan, question.options); !read) {
        return tl::unexpected{Errors{read.error()}};
    }
    // Nobody asks this one to stop, so there is always an analysis.
    const auto analysis = checks::analyse(input.plan, input.catalogue);
    const auto drawings = sheet::sheet_set({analysis.value(), input.catalogue, session.measure()},
                                           question.options, question.which);
    if (!drawings) {
        return tl::unexpected{Errors{drawings.error()}};
    }
    const std::vector<sheet::Drawing> pages = sheet::pages_of(*drawings, session.measure());
    const auto outputs = rendered(session, pages, question);
    if (!outputs) {
        return tl::unexpected{Errors{outputs.error()}};
    }
    for (const Output& output : *outputs) {
        if (const auto written = write_file_whole(output.file, output.bytes); !written) {
            return tl::unexpected{Errors{written.error()}};
        }
    }
    return answer_for(question, pages);
}

Answer list_of_sheets() {
    Answer answer;
    JsonValue::Array sheets;
    for (const sheet::SheetKind& kind : sheet::all_sheets()) {
        answer.text += fmt::format("{}: {}\n", kind.name, kind.summary);
        sheets.push_back(JsonValue::Object{{"name", std::string{kind.name}},
                                           {"summary", std::string{kind.summary}}});
    }
    answer.json = {{"sheets", std::move(sheets)}};
    return answer;
}

Checked<Answer> answer(const Arguments& arguments, std::istream& in) {
    if (arguments.has(kList.name)) {
        return list_of_sheets();
    }
    if (arguments.operands().empty()) {
        return tl::unexpected{Errors{{"sheet needs PLAN", {}}}};
    }
    OptionReader options{arguments};
    SheetQuestion question = question_from(arguments, options);
    question.options.paper = arguments.value("--paper").value_or("");
    question.plan_name = arguments.operands().front();
    if (!options.errors().empty()) {
        return tl::unexpected{options.errors()};
    }
    const auto input = plan_input(arguments, in);
    if (!input) {
        return tl::unexpected{input.error()};
    }
    if (Errors errors = read_since(arguments, *input, in, question.options); !errors.empty()) {
        return tl::unexpected{std::move(errors)};
    }
    return drawn(*input, std::move(question));
}

} // namespace

Command sheet_command() {
    return {
        .name = "sheet",
        .summary = "drawings to scale, as PDF, SVG or PNG",
        .operands = "PLAN",
        .operands_min = 0,
        .operands_max = 1,
        .options =
            {{"--output", "-o", "FILE", "ends in .pdf, .svg or .png"},
             {"--which", "", "NAME",
              "kind of sheet, floor-plan unless said; all for a full set; may be repeated", true},
             kList,
             {"--paper", "", "NAME",
              "or a size, such as 500x700mm; A3 unless said, tabloid for feet; lists A4, letter"},
             {"--orientation", "", "WAY", "landscape or portrait; what fits unless said"},
             {"--scale", "", "SCALE", "such as 1:50 or 1:37; the largest that fits unless said"},
             {"--extras", "", "", "allow scales outside the standard set, such as 1:25"},
             {"--tile", "", "", "cut what is larger than the paper into sheets of it"},
             {"--overlap", "", "LENGTH", "of tiles; 10mm unless said"},
             {"--margin", "", "LENGTH", "10mm unless said"},
             {"--shot", "", "NAME", "only this shot; may be repeated", true},
             {"--beat", "", "NAME", "only this beat"},
             {"--along", "", "LINE",
              "of a section: a shot, or two places, such as \"1m,2m to 5m,2m\""},
             {"--depth", "", "LENGTH", "how far from its line a section shows things"},
             {"--without", "", "LAYER",
              "leave out underlay, ground, coverage, pools or findings; may be repeated", true},
             {"--name", "", "TEXT", "of the sheet, for the title block"},
             {"--revision", "", "TEXT", "for the title block"},
             {"--since", "", "OLDPLAN", "cloud what is different from this older plan"},
             {"--dpi", "", "NUMBER", "of a PNG; 200 unless said"},
             kLensdata,
             kJson},
        .example = "throwline sheet demo/cookery.json -o cookery.pdf --paper A3",
        .answer = answer};
}

} // namespace throwline::command
