#include "checks/light_checks.h"
#include "support/light_case.h"

#include <cmath>
#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;
using plan::LampRole;

namespace {

/// Key and fill 1 m away on either side at the same angle, so that key : fill is the ratio of their
/// light.
plan::Plan lit_by(double key_lx, double fill_lx, double wanted_ratio) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 40.0, 0.0, 1.0).level = setting_for_lx(key_lx);
    put_lamp_on_ada(plan, "fill", LampRole::fill, -40.0, 0.0, 1.0).level = setting_for_lx(fill_lx);
    plan.targets.lighting_ratio = wanted_ratio;
    return plan;
}

} // namespace

TEST(KeyToFill, TheRatioThatIsAskedForIsNotMentioned) {
    const auto findings = lamp_findings(lighting_ratio, lit_by(300.0, 100.0, 4.0));
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

// (900 + 100) : 100 = 10:1; log2(10 / 2) = 2.32 stops.
TEST(KeyToFill, ARatioFarOffIsFoundWithBothRatios) {
    const auto findings = lamp_findings(lighting_ratio, lit_by(900.0, 100.0, 2.0));
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].check, "lighting-ratio");
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_EQ(findings[0].shot, shot_id("1A"));
    EXPECT_EQ(findings[0].things, std::vector<std::string>{"ada"});
    EXPECT_NEAR(findings[0].weight, std::log2(5.0), 1e-6);
    EXPECT_EQ(findings[0].message,
              "The lighting ratio on the face of ada in shot 1A is 10.0:1; the "
              "plan asks for 2.0:1.");
}

// Wanted 4:1: from 2:1 (key = fill) to 8:1 (key = 7 fill).
TEST(KeyToFill, AStopEitherWayIsAllowedAndNoMore) {
    EXPECT_TRUE(lamp_findings(lighting_ratio, lit_by(102.0, 100.0, 4.0)).empty());
    EXPECT_EQ(lamp_findings(lighting_ratio, lit_by(98.0, 100.0, 4.0)).size(), 1U);
    EXPECT_TRUE(lamp_findings(lighting_ratio, lit_by(690.0, 100.0, 4.0)).empty());
    EXPECT_EQ(lamp_findings(lighting_ratio, lit_by(710.0, 100.0, 4.0)).size(), 1U);
}

TEST(KeyToFill, AFaceWithoutFillHasNoRatio) {
    plan::Plan plan = lit_by(300.0, 100.0, 4.0);
    plan.lamps.pop_back();
    const auto findings = lamp_findings(lighting_ratio, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_TRUE(says(findings[0].message, "is without fill; the plan asks for 4.0:1"))
        << findings[0].message;
    EXPECT_EQ(marks_of(plan).at(0).ratio, std::nullopt);
}

TEST(KeyToFill, AnOpenTargetAsksForNothing) {
    EXPECT_TRUE(lamp_findings(lighting_ratio, lit_by(900.0, 100.0, 0.0)).empty());
}

TEST(KeyToFill, AnUnlitFaceIsLeftToTheLevel) {
    plan::Plan plan = lit_room();
    plan.targets.lighting_ratio = 2.0;
    EXPECT_TRUE(lamp_findings(lighting_ratio, plan).empty());
    put_lamp_on_ada(plan, "back", LampRole::back, 180.0, 45.0, 2.0);
    EXPECT_TRUE(lamp_findings(lighting_ratio, plan).empty());
}

} // namespace throwline::checks
