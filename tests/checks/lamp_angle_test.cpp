#include "checks/light_checks.h"
#include "support/light_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;
using plan::LampRole;

namespace {

/// A lamp 2 m from ada's eyes, on her face.
void put_seen_from_eyes(plan::Plan& plan, const std::string& name, LampRole role, double right_deg,
                        double up_deg, double distance_m = 2.0) {
    put_lamp(plan, name, role, place_from(ada_eyes(), right_deg, up_deg, distance_m), ada_face());
}

std::string told_of(LampRole role, double right_deg, double up_deg) {
    plan::Plan plan = lit_room();
    put_seen_from_eyes(plan, "one", role, right_deg, up_deg);
    return messages(lamp_findings(lamp_angle, plan));
}

} // namespace

TEST(LampAngle, UsualPlacesAreNotMentioned) {
    plan::Plan plan = lit_room();
    put_seen_from_eyes(plan, "key", LampRole::key, 35.0, 35.0);
    put_seen_from_eyes(plan, "fill", LampRole::fill, -40.0, 15.0);
    put_seen_from_eyes(plan, "back", LampRole::back, 170.0, 50.0);
    const auto findings = lamp_findings(lamp_angle, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(LampAngle, AFlatKeyIsANoteWithItsAngles) {
    plan::Plan plan = lit_room();
    put_seen_from_eyes(plan, "one", LampRole::key, -10.0, 35.0);
    const auto findings = lamp_findings(lamp_angle, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].check, "lamp-angle");
    EXPECT_EQ(findings[0].severity, Severity::note);
    EXPECT_EQ(findings[0].shot, shot_id("1A"));
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"one", "ada"}));
    EXPECT_EQ(findings[0].message,
              "Lamp one on ada in shot 1A: the key stands within 15 degrees of the camera and "
              "flattens the face (10° to camera left, 35° up).");
}

TEST(LampAngle, EachLimitOfAKeyIsKept) {
    EXPECT_TRUE(says(told_of(LampRole::key, 14.9, 35.0), "flattens the face"));
    EXPECT_FALSE(says(told_of(LampRole::key, 15.1, 35.0), "flattens the face"));
    EXPECT_TRUE(says(told_of(LampRole::key, -60.1, 35.0), "more than 60 degrees"));
    EXPECT_FALSE(says(told_of(LampRole::key, -59.9, 35.0), "more than 60 degrees"));
    EXPECT_TRUE(says(told_of(LampRole::key, 35.0, 50.1), "eye sockets dark"));
    EXPECT_FALSE(says(told_of(LampRole::key, 35.0, 49.9), "eye sockets dark"));
    EXPECT_TRUE(says(told_of(LampRole::key, 35.0, 19.9), "throws shadows"));
    EXPECT_FALSE(says(told_of(LampRole::key, 35.0, 20.1), "throws shadows"));
    EXPECT_EQ(told_of(LampRole::key, 30.1, 30.1), "");
    EXPECT_TRUE(says(told_of(LampRole::key, 29.9, 30.1), "outside the usual range"));
}

TEST(LampAngle, ALowBackLightMayFlare) {
    EXPECT_TRUE(says(told_of(LampRole::back, 180.0, 29.9), "may flare"));
    EXPECT_FALSE(says(told_of(LampRole::back, 180.0, 30.1), "may flare"));
}

TEST(LampAngle, AFillBesideTheKeyIsFound) {
    plan::Plan plan = lit_room();
    put_seen_from_eyes(plan, "key", LampRole::key, 35.0, 35.0);
    put_seen_from_eyes(plan, "fill", LampRole::fill, 20.0, 15.0);
    const auto findings = lamp_findings(lamp_angle, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].things.front(), "fill");
    EXPECT_TRUE(says(findings[0].message, "same side of the camera")) << findings[0].message;
}

TEST(LampAngle, OnlyTheStrongestLampOfARoleIsJudged) {
    plan::Plan plan = lit_room();
    put_seen_from_eyes(plan, "near", LampRole::key, 35.0, 35.0, 1.5);
    put_seen_from_eyes(plan, "far", LampRole::key, -80.0, 35.0, 2.5);
    EXPECT_TRUE(lamp_findings(lamp_angle, plan).empty());
}

TEST(LampAngle, ALampThatDoesNotBurnOrReachHasNoAngle) {
    plan::Plan unlit = lit_room();
    put_seen_from_eyes(unlit, "one", LampRole::key, 0.0, 0.0);
    EXPECT_EQ(lamp_findings(lamp_angle, unlit).size(), 2U);
    unlit.beats.emplace_back().id = {"2"};
    unlit.lamps[0].beats = {{"2"}};
    EXPECT_TRUE(lamp_findings(lamp_angle, unlit).empty());
    plan::Plan aside = lit_room();
    put_lamp(aside, "one", LampRole::key, place_from(ada_eyes(), 0.0, 0.0, 2.0),
             ada_face() + Vec3{2.0, 0.0, 0.0});
    EXPECT_TRUE(lamp_findings(lamp_angle, aside).empty());
    EXPECT_TRUE(lamp_findings(lamp_angle, lit_room()).empty());
}

} // namespace throwline::checks
