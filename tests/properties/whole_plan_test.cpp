/// What may be done to a whole plan without changing what is wrong with it.

#include "plan/places.h"
#include "support/demo_plan.h"
#include "support/finding_signature.h"

#include <gtest/gtest.h>
#include <limits>
#include <random>

namespace throwline {
namespace {

using support::analysis_of;
using support::demo_plan;

class WholePlan : public testing::TestWithParam<const char*> {};

/// Rays are cast in single precision, and one that grazes an edge may fall either way: the middle
/// of what many of them met moves by a few millimetres.
constexpr double kSamePlace_m = 5e-3;

void expect_moved_places(const checks::Analysis& before, const checks::Analysis& after,
                         const Vec2& by, Angle turn) {
    for (const checks::Finding& finding : before.findings) {
        const Vec2 expected = rotated(finding.at, turn.rad()) + by;
        double nearest_m = std::numeric_limits<double>::max();
        for (const checks::Finding& other : after.findings) {
            if (support::signature(other) == support::signature(finding)) {
                nearest_m = std::min(nearest_m, (other.at - expected).norm());
            }
        }
        EXPECT_LT(nearest_m, kSamePlace_m) << support::signature(finding);
    }
}

TEST_P(WholePlan, TurnedAndMovedHasTheSameFindingsInTheSamePlaces) {
    const plan::Plan plan = demo_plan(GetParam());
    const checks::Analysis before = analysis_of(plan);
    std::mt19937 random{20260314};
    std::uniform_real_distribution<double> degrees{-180.0, 180.0};
    std::uniform_real_distribution<double> metres{-30.0, 30.0};
    for (int i = 0; i < 4; ++i) {
        const Angle turn = Angle::degrees(degrees(random));
        const double x_m = metres(random);
        const double y_m = metres(random);
        const checks::Analysis after = analysis_of(plan::moved(plan, {x_m, y_m}, turn));
        EXPECT_EQ(support::difference(after.findings, before.findings), "")
            << "turned by " << turn.deg() << " deg, moved by " << x_m << ", " << y_m;
        expect_moved_places(before, after, {x_m, y_m}, turn);
    }
}

TEST_P(WholePlan, SeenInAMirrorHasTheSameFindings) {
    const plan::Plan plan = demo_plan(GetParam());
    const checks::Analysis mirrored = analysis_of(plan::mirrored(plan));
    EXPECT_EQ(support::difference(mirrored.findings, analysis_of(plan).findings), "");
}

TEST_P(WholePlan, HasTheSameFindingsInFeetAndInMetres) {
    plan::Plan plan = demo_plan(GetParam());
    plan.units = UnitSystem::metric;
    const checks::Analysis metric = analysis_of(plan);
    plan.units = UnitSystem::imperial;
    const checks::Analysis imperial = analysis_of(plan);
    ASSERT_EQ(metric.findings.size(), imperial.findings.size());
    for (std::size_t i = 0; i < metric.findings.size(); ++i) {
        EXPECT_EQ(support::signature(metric.findings[i]), support::signature(imperial.findings[i]));
        EXPECT_EQ(metric.findings[i].at, imperial.findings[i].at);
        EXPECT_EQ(metric.findings[i].weight, imperial.findings[i].weight);
    }
}

TEST_P(WholePlan, GivesTheSameFindingsEveryTime) {
    const plan::Plan plan = demo_plan(GetParam());
    const checks::Analysis first = analysis_of(plan);
    const checks::Analysis second = analysis_of(plan);
    ASSERT_EQ(first.findings.size(), second.findings.size());
    for (std::size_t i = 0; i < first.findings.size(); ++i) {
        EXPECT_EQ(first.findings[i].message, second.findings[i].message);
        EXPECT_EQ(first.findings[i].working, second.findings[i].working);
    }
}

TEST_P(WholePlan, ReadsBackFromItsOwnTextWithTheSameFindings) {
    const plan::Plan plan = demo_plan(GetParam());
    const Checked<plan::Plan> again =
        plan::read_plan(plan::written(plan), support::shipped_catalogue());
    ASSERT_TRUE(again) << text_of(again.error().front());
    EXPECT_EQ(*again, plan);
}

INSTANTIATE_TEST_SUITE_P(Demo, WholePlan,
                         testing::Values("cookery.json", "cookery_set_right.json",
                                         "workshop_interview.json"),
                         [](const auto& which) {
                             std::string name = which.param;
                             return name.substr(0, name.find('.'));
                         });

} // namespace
} // namespace throwline
