#include "base/text_file.h"
#include "checks/cautions.h"
#include "command/arguments.h"
#include "command/cautions.h"
#include "command/commands.h"
#include "command/plan_input.h"
#include "lists/lists.h"
#include "lists/phone_page.h"
#include "plan/calendar_text.h"
#include "sheet/floor_plan.h"
#include "ui/paint/paint.h"

#include <filesystem>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace throwline::command {

namespace {

Errors only(const Error& error) {
    return Errors{error};
}

/// On a sheet larger than crews print: it is looked at piece by piece, and more of the lettering
/// fits.
Result<sheet::Drawing> floor_plan(const sheet::SheetInput& sheet_input, const PlanInput& input) {
    sheet::SheetOptions options;
    options.paper = input.plan->units == UnitSystem::metric ? "A2" : "ansi C";
    options.file_hash = input.mark;
    return sheet::floor_plan_sheet(sheet_input, options);
}

std::vector<std::string> lines_of(const plan::Site& site) {
    std::vector<std::string> lines;
    std::vector<std::string> when;
    if (!site.place.empty()) {
        lines.push_back(site.place);
    }
    if (!site.date.empty()) {
        when.push_back(site.date);
    }
    if (site.hours) {
        when.push_back(plan::text_of(site.hours->from) + " to " + plan::text_of(site.hours->to));
    }
    if (!when.empty()) {
        lines.push_back(fmt::format("{}", fmt::join(when, ", ")));
    }
    return lines;
}

/// Numbered as on the sheet.
std::vector<lists::PageFinding> findings_of(std::span<const checks::Finding> findings) {
    std::vector<const checks::Finding*> pointers;
    for (const checks::Finding& finding : findings) {
        pointers.push_back(&finding);
    }
    std::vector<lists::PageFinding> page;
    for (const sheet::FindingGroup& group : sheet::grouped(pointers)) {
        page.push_back({static_cast<int>(page.size()) + 1,
                        std::string{checks::name_of(group.first->severity)}, group.first->message,
                        group.also.empty() ? std::string{}
                                           : fmt::format("also {}", fmt::join(group.also, ", ")),
                        group.first->accepted.value_or("")});
    }
    return page;
}

/// Those of the plan, then those of what was found.
std::vector<std::string> cautions_of(const checks::Analysis& analysis) {
    std::vector<std::string> cautions = checks::cautions_for(*analysis.plan);
    const std::vector<std::string> found = cautions_for(std::span{analysis.findings});
    cautions.insert(cautions.end(), found.begin(), found.end());
    return cautions;
}

void add_lists(lists::PhonePage& page, const lists::ListInput& input) {
    for (const lists::ListKind& kind : lists::all_lists()) {
        lists::Table table = kind.make(input);
        if (kind.name == "shots") {
            page.shots = std::move(table);
        } else if (kind.name == "running-order") {
            page.running_order = std::move(table);
        } else {
            if (kind.name == "camera-cards") {
                page.camera_cards = table;
            }
            page.lists.push_back(std::move(table));
        }
    }
}

Result<lists::PhonePage> page_of(const PlanInput& input) {
    // Before the analysis starts its threads.
    const paint::PaintSession session;
    // Nobody asks this one to stop, so there is always an analysis.
    const auto analysis = checks::analyse(input.plan, input.catalogue);
    const auto drawing = floor_plan({analysis.value(), input.catalogue, session.measure()}, input);
    if (!drawing) {
        return tl::unexpected{drawing.error()};
    }
    auto svg = paint::rendered_svg(session, *drawing);
    if (!svg) {
        return tl::unexpected{svg.error()};
    }
    lists::PhonePage page;
    page.title = input.plan->title;
    page.lines = lines_of(input.plan->site);
    page.mark = input.mark;
    page.floor_plan_svg = std::move(*svg);
    page.findings = findings_of(analysis->findings);
    page.cautions = cautions_of(*analysis);
    add_lists(page, {*analysis, input.catalogue});
    return page;
}

Checked<Answer> answer(const Arguments& arguments, std::istream& in) {
    OptionReader options{arguments};
    const std::string file = options.text("--output");
    if (const std::string ending = std::filesystem::path{file}.extension().string();
        !file.empty() && ending != ".html" && ending != ".htm") {
        options.fail(fmt::format("--output \"{}\" must end in .html", file));
    }
    if (!options.errors().empty()) {
        return tl::unexpected{options.errors()};
    }
    const auto input = plan_input(arguments, in);
    if (!input) {
        return tl::unexpected{input.error()};
    }
    const auto page = page_of(*input);
    if (!page) {
        return tl::unexpected{only(page.error())};
    }
    const std::string html = lists::phone_page(*page);
    if (const auto written = write_file_whole(file, html); !written) {
        return tl::unexpected{only(written.error())};
    }
    Answer answer;
    answer.text = fmt::format("{}: {}, {} kB; open it on the telephone, no network is needed\n",
                              file, page->title, (html.size() + 999) / 1000);
    answer.json = {
        {"file", file}, {"title", page->title}, {"bytes", static_cast<int>(html.size())}};
    return answer;
}

} // namespace

Command page_command() {
    return {.name = "page",
            .summary = "all of a production as one web page for a telephone without a network",
            .operands = "PLAN",
            .operands_min = 1,
            .operands_max = 1,
            .options = {{"--output", "-o", "FILE", "ends in .html"}, kLensdata, kJson},
            .example = "throwline page demo/cookery.json -o cookery.html",
            .answer = answer};
}

} // namespace throwline::command
