#include "sheet/findings_sheet.h"

#include "checks/cautions.h"
#include "sheet/furniture.h"
#include "sheet/list_sheet.h"

#include <fmt/format.h>

namespace throwline::sheet {

namespace {

std::string heading_of(const checks::Finding& finding) {
    if (finding.accepted) {
        return "Accepted";
    }
    switch (finding.severity) {
    case checks::Severity::error:
        return "Errors: must be put right";
    case checks::Severity::caution:
        return "Cautions: look at this";
    case checks::Severity::note:
        return "Notes: worth knowing";
    }
    return {};
}

lists::Row row_of(const FindingGroup& group) {
    const checks::Finding& finding = *group.first;
    return {{{fmt::format("{}", group.number), static_cast<double>(group.number)},
             {finding.shot.name, {}},
             {finding.beat.name, {}},
             {words_for(group), {}},
             {finding.working.result, {}}}};
}

lists::Table table_of(const SheetInput& input, const std::vector<FindingGroup>& groups,
                      const std::string& title) {
    lists::Table table;
    table.name = "findings";
    table.title = title;
    table.columns = {{"number", "No.", lists::Align::right},
                     {"shot", "Shot", lists::Align::left},
                     {"beat", "Beat", lists::Align::left},
                     {"finding", "Finding", lists::Align::left},
                     {"result", "Figure", lists::Align::left}};
    table.cautions = checks::cautions_for(*input.analysis.plan);
    for (const FindingGroup& group : groups) {
        const std::string heading = heading_of(*group.first);
        if (table.sections.empty() || table.sections.back().heading != heading) {
            table.sections.push_back({heading, {}, {}});
        }
        table.sections.back().rows.push_back(row_of(group));
    }
    return table;
}

std::vector<FindingGroup> groups_of(const SheetInput& input, const SheetOptions& options) {
    return grouped(selected_findings(input.analysis, options), input.analysis);
}

Result<std::vector<SheetJob>> jobs_of(const SheetInput& input, const SheetOptions& options,
                                      const lists::Table& table) {
    return table.sections.empty() ? std::vector<SheetJob>{} : table_jobs(input, options, table);
}

} // namespace

Result<std::vector<SheetJob>> findings_jobs(const SheetInput& input, const SheetOptions& options) {
    return jobs_of(input, options, table_of(input, groups_of(input, options), "Findings"));
}

Result<std::vector<SheetJob>> error_jobs(const SheetInput& input, const SheetOptions& options) {
    std::vector<FindingGroup> groups = groups_of(input, options);
    const std::size_t all = groups.size();
    std::erase_if(groups, [](const FindingGroup& group) {
        return group.first->severity != checks::Severity::error;
    });
    lists::Table table = table_of(input, groups, "Errors");
    if (!groups.empty() && all > groups.size()) {
        table.sections.back().remarks.push_back(fmt::format(
            "The sheet of findings has {} cautions and notes besides.", all - groups.size()));
    }
    return jobs_of(input, options, table);
}

} // namespace throwline::sheet
