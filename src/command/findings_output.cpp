#include "command/findings_output.h"

#include "command/cautions.h"
#include "command/working_output.h"
#include "sheet/furniture.h"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <string_view>

namespace throwline::command {

namespace {

using sheet::FindingGroup;

struct Counts {
    int errors = 0;
    int cautions = 0;
    int notes = 0;
    int accepted = 0;

    void add(const checks::Finding& finding);
};

void Counts::add(const checks::Finding& finding) {
    if (finding.accepted) {
        ++accepted;
        return;
    }
    switch (finding.severity) {
    case checks::Severity::error:
        ++errors;
        break;
    case checks::Severity::caution:
        ++cautions;
        break;
    case checks::Severity::note:
        ++notes;
        break;
    }
}

/// As the sheet groups them, so that the numbers are the same.
std::vector<FindingGroup> groups_of(std::span<const checks::Finding> findings) {
    std::vector<const checks::Finding*> pointers;
    for (const checks::Finding& finding : findings) {
        pointers.push_back(&finding);
    }
    return sheet::grouped(pointers);
}

/// For each finding the number of the group that it is in, from 1.
std::vector<int> numbers_of(std::span<const checks::Finding> findings) {
    std::vector<int> numbers(findings.size(), 0);
    int number = 0;
    for (const FindingGroup& group : groups_of(findings)) {
        ++number;
        for (const checks::Finding* member : group.members) {
            numbers[static_cast<std::size_t>(member - findings.data())] = number;
        }
    }
    return numbers;
}

std::string heading_of(const checks::Finding& finding) {
    if (finding.accepted) {
        return "Accepted";
    }
    switch (finding.severity) {
    case checks::Severity::error:
        return "Errors";
    case checks::Severity::caution:
        return "Cautions";
    case checks::Severity::note:
        return "Notes";
    }
    return {};
}

std::string counted(int count, std::string_view noun) {
    return fmt::format("{} {}{}", count, noun, count == 1 ? "" : "s");
}

std::string summary(const Counts& counts) {
    return fmt::format("{}, {}, {}{}\n", counted(counts.errors, "error"),
                       counted(counts.cautions, "caution"), counted(counts.notes, "note"),
                       counts.accepted > 0 ? fmt::format("; {} accepted", counts.accepted) : "");
}

std::string entry(std::size_t number, const FindingGroup& group, bool with_working) {
    const checks::Finding& finding = *group.first;
    const std::string also =
        group.also.empty() ? "" : fmt::format(" Also {}.", fmt::join(group.also, ", "));
    std::string text =
        fmt::format("{:3}  {}{} [{}]\n", number, finding.message, also, finding.check);
    const std::string indent = "     ";
    if (finding.accepted) {
        text += fmt::format("{}accepted: {}\n", indent, *finding.accepted);
    }
    if (with_working) {
        text += working_text({&finding.working, 1}, indent);
    }
    return text;
}

JsonValue named_or_null(const std::string& name) {
    return name.empty() ? JsonValue{} : JsonValue{name};
}

JsonValue json_of(int number, const checks::Finding& finding) {
    return JsonValue::Object{
        {"number", number},
        {"check", finding.check},
        {"severity", std::string{name_of(finding.severity)}},
        {"shot", named_or_null(finding.shot.name)},
        {"beat", named_or_null(finding.beat.name)},
        {"things", JsonValue::Array(finding.things.begin(), finding.things.end())},
        {"x_m", finding.at.x()},
        {"y_m", finding.at.y()},
        {"message", finding.message},
        {"accepted", finding.accepted},
        {"working", working_json(finding.working)}};
}

} // namespace

std::string findings_text(std::span<const checks::Finding> findings, bool with_working) {
    const std::vector<FindingGroup> groups = groups_of(findings);
    std::string text;
    std::string heading;
    Counts counts;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const checks::Finding& first = *groups[i].first;
        if (const std::string next = heading_of(first); next != heading) {
            text += fmt::format("{}{}\n", heading.empty() ? "" : "\n", next);
            heading = next;
        }
        text += entry(i + 1, groups[i], with_working);
        counts.add(first);
    }
    text += fmt::format("{}{}", findings.empty() ? "" : "\n", summary(counts));
    for (const std::string& caution : cautions_for(findings)) {
        text += caution + "\n";
    }
    return text;
}

JsonValue::Object findings_json(std::span<const checks::Finding> findings) {
    const std::vector<int> numbers = numbers_of(findings);
    JsonValue::Array all;
    Counts counts;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        all.push_back(json_of(numbers[i], findings[i]));
        counts.add(findings[i]);
    }
    const std::vector<std::string> mind = cautions_for(findings);
    return {{"findings", std::move(all)},  {"errors", counts.errors},
            {"cautions", counts.cautions}, {"notes", counts.notes},
            {"accepted", counts.accepted}, {"mind", JsonValue::Array(mind.begin(), mind.end())}};
}

} // namespace throwline::command
