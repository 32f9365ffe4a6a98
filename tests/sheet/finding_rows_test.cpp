#include "sheet/finding_rows.h"

#include "support/demo_plan.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <set>

namespace throwline::sheet {
namespace {

using support::analysis_of;
using support::demo_plan;

checks::Finding finding(checks::Severity severity, const std::string& shot,
                        const std::string& thing) {
    checks::Finding one;
    one.check = "focus";
    one.severity = severity;
    one.shot = {shot};
    one.things = {thing};
    one.message = thing + " in " + shot + ".";
    return one;
}

/// What is told of one thing in two shots, of another in one, and one accepted.
checks::Analysis small_analysis() {
    using checks::Severity;
    checks::Analysis analysis;
    analysis.plan = std::make_shared<const plan::Plan>();
    analysis.findings = {
        finding(Severity::error, "2A", "Ana"), finding(Severity::error, "1A", "Ana"),
        finding(Severity::note, "2A", "table"), finding(Severity::error, "1A", "table")};
    analysis.findings.back().accepted = "It is a dream";
    return analysis;
}

std::vector<std::string> told(const checks::Analysis& analysis, FindingOrder order) {
    std::vector<std::string> lines;
    for (const FindingRow& row : finding_rows(analysis, order)) {
        lines.push_back(row.is_heading() ? row.heading
                                         : std::to_string(row.number) + " " + row.words);
    }
    return lines;
}

TEST(FindingRows, StandUnderTheirShotsWorstFirst) {
    EXPECT_EQ(told(small_analysis(), FindingOrder::by_shot),
              (std::vector<std::string>{"Shot 2A", "1 Ana in 2A.", "2 table in 2A.", "Shot 1A",
                                        "1 Ana in 1A.", "Accepted", "3 table in 1A."}));
}

TEST(FindingRows, StandUnderTheirThingsToldOnce) {
    EXPECT_EQ(told(small_analysis(), FindingOrder::by_thing),
              (std::vector<std::string>{"Ana", "1 Ana in 2A. Also shot 1A.", "table",
                                        "2 table in 2A.", "Accepted", "3 table in 1A."}));
}

TEST(FindingRows, AreCountedAsNumbered) {
    EXPECT_EQ(findings_counted(small_analysis()), "1 error, 1 note, 1 accepted");
    EXPECT_EQ(findings_counted(checks::Analysis{}), "");
}

TEST(FindingRows, HoldEveryFindingOnce) {
    const checks::Analysis analysis = analysis_of(demo_plan("cookery.json"));
    for (const FindingOrder order : {FindingOrder::by_shot, FindingOrder::by_thing}) {
        std::set<int> held;
        std::size_t count = 0;
        for (const FindingRow& row : finding_rows(analysis, order)) {
            held.insert(row.findings.begin(), row.findings.end());
            count += row.findings.size();
        }
        EXPECT_EQ(held.size(), analysis.findings.size());
        EXPECT_EQ(count, analysis.findings.size());
    }
}

TEST(FindingRows, NothingFoundIsNoPromise) {
    checks::Analysis analysis;
    analysis.plan = std::make_shared<const plan::Plan>(demo_plan("potters_bench.json"));
    const std::string words = nothing_found(analysis);
    EXPECT_EQ(words.rfind("Looked at ", 0), 0U);
    EXPECT_EQ(words.find("safe"), std::string::npos);
}

} // namespace
} // namespace throwline::sheet
