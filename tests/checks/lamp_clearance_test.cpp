#include "checks/light_checks.h"
#include "support/light_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;
using plan::LampRole;

namespace {

/// A spot that asks for 1 m straight in front of ada's face.
plan::Plan lit_from(double distance_m) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 0.0, 0.0, distance_m);
    return plan;
}

/// A spot 2.5 m before ada, the clear floor about it, and a thin flat before (+) or behind (-) its
/// bright face.
plan::Plan with_flat(double ahead_m) {
    plan::Plan plan = lit_from(2.5);
    put_box(plan, "flat", Vec2{5.0, ada_face().y() - 2.5 + ahead_m}, Vec3{2.0, 0.02, 3.0});
    return plan;
}

} // namespace

TEST(LampClearance, AHotLampTooNearToAFaceIsAnError) {
    const auto findings = lamp_findings(lamp_clearance, lit_from(0.8));
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].check, "lamp-clearance");
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"key", "ada"}));
    EXPECT_EQ(findings[0].beat, beat_id("1"));
    EXPECT_NEAR(findings[0].weight, 1.2, 0.01);
    EXPECT_EQ(findings[0].message,
              "Lamp key is 0.80 m from ada; its kind asks for 1.00 m. The maker's instructions "
              "decide.");
}

TEST(LampClearance, AnImperialPlanIsToldInFeet) {
    plan::Plan plan = lit_from(0.8);
    plan.units = UnitSystem::imperial;
    const auto findings = lamp_findings(lamp_clearance, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_TRUE(says(findings[0].message, "asks for 3'-3 1/4\"")) << findings[0].message;
}

TEST(LampClearance, TheClearanceIsTheLimit) {
    EXPECT_EQ(lamp_findings(lamp_clearance, lit_from(0.99)).size(), 1U);
    const auto findings = lamp_findings(lamp_clearance, lit_from(1.02));
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(LampClearance, SomebodyBesideTheLampCounts) {
    plan::Plan plan = lit_from(2.5);
    put_person(plan, "bo", Vec2{5.6, ada_face().y() - 2.5}, Angle::degrees(180.0),
               plan::PersonKind::crew);
    const auto findings = lamp_findings(lamp_clearance, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"key", "bo"}));
}

// The near side of the flat is 10 mm before its middle.
TEST(LampClearance, AFlatInTheBeamCounts) {
    const auto findings = lamp_findings(lamp_clearance, with_flat(0.51));
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"key", "flat"}));
    EXPECT_TRUE(says(findings[0].message, "is 0.50 m from flat")) << findings[0].message;
    EXPECT_EQ(lamp_findings(lamp_clearance, with_flat(1.0)).size(), 1U);
    EXPECT_TRUE(lamp_findings(lamp_clearance, with_flat(1.02)).empty());
}

TEST(LampClearance, AFlatBehindTheLampDoesNot) {
    const auto findings = lamp_findings(lamp_clearance, with_flat(-0.4));
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(LampClearance, AWallInTheBeamCounts) {
    plan::Plan plan = small_room();
    put_lamp(plan, "one", LampRole::background, Vec3{2.0, 7.4, 2.0}, Vec3{2.0, 8.0, 2.0});
    const auto findings = lamp_findings(lamp_clearance, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_TRUE(says(findings[0].message, "is 0.60 m from wall 3")) << findings[0].message;
}

TEST(LampClearance, ACoolLampMayBeNear) {
    plan::Plan plan = lit_from(0.8);
    plan.lamps[0].instrument = "test flood";
    EXPECT_TRUE(lamp_findings(lamp_clearance, plan).empty());
}

TEST(LampClearance, TheNearestOfAllBeatsIsTold) {
    plan::Plan plan = lit_from(0.9);
    plan::Beat& second = plan.beats.emplace_back();
    second.id = {"2"};
    plan::Mark mark;
    mark.at = Vec2{5.0, 4.5};
    mark.faces = Angle::degrees(-90.0);
    second.marks[person_id("ada")] = mark;
    const auto findings = lamp_findings(lamp_clearance, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].beat, beat_id("2"));
    EXPECT_TRUE(says(findings[0].message, "is 0.40 m from ada")) << findings[0].message;
}

TEST(LampClearance, AFlatThatIsNearerHidesNobodyFromTheRule) {
    plan::Plan plan = with_flat(0.3);
    put_person(plan, "bo", Vec2{5.6, ada_face().y() - 2.5}, Angle::degrees(180.0));
    const auto findings = lamp_findings(lamp_clearance, plan);
    ASSERT_EQ(findings.size(), 2U) << messages(findings);
    EXPECT_TRUE(says(messages(findings), "from bo"));
    EXPECT_TRUE(says(messages(findings), "from flat"));
}

} // namespace throwline::checks
