#include "sheet/finding_rows.h"

#include "base/words.h"
#include "sheet/furniture.h"

#include <fmt/format.h>
#include <map>

namespace throwline::sheet {

namespace {

using Pointers = std::vector<const checks::Finding*>;

Pointers all_of(const checks::Analysis& analysis) {
    Pointers all;
    for (const checks::Finding& finding : analysis.findings) {
        all.push_back(&finding);
    }
    return all;
}

std::string heading_of(const checks::Finding& finding, FindingOrder order) {
    if (finding.accepted) {
        return "Accepted";
    }
    switch (order) {
    case FindingOrder::by_shot:
        if (!finding.shot.empty()) {
            return capitalised(with_kind("shot", finding.shot.name));
        }
        return finding.beat.empty() ? "The whole production"
                                    : capitalised(with_kind("beat", finding.beat.name));
    case FindingOrder::by_thing:
        return finding.things.empty() ? "Nothing by name" : finding.things.front();
    }
    return {};
}

struct Section {
    std::string heading;
    Pointers findings;
};

/// In the order in which the first of each stands among all findings.
std::vector<Section> sections_of(const checks::Analysis& analysis, FindingOrder order) {
    std::vector<Section> sections;
    std::map<std::string, std::size_t> section_of;
    for (const checks::Finding& finding : analysis.findings) {
        const std::string heading = heading_of(finding, order);
        const auto [known, is_new] = section_of.emplace(heading, sections.size());
        if (is_new) {
            sections.push_back({heading, {}});
        }
        sections[known->second].findings.push_back(&finding);
    }
    return sections;
}

FindingRow row_of(const FindingGroup& group, const checks::Analysis& analysis) {
    FindingRow row;
    row.severity = group.first->severity;
    row.words = matter_of(group);
    row.reason = group.first->accepted.value_or("");
    for (const checks::Finding* finding : group.members) {
        row.findings.push_back(static_cast<int>(finding - analysis.findings.data()));
    }
    return row;
}

} // namespace

std::vector<int> finding_numbers(const checks::Analysis& analysis) {
    std::vector<int> numbers(analysis.findings.size(), 0);
    for (const FindingGroup& group : grouped(all_of(analysis))) {
        for (const checks::Finding* finding : group.members) {
            numbers[static_cast<std::size_t>(finding - analysis.findings.data())] = group.number;
        }
    }
    return numbers;
}

std::vector<FindingRow> finding_rows(const checks::Analysis& analysis, FindingOrder order) {
    const std::vector<int> numbers = finding_numbers(analysis);
    std::vector<FindingRow> rows;
    for (const Section& section : sections_of(analysis, order)) {
        FindingRow heading;
        heading.heading = section.heading;
        rows.push_back(std::move(heading));
        for (const FindingGroup& group : grouped(section.findings)) {
            rows.push_back(row_of(group, analysis));
            FindingRow& row = rows.back();
            row.number = numbers[static_cast<std::size_t>(row.findings.front())];
        }
    }
    return rows;
}

FindingCounts finding_counts(const checks::Analysis& analysis) {
    FindingCounts counts;
    for (const FindingGroup& group : grouped(all_of(analysis))) {
        if (group.first->accepted) {
            ++counts.accepted;
            continue;
        }
        switch (group.first->severity) {
        case checks::Severity::error:
            ++counts.errors;
            break;
        case checks::Severity::caution:
            ++counts.cautions;
            break;
        case checks::Severity::note:
            ++counts.notes;
            break;
        }
    }
    return counts;
}

std::string findings_counted(const checks::Analysis& analysis) {
    const auto [errors, cautions, notes, accepted] = finding_counts(analysis);
    std::string text;
    const auto add = [&](int count, const std::string& words) {
        if (count > 0) {
            text += (text.empty() ? "" : ", ") + words;
        }
    };
    add(errors, counted(errors, "error"));
    add(cautions, counted(cautions, "caution"));
    add(notes, counted(notes, "note"));
    add(accepted, fmt::format("{} accepted", accepted));
    return text;
}

std::string nothing_found(const checks::Analysis& analysis) {
    const plan::Plan& plan = *analysis.plan;
    const auto& openings = plan.room.openings;
    const bool has_way_out =
        std::any_of(openings.begin(), openings.end(),
                    [](const plan::Opening& opening) { return opening.way_out; });
    return fmt::format(
        "Looked at {}, {} and {} with {} and found nothing to tell.{} What stands on the floor in "
        "the end may still differ from the plan.",
        counted(static_cast<int>(plan.shots.size()), "shot"),
        counted(static_cast<int>(plan.beats.size()), "beat"),
        counted(static_cast<int>(plan.lamps.size()), "lamp"),
        counted(static_cast<int>(checks::all_checks().size()), "check"),
        has_way_out ? "" : " The plan marks no way out, so none was looked at.");
}

} // namespace throwline::sheet
