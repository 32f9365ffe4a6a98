/// The faults planted in demo/cookery.json, against the same production set right.

#include "support/check_case.h"
#include "support/demo_plan.h"
#include "support/finding_signature.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <ostream>

namespace throwline::checks {

using support::analysis_of;
using support::demo_plan;
using support::messages;

namespace {

/// What must be found: the finding's things hold all of these.
struct Planted {
    const char* what;
    const char* check;
    Severity severity;
    const char* shot;
    std::vector<std::string> things;
};

void PrintTo(const Planted& planted, std::ostream* out) {
    *out << planted.what;
}

bool is_found(const Planted& planted, const Finding& finding) {
    return finding.check == planted.check && finding.severity == planted.severity
           && finding.shot.name == planted.shot && support::is_about(finding, planted.things);
}

bool is_found(const Planted& planted, const Analysis& analysis) {
    return std::any_of(analysis.findings.begin(), analysis.findings.end(),
                       [&](const Finding& finding) { return is_found(planted, finding); });
}

/// Analysed once for all cases; nothing changes it.
const Analysis& planted_analysis() {
    static const Analysis kAnalysis = analysis_of(demo_plan("cookery.json"));
    return kAnalysis;
}
const Analysis& right_analysis() {
    static const Analysis kAnalysis = analysis_of(demo_plan("cookery_set_right.json"));
    return kAnalysis;
}

class PlantedFaults : public testing::TestWithParam<Planted> {};

} // namespace

TEST_P(PlantedFaults, IsFoundInTheCookeryDemo) {
    EXPECT_TRUE(is_found(GetParam(), planted_analysis())) << messages(planted_analysis().findings);
}

TEST_P(PlantedFaults, IsGoneWhereTheDemoIsSetRight) {
    EXPECT_FALSE(is_found(GetParam(), right_analysis())) << messages(right_analysis().findings);
}

INSTANTIATE_TEST_SUITE_P(
    Cookery, PlantedFaults,
    testing::Values(
        Planted{"the right return ends early",
                "off-the-set",
                Severity::error,
                "4B",
                {"right return", "wall 2"}},
        Planted{"Jo hides Ines", "sight-lines", Severity::error, "4B", {"Jo", "Ines", "camera 1"}},
        Planted{"Jo is in the frame", "in-the-frame", Severity::error, "4B", {"Jo", "camera 1"}},
        Planted{
            "the pot rack is in the beam", "beam-blocked", Severity::error, "", {"1", "pot rack"}},
        Planted{"three lamps on C1", "circuit-load", Severity::error, "", {"C1", "1", "9", "10"}},
        Planted{"three lamps on pipe 5", "pipe-load", Severity::error, "", {"15", "16", "17"}},
        Planted{"a case stops the door",
                "door-swing",
                Severity::error,
                "",
                {"north door", "flight case"}},
        Planted{"a case narrows the way out",
                "way-out",
                Severity::error,
                "",
                {"north door", "flight case"}},
        Planted{"a planter under camera 1",
                "floor-overlap",
                Severity::error,
                "",
                {"camera 1", "herb planter"}},
        Planted{"the stand of lamp 14 shows",
                "in-the-frame",
                Severity::error,
                "4A",
                {"14", "camera 2"}},
        Planted{"2C crosses the line",
                "line-of-action",
                Severity::caution,
                "2C",
                {"camera 3", "Mara", "Teo"}},
        Planted{"3C is too near to 3B",
                "cut-angle",
                Severity::caution,
                "3C",
                {"camera 2", "camera 1", "Mara"}},
        Planted{"4C misses a head", "coverage", Severity::error, "4C", {"Ines", "camera 3"}},
        Planted{"4C leaves Ines soft", "focus", Severity::error, "4C", {"Ines", "camera 3"}},
        Planted{"Ines is underlit", "light-level", Severity::caution, "4B", {"Ines"}}));

class DemoFindings : public testing::TestWithParam<const char*> {};

TEST_P(DemoFindings, EachIsASentenceWithAWorkingAndAPlace) {
    const Analysis analysis = analysis_of(demo_plan(GetParam()));
    ASSERT_FALSE(analysis.findings.empty());
    Vec2 least = analysis.plan->room.outline.front();
    Vec2 most = least;
    for (const Vec2& corner : analysis.plan->room.outline) {
        least = least.cwiseMin(corner);
        most = most.cwiseMax(corner);
    }
    constexpr double kBeyond_m = 2.0;
    for (const Finding& finding : analysis.findings) {
        SCOPED_TRACE(finding.check + ": " + finding.message);
        ASSERT_FALSE(finding.message.empty());
        EXPECT_EQ(finding.message.back(), '.');
        EXPECT_FALSE(finding.working.formula.empty());
        EXPECT_FALSE(finding.working.result.empty());
        EXPECT_FALSE(finding.working.source.empty());
        EXPECT_TRUE(std::isfinite(finding.weight));
        EXPECT_TRUE(finding.at.allFinite());
        EXPECT_TRUE((finding.at.array() >= least.array() - kBeyond_m).all()
                    && (finding.at.array() <= most.array() + kBeyond_m).all())
            << finding.at.transpose();
    }
}

INSTANTIATE_TEST_SUITE_P(Demos, DemoFindings,
                         testing::Values("cookery.json", "cookery_set_right.json",
                                         "workshop_interview.json", "potters_bench.json"));

class GoodDemos : public testing::TestWithParam<const char*> {};

TEST_P(GoodDemos, HaveNoErrorThatIsNotAccepted) {
    const Analysis analysis = analysis_of(demo_plan(GetParam()));
    for (const Finding& finding : analysis.findings) {
        EXPECT_TRUE(finding.severity != Severity::error || finding.accepted)
            << finding.check << ": " << finding.message;
    }
}

INSTANTIATE_TEST_SUITE_P(Demos, GoodDemos,
                         testing::Values("cookery_set_right.json", "workshop_interview.json"));

} // namespace throwline::checks
