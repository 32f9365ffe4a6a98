#include "checks/light_checks.h"
#include "support/light_case.h"

#include <cmath>
#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;
using plan::LampRole;

namespace {

/// A wide lamp straight in front, so that the steps towards it and away decide.
plan::Plan lit_from(double distance_m) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 0.0, 0.0, distance_m, "test flood");
    return plan;
}

} // namespace

// 1000 / 1.2² = 694 lx, 1000 / 1.8² = 309 lx, 2 log2(1.8 / 1.2) = 1.17 stops.
TEST(UnevenLight, ANearLampIsFoundWithBothLevels) {
    const auto findings = lamp_findings(uneven_light, lit_from(1.5));
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].check, "uneven-light");
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_EQ(findings[0].shot, shot_id("1A"));
    EXPECT_EQ(findings[0].things, std::vector<std::string>{"ada"});
    EXPECT_NEAR(findings[0].weight, 2.0 * std::log2(1.5), 1e-6);
    EXPECT_NEAR(findings[0].at.y(), ada_face().y() + 0.3, 1e-6);
    EXPECT_EQ(findings[0].message, "The level on the face of ada changes by 1.17 stops within 0.30 "
                                   "m of the mark in shot 1A, between 309 lx and 694 lx.");
}

// 28.7 and 64.5 fc; 0.3 m is 11.81 in.
TEST(UnevenLight, AnImperialPlanIsToldInFeetAndFootCandles) {
    plan::Plan plan = lit_from(1.5);
    plan.units = UnitSystem::imperial;
    const auto findings = lamp_findings(uneven_light, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_TRUE(says(findings[0].message, "within 0'-11 3/4\" of")) << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "29 fc and 65 fc")) << findings[0].message;
}

// (d + 0.3) / (d - 0.3) = sqrt 2 at d = 1.748 m.
TEST(UnevenLight, OneStopIsTheLimit) {
    EXPECT_EQ(lamp_findings(uneven_light, lit_from(1.74)).size(), 1U);
    const auto findings = lamp_findings(uneven_light, lit_from(1.76));
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(UnevenLight, ANarrowBeamIsUnevenToTheSides) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 0.0, 0.0, 1.9);
    const auto findings = lamp_findings(uneven_light, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_NEAR(std::abs(findings[0].at.x() - ada_face().x()), 0.3, 1e-6);
}

// The axis passes 0.2 m beside the face and the door is closed to it: half a step further the other
// way everything is dark.
TEST(UnevenLight, AStepIntoFullShadowIsFound) {
    plan::Plan plan = lit_from(2.5);
    ASSERT_TRUE(lamp_findings(uneven_light, plan).empty());
    plan.lamps[0].aim = Vec3{ada_face() - Vec3{0.2, 0.0, 0.0}};
    plan.lamps[0].cut.left = 1.0;
    const auto findings = lamp_findings(uneven_light, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_TRUE(says(findings[0].message, "falls to nothing")) << findings[0].message;
    EXPECT_NEAR(findings[0].at.x(), ada_face().x() - 0.3, 1e-6);
}

TEST(UnevenLight, NoLightAtAllIsLeftToTheLevel) {
    EXPECT_TRUE(lamp_findings(uneven_light, lit_room()).empty());
    plan::Plan plan = lit_from(1.5);
    plan.beats.emplace_back().id = {"2"};
    plan.lamps[0].beats = {{"2"}};
    EXPECT_TRUE(lamp_findings(uneven_light, plan).empty());
}

} // namespace throwline::checks
