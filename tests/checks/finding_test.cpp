#include "base/length_text.h"
#include "checks/finding.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::checks {

namespace {

/// Findings that differ in one thing that is sorted by, or in none.
Finding any_finding() {
    Finding finding;
    finding.check = *rc::gen::element<std::string>("beam-blocked", "light-level");
    finding.severity = *rc::gen::element(Severity::error, Severity::caution, Severity::note);
    finding.shot = {*rc::gen::element<std::string>("", "1A", "1B")};
    finding.beat = {*rc::gen::element<std::string>("1", "2")};
    finding.things = {*rc::gen::element<std::string>("ada", "bo")};
    finding.weight = *rc::gen::element(0.0, 0.5, 2.0);
    finding.message = *rc::gen::element<std::string>("dark", "darker");
    if (*rc::gen::arbitrary<bool>()) {
        finding.accepted = "meant";
    }
    return finding;
}

std::string row_of(const Finding& f) {
    return std::string{name_of(f.severity)} + "|" + shortest(f.weight) + "|" + f.check + "|"
           + f.shot.name + "|" + f.beat.name + "|" + f.things.front() + "|" + f.message + "|"
           + f.accepted.value_or("");
}

std::vector<std::string> sorted_rows(std::vector<Finding> findings) {
    sort_worst_first(findings);
    std::vector<std::string> rows;
    for (const Finding& finding : findings) {
        rows.push_back(row_of(finding));
    }
    return rows;
}

} // namespace

RC_GTEST_PROP(Findings, AnyOrderIsSortedToTheSame, ()) {
    const auto findings = *rc::gen::container<std::vector<Finding>>(rc::gen::exec(any_finding));
    std::vector<Finding> shuffled;
    for (std::size_t left = findings.size(); left > 0; --left) {
        const auto at = *rc::gen::inRange<std::size_t>(0, shuffled.size() + 1);
        shuffled.insert(shuffled.begin() + static_cast<std::ptrdiff_t>(at), findings[left - 1]);
    }
    RC_ASSERT(sorted_rows(findings) == sorted_rows(shuffled));
}

TEST(Findings, SeverityGoesBeforeWeightAndAcceptedOnesGoLast) {
    std::vector<Finding> findings(4);
    findings[0].severity = Severity::error;
    findings[0].accepted = "meant";
    findings[1].severity = Severity::note;
    findings[1].weight = 9.0;
    findings[2].severity = Severity::caution;
    findings[2].weight = 0.1;
    findings[3].severity = Severity::caution;
    findings[3].weight = 0.2;
    sort_worst_first(findings);
    EXPECT_EQ(findings[0].weight, 0.2);
    EXPECT_EQ(findings[1].weight, 0.1);
    EXPECT_EQ(findings[2].weight, 9.0);
    EXPECT_TRUE(findings[3].accepted.has_value());
}

} // namespace throwline::checks
