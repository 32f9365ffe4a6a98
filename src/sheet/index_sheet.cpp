#include "sheet/index_sheet.h"

#include "base/words.h"
#include "checks/cautions.h"
#include "plan/calendar_text.h"
#include "sheet/furniture.h"
#include "sheet/table_layout.h"
#include "sheet/text_page.h"
#include "sheet/text_wrap.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <memory>

namespace throwline::sheet {

namespace {

constexpr double kPad_mm = 4.0;
constexpr double kTitle_mm = 7.0;
constexpr double kUnderHead_mm = 3.0;

/// The index laid out, with its pages.
struct IndexPages {
    TextPage page;
    std::vector<std::string> title;
    std::vector<std::string> about;
    std::vector<std::string> cautions;
    TableLayout layout;
    std::vector<TablePage> pages;

    double head_mm() const {
        return kPad_mm + 1.4 * kTitle_mm * static_cast<double>(title.size())
               + kLinePitch_mm * static_cast<double>(about.size()) + kUnderHead_mm;
    }
    double width_mm() const { return page.body.width - 2.0 * kPad_mm; }
};

/// Place, date and hours.
std::vector<std::string> about_site(const plan::Site& site) {
    std::vector<std::string> lines{site.place};
    std::string when = site.date;
    if (site.hours) {
        when += fmt::format("{}{} to {}", when.empty() ? "" : ", ", plan::text_of(site.hours->from),
                            plan::text_of(site.hours->to));
    }
    lines.push_back(when);
    std::erase(lines, std::string{});
    return lines;
}

lists::Section section_of_sheets(const std::vector<IndexEntry>& entries,
                                 const SheetOptions& options) {
    lists::Section section{"Sheets", {}, {}};
    for (const IndexEntry& entry : entries) {
        const std::string number = entry.last > entry.number
                                       ? fmt::format("{} to {}", entry.number, entry.last)
                                       : fmt::format("{}", entry.number);
        section.rows.push_back({{{number, {}},
                                 {entry.name, {}},
                                 {entry.scale.empty() ? "not to scale" : entry.scale, {}},
                                 {entry.paper, {}},
                                 {options.revision, {}}},
                                false});
    }
    return section;
}

/// "3 errors, 12 cautions and 9 notes; 1 finding of them accepted"
std::string count_of(const std::vector<FindingGroup>& groups) {
    std::array<int, 3> counts{};
    int accepted = 0;
    for (const FindingGroup& group : groups) {
        ++counts[static_cast<std::size_t>(group.first->severity)];
        accepted += group.first->accepted ? 1 : 0;
    }
    const std::array parts{counted(counts[0], "error"), counted(counts[1], "caution"),
                           counted(counts[2], "note")};
    std::string words = listed(parts);
    if (accepted > 0) {
        words += fmt::format("; {} of them accepted", accepted);
    }
    return words + ".";
}

lists::Section section_of_findings(const SheetInput& input, const SheetOptions& options) {
    const auto groups = grouped(selected_findings(input.analysis, options));
    lists::Section section{"Findings", {}, {}};
    section.remarks.push_back(groups.empty() ? "No findings." : count_of(groups));
    for (const FindingGroup& group : groups) {
        if (group.first->severity == checks::Severity::error && !group.first->accepted) {
            section.remarks.push_back(fmt::format("Error: {}", words_for(group)));
        }
    }
    return section;
}

lists::Table table_of(const SheetInput& input, const SheetOptions& options,
                      const std::vector<IndexEntry>& entries) {
    lists::Table table;
    table.columns = {{"number", "No.", lists::Align::right},
                     {"name", "Sheet", lists::Align::left},
                     {"scale", "Scale", lists::Align::left},
                     {"paper", "Paper", lists::Align::left},
                     {"revision", "Revision", lists::Align::left}};
    table.sections = {section_of_sheets(entries, options), section_of_findings(input, options)};
    return table;
}

/// Shares of the width that the columns take, whatever the scales and papers are.
constexpr std::array kColumnShares{0.09, 0.39, 0.19, 0.22, 0.11};

Result<IndexPages> pages_of(const SheetInput& input, const SheetOptions& options,
                            const std::vector<IndexEntry>& entries) {
    const plan::Plan& plan = *input.analysis.plan;
    IndexPages made;
    made.cautions = checks::cautions_for(plan);
    const Result<TextPage> page = text_page(input, options, made.cautions);
    if (!page) {
        return tl::unexpected{page.error()};
    }
    made.page = *page;
    made.title = wrapped_lines(plan.title, made.width_mm(), kTitle_mm, true, input.measure);
    made.about = about_site(plan.site);
    const double next_mm = page->body.height - 2.0 * kPad_mm;
    const double first_mm = page->body.height - made.head_mm() - kPad_mm;
    made.layout = laid_out(table_of(input, options, entries), made.width_mm(), first_mm,
                           input.measure, kColumnShares);
    made.pages = paged(made.layout, first_mm, next_mm);
    return made;
}

void draw_head(Marks& marks, const IndexPages& index) {
    double baseline_mm = index.page.body.top + kPad_mm;
    const double left_mm = index.page.body.left + kPad_mm;
    const auto add = [&](const std::string& words, double height_mm, double pitch_mm, bool bold) {
        marks.emplace_back(Text{words,
                                {left_mm, baseline_mm + height_mm},
                                height_mm,
                                TextAnchor::start,
                                0.0,
                                bold,
                                Ink::lettering});
        baseline_mm += pitch_mm;
    };
    for (const std::string& words : index.title) {
        add(words, kTitle_mm, 1.4 * kTitle_mm, true);
    }
    for (const std::string& words : index.about) {
        add(words, kLetter_mm, kLinePitch_mm, false);
    }
}

Drawing draw_page(const SheetInput& input, const SheetOptions& options, const IndexPages& index,
                  std::size_t number) {
    Marks marks;
    const Box& body = index.page.body;
    double top_mm = body.top + kPad_mm;
    if (number == 0) {
        draw_head(marks, index);
        top_mm = body.top + index.head_mm();
    }
    draw_table(marks, {body.left + kPad_mm, top_mm}, index.layout, index.pages[number]);
    return finished_page(input, options, index.page, index.cautions, std::move(marks));
}

} // namespace

Result<std::vector<SheetJob>> index_jobs(const SheetInput& input, const SheetOptions& options,
                                         const std::vector<IndexEntry>& entries) {
    Result<IndexPages> made = pages_of(input, options, entries);
    if (!made) {
        return tl::unexpected{made.error()};
    }
    const auto index = std::make_shared<const IndexPages>(*std::move(made));
    std::vector<SheetJob> jobs;
    for (std::size_t i = 0; i < index->pages.size(); ++i) {
        const std::string name =
            i == 0 ? std::string{"Index"} : fmt::format("Index, page {}", i + 1);
        jobs.push_back({name, [input, index, i](const SheetOptions& drawn) -> Result<Drawing> {
                            return draw_page(input, drawn, *index, i);
                        }});
    }
    return jobs;
}

Result<std::vector<SheetJob>> index_alone_jobs(const SheetInput& input,
                                               const SheetOptions& options) {
    return index_jobs(input, options, {});
}

} // namespace throwline::sheet
