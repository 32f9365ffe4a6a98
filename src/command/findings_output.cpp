#include "command/findings_output.h"

#include "command/cautions.h"
#include "command/working_output.h"

#include <fmt/format.h>
#include <string_view>

namespace throwline::command {

namespace {

struct Counts {
    int errors = 0;
    int cautions = 0;
    int notes = 0;
    int accepted = 0;
};

Counts counted(std::span<const checks::Finding> findings) {
    Counts counts;
    for (const checks::Finding& finding : findings) {
        if (finding.accepted) {
            ++counts.accepted;
            continue;
        }
        switch (finding.severity) {
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

std::string entry(std::size_t number, const checks::Finding& finding, bool with_working) {
    std::string text = fmt::format("{:3}  {} [{}]\n", number, finding.message, finding.check);
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

JsonValue json_of(std::size_t number, const checks::Finding& finding) {
    return JsonValue::Object{
        {"number", static_cast<int>(number)},
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
    std::string text;
    std::string heading;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        if (const std::string next = heading_of(findings[i]); next != heading) {
            text += fmt::format("{}{}\n", heading.empty() ? "" : "\n", next);
            heading = next;
        }
        text += entry(i + 1, findings[i], with_working);
    }
    text += fmt::format("{}{}", findings.empty() ? "" : "\n", summary(counted(findings)));
    for (const std::string& caution : cautions_for(findings)) {
        text += caution + "\n";
    }
    return text;
}

JsonValue::Object findings_json(std::span<const checks::Finding> findings) {
    JsonValue::Array all;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        all.push_back(json_of(i + 1, findings[i]));
    }
    const Counts counts = counted(findings);
    const std::vector<std::string> mind = cautions_for(findings);
    return {{"findings", std::move(all)},  {"errors", counts.errors},
            {"cautions", counts.cautions}, {"notes", counts.notes},
            {"accepted", counts.accepted}, {"mind", JsonValue::Array(mind.begin(), mind.end())}};
}

} // namespace throwline::command
