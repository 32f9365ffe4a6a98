#include "checks/light_checks.h"
#include "support/light_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;
using plan::LampRole;

namespace {

/// A soft square face of 1 x 1 m, 2 m straight in front of ada's face.
plan::Plan soft_key() {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 0.0, 0.0, 2.0, "test panel");
    return plan;
}

/// A hard key 2 m in front of ada and a flat that hides all of it.
plan::Plan hidden_lamp(LampRole role) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "one", role, 0.0, 0.0, 2.0);
    put_box(plan, "flat", Vec2{5.0, 4.0}, Vec3{1.0, 0.05, 3.0});
    return plan;
}

/// Half way to the panel a flat whose edge hides everything of the face to the right of a place on
/// it, metres from its middle, from the floor or a height up.
void hide_beyond(plan::Plan& plan, double on_face_m, double from_z_m = 0.0) {
    const double edge_x_m = ada_face().x() + on_face_m / 2.0;
    put_box(plan, "flat", Vec2{edge_x_m + 1.0, ada_face().y() - 1.0}, Vec3{2.0, 0.01, 3.0},
            from_z_m);
}

} // namespace

TEST(LampBlocked, AnOpenBeamIsNotMentioned) {
    const auto findings = lamp_findings(lamp_blocked, soft_key());
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(LampBlocked, AFlatThatHidesAKeyIsAnErrorSaidOnce) {
    plan::Plan plan = hidden_lamp(LampRole::key);
    const auto findings = lamp_findings(lamp_blocked, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].check, "beam-blocked");
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"one", "ada", "flat"}));
    EXPECT_EQ(findings[0].beat, beat_id("1"));
    EXPECT_TRUE(findings[0].shot.empty());
    EXPECT_DOUBLE_EQ(findings[0].weight, 1.0);
    EXPECT_EQ(findings[0].message,
              "100 % of lamp one is hidden from the face of ada in beat 1: flat 100 %.");
    EXPECT_TRUE(says(text_of(findings[0].working), "250 lx"));
    plan.units = UnitSystem::imperial;
    EXPECT_TRUE(says(text_of(lamp_findings(lamp_blocked, plan).at(0).working), "23 fc"));
}

TEST(LampBlocked, OnlyAHiddenKeyIsAnError) {
    for (const LampRole role : {LampRole::fill, LampRole::back}) {
        const auto findings = lamp_findings(lamp_blocked, hidden_lamp(role));
        ASSERT_EQ(findings.size(), 1U);
        EXPECT_EQ(findings[0].severity, Severity::caution);
    }
}

TEST(LampBlocked, LampsThatLightNoFaceMayBeHidden) {
    for (const LampRole role : {LampRole::background, LampRole::effect, LampRole::practical}) {
        EXPECT_TRUE(lamp_findings(lamp_blocked, hidden_lamp(role)).empty());
    }
}

TEST(LampBlocked, AFlatToTheMiddleHidesHalfOfASoftFace) {
    plan::Plan plan = soft_key();
    const double open_lx = marks_of(plan).at(0).facing_lx;
    hide_beyond(plan, 0.0);
    const auto findings = lamp_findings(lamp_blocked, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_NEAR(findings[0].weight, 0.5, 0.01);
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_TRUE(says(findings[0].message, "50 % of lamp key is hidden")) << findings[0].message;
    EXPECT_NEAR(marks_of(plan).at(0).facing_lx, open_lx / 2.0, 0.01 * open_lx);
}

TEST(LampBlocked, LessThanHalfOfAKeyIsACaution) {
    plan::Plan plan = soft_key();
    hide_beyond(plan, 0.125);
    const auto findings = lamp_findings(lamp_blocked, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_NEAR(findings[0].weight, 0.375, 0.01);
    EXPECT_EQ(findings[0].severity, Severity::caution);
}

// The outer eighth of the face, and the upper half of that: 12.5 % and about 6 %.
TEST(LampBlocked, LessThanATenthIsNotMentioned) {
    plan::Plan eighth = soft_key();
    hide_beyond(eighth, 0.375);
    EXPECT_EQ(lamp_findings(lamp_blocked, eighth).size(), 1U);
    plan::Plan sixteenth = soft_key();
    hide_beyond(sixteenth, 0.375, ada_face().z());
    const auto findings = lamp_findings(lamp_blocked, sixteenth);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(LampBlocked, ALampThatDoesNotBurnIsNotMissed) {
    plan::Plan plan = hidden_lamp(LampRole::key);
    plan.beats.emplace_back().id = {"2"};
    plan.lamps[0].beats = {{"2"}};
    const auto findings = lamp_findings(lamp_blocked, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].beat, beat_id("2"));
}

TEST(LampBlocked, APersonInTheBeamIsNamed) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 0.0, 0.0, 3.0);
    put_person(plan, "bo", Vec2{5.0, 3.4}, Angle::degrees(90.0));
    const auto findings = lamp_findings(lamp_blocked, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"key", "ada", "bo"}));
}

} // namespace throwline::checks
