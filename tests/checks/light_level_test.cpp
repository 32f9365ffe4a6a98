#include "checks/light_checks.h"
#include "support/light_case.h"

#include <cmath>
#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;
using plan::LampRole;

namespace {

/// A key 1 m straight in front of ada's face that gives a level there.
plan::Plan lit_with_lx(double level_lx) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 0.0, 0.0, 1.0).level = setting_for_lx(level_lx);
    return plan;
}

} // namespace

TEST(LightLevel, TheLevelThatTheStopAsksForIsNotMentioned) {
    const auto findings = lamp_findings(level_at_marks, lit_with_lx(250.0));
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(LightLevel, AStopEitherWayIsAllowedAndNoMore) {
    for (const double allowed_lx : {126.0, 499.0}) {
        const auto findings = lamp_findings(level_at_marks, lit_with_lx(allowed_lx));
        EXPECT_TRUE(findings.empty()) << messages(findings);
    }
    for (const double wrong_lx : {124.0, 501.0}) {
        const auto findings = lamp_findings(level_at_marks, lit_with_lx(wrong_lx));
        ASSERT_EQ(findings.size(), 1U) << wrong_lx;
        EXPECT_EQ(findings[0].severity, Severity::caution);
    }
}

// T8 asks for 250 x 64 / (800 x 0.02) = 1000 lx; 1000 cd 2 m away give 250 lx.
TEST(LightLevel, TwoStopsUnderIsSaidWithBothLevels) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 0.0, 0.0, 2.0);
    plan.shots[0].stop = 8.0;
    const auto findings = lamp_findings(level_at_marks, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].check, "light-level");
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_EQ(findings[0].shot, shot_id("1A"));
    EXPECT_EQ(findings[0].beat, beat_id("1"));
    EXPECT_EQ(findings[0].things, std::vector<std::string>{"ada"});
    EXPECT_NEAR(findings[0].weight, 2.0, 1e-6);
    EXPECT_EQ(
        findings[0].message,
        "The face of ada gets 250 lx in shot 1A, 2 stops under the 1000 lx that T8 asks for.");
}

// 1000 lx = 92.9 fc and 250 lx = 23.2 fc.
TEST(LightLevel, AnImperialPlanIsToldInFootCandles) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 0.0, 0.0, 2.0);
    plan.shots[0].stop = 8.0;
    plan.units = UnitSystem::imperial;
    const auto findings = lamp_findings(level_at_marks, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].message,
              "The face of ada gets 23 fc in shot 1A, 2 stops under the 93 fc that T8 asks for.");
    EXPECT_TRUE(says(text_of(findings[0].working), "93 fc"));
    EXPECT_FALSE(says(text_of(findings[0].working), " lx"));
}

TEST(LightLevel, ThreeStopsUnderCountsAsUnlit) {
    const auto dim = lamp_findings(level_at_marks, lit_with_lx(31.5));
    const auto unlit = lamp_findings(level_at_marks, lit_with_lx(31.0));
    ASSERT_EQ(dim.size(), 1U);
    ASSERT_EQ(unlit.size(), 1U);
    EXPECT_EQ(dim[0].severity, Severity::caution);
    EXPECT_EQ(unlit[0].severity, Severity::error);
}

TEST(LightLevel, SpeedTimeAndMeterConstantChangeWhatIsNeeded) {
    plan::Plan plan = lit_with_lx(250.0);
    EXPECT_DOUBLE_EQ(marks_of(plan).at(0).needed_lx, 250.0);
    plan.cameras[0].iso = 400.0;
    EXPECT_DOUBLE_EQ(marks_of(plan).at(0).needed_lx, 500.0);
    plan.cameras[0].exposure_s = 0.01;
    EXPECT_DOUBLE_EQ(marks_of(plan).at(0).needed_lx, 1000.0);
    plan.targets.meter_constant = 340.0;
    EXPECT_DOUBLE_EQ(marks_of(plan).at(0).needed_lx, 1360.0);
}

// E = I cos(right) cos(up) / d² on the face and I sin(up) / d² level.
TEST(LightLevel, LampsFollowTheInverseSquareAndCosineLaws) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 30.0, 40.0, 2.0);
    put_lamp_on_ada(plan, "fill", LampRole::fill, -45.0, 0.0, 2.5);
    const MarkLight mark = marks_of(plan).at(0);
    const double key_lx = 1000.0 / 4.0 * std::sqrt(0.75) * std::cos(Angle::degrees(40.0).rad());
    const double fill_lx = 1000.0 / 6.25 * std::sqrt(0.5);
    ASSERT_EQ(mark.lamps.size(), 2U);
    EXPECT_NEAR(mark.lamps[0].facing_lx, key_lx, 1e-6 * key_lx);
    EXPECT_NEAR(mark.lamps[1].facing_lx, fill_lx, 1e-6 * fill_lx);
    EXPECT_NEAR(mark.facing_lx, key_lx + fill_lx, 1e-3);
    EXPECT_NEAR(mark.horizontal_lx, 250.0 * std::sin(Angle::degrees(40.0).rad()), 1e-3);
    ASSERT_TRUE(mark.ratio);
    EXPECT_NEAR(*mark.ratio, (key_lx + fill_lx) / fill_lx, 1e-6);
}

TEST(LightLevel, HalfTheBeamOffTheAxisGivesHalfTheLight) {
    plan::Plan plan = lit_room();
    const Vec3 bright = place_from(ada_face(), 0.0, 0.0, 2.0);
    const Vec3 aside{2.0 * std::tan(Angle::degrees(10.0).rad()), 0.0, 0.0};
    put_lamp(plan, "key", LampRole::key, bright, ada_face() + aside);
    EXPECT_NEAR(marks_of(plan).at(0).facing_lx, 125.0, 1e-3);
}

TEST(LightLevel, ABackLightGivesNothingToTheFaceButCountsLevel) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "back", LampRole::back, 180.0, 45.0, 2.0);
    const MarkLight mark = marks_of(plan).at(0);
    EXPECT_EQ(mark.facing_lx, 0.0);
    EXPECT_NEAR(mark.horizontal_lx, 250.0 * std::sqrt(0.5), 1e-3);
    const auto findings = lamp_findings(level_at_marks, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].message, "No lamp reaches the face of ada in shot 1A.");
}

TEST(LightLevel, APlanWithoutLampsIsNotToldOfLight) {
    EXPECT_TRUE(lamp_findings(level_at_marks, lit_room()).empty());
    EXPECT_EQ(marks_of(lit_room()).at(0).stops_over, std::nullopt);
}

TEST(LightLevel, ALampThatDoesNotBurnInABeatIsMissedInThatBeatOnly) {
    plan::Plan plan = lit_with_lx(250.0);
    plan.beats.emplace_back().id = {"2"};
    plan.shots[0].beats = {{"1"}, {"2"}};
    plan.lamps[0].beats = {{"2"}};
    const auto findings = lamp_findings(level_at_marks, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].beat, beat_id("1"));
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].message, "No lamp reaches the face of ada in shot 1A at beat 1.");
}

// The axis passes 0.2 m to the lamp's left of the face, so that only the right door reaches it.
TEST(LightLevel, AClosedBarnDoorTakesTheLightFromItsOwnSideOnly) {
    plan::Plan plan = lit_room();
    const Vec3 bright = place_from(ada_face(), 0.0, 0.0, 2.0);
    put_lamp(plan, "key", LampRole::key, bright, ada_face() - Vec3{0.2, 0.0, 0.0});
    const double open_lx = marks_of(plan).at(0).facing_lx;
    ASSERT_GT(open_lx, 125.0);
    plan.lamps[0].cut.left = 1.0;
    EXPECT_DOUBLE_EQ(marks_of(plan).at(0).facing_lx, open_lx);
    plan.lamps[0].cut = {};
    plan.lamps[0].cut.right = 1.0;
    EXPECT_EQ(marks_of(plan).at(0).facing_lx, 0.0);
    EXPECT_TRUE(lamp_findings(lamp_blocked, plan).empty());
    EXPECT_EQ(lamp_findings(level_at_marks, plan).size(), 1U);
}

TEST(LightLevel, AWholeFlatInTheBeamLeavesTheFaceDark) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 0.0, 0.0, 2.0);
    put_box(plan, "flat", Vec2{5.0, 4.0}, Vec3{1.0, 0.05, 3.0});
    const auto findings = lamp_findings(level_at_marks, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_NEAR(marks_of(plan).at(0).lamps.at(0).open_facing_lx, 250.0, 1e-6);
}

} // namespace throwline::checks
