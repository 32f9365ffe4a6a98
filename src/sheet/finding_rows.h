#pragma once

#include "checks/check.h"

#include <string>
#include <vector>

namespace throwline::sheet {

enum class FindingOrder { by_shot, by_thing };

/// A line of a list of findings: a heading over those that follow, or a finding.
struct FindingRow {
    /// "Shot 2A", "Beat 3", "camera 2", "Accepted"; empty for a finding.
    std::string heading;
    /// As on every sheet.
    int number = 0;
    checks::Severity severity = checks::Severity::note;
    /// What it says, and where else.
    std::string words;
    /// Why the crew lives with it; empty when it does not.
    std::string reason;
    /// Places in the analysis's list of findings, the first being where to look.
    std::vector<int> findings;

    bool is_heading() const { return !heading.empty(); }
};

/// All findings under the shot they are about, or under the thing to move first; what has the worst
/// of them first, and there the worst first. Accepted ones stand last, under a heading of their
/// own.
std::vector<FindingRow> finding_rows(const checks::Analysis& analysis, FindingOrder order);

/// The number of each finding, in their order, as on every sheet: those that say the same of the
/// same things have one.
std::vector<int> finding_numbers(const checks::Analysis& analysis);

/// How many findings there are, as they are numbered: the same said of several beats counts once.
struct FindingCounts {
    int errors = 0;
    int cautions = 0;
    int notes = 0;
    int accepted = 0;

    /// Those that nobody has accepted.
    int open() const { return errors + cautions + notes; }
};
FindingCounts finding_counts(const checks::Analysis& analysis);
/// "3 errors, 12 cautions, 1 accepted", counted as numbered; empty when there is none.
std::string findings_counted(const checks::Analysis& analysis);
/// What was looked at when nothing was found.
std::string nothing_found(const checks::Analysis& analysis);

} // namespace throwline::sheet
