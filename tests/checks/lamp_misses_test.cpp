#include "checks/light_checks.h"
#include "support/light_case.h"

#include <cmath>
#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;
using plan::LampRole;

namespace {

/// A spot (half of the field is 15 degrees) 2 m in front of ada, aimed beside her face.
plan::Plan aimed_off(double degrees, LampRole role = LampRole::key) {
    plan::Plan plan = lit_room();
    const Vec3 aside{2.0 * std::tan(Angle::degrees(degrees).rad()), 0.0, 0.0};
    put_lamp(plan, "one", role, place_from(ada_face(), 0.0, 0.0, 2.0), ada_face() + aside);
    return plan;
}

} // namespace

TEST(LampMisses, TheEdgeOfTheFieldIsTheLimit) {
    EXPECT_TRUE(lamp_findings(lamp_misses, aimed_off(14.9)).empty());
    EXPECT_EQ(lamp_findings(lamp_misses, aimed_off(15.1)).size(), 1U);
}

TEST(LampMisses, ALampThatMissesEverybodyIsFoundWithTheNearest) {
    const plan::Plan plan = aimed_off(40.0);
    const auto findings = lamp_findings(lamp_misses, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].check, "lamp-aim");
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_TRUE(findings[0].shot.empty());
    EXPECT_EQ(findings[0].things, std::vector<std::string>{"one"});
    EXPECT_NEAR(findings[0].weight, Angle::degrees(40.0).rad(), 1e-6);
    EXPECT_EQ(findings[0].message, "Lamp one takes in nobody's face in any beat; the nearest, ada "
                                   "in beat 1, stands 40° off its axis.");
    EXPECT_TRUE(says(text_of(findings[0].working), "15°"));
}

TEST(LampMisses, OneFaceInOneBeatIsEnough) {
    plan::Plan plan = aimed_off(40.0);
    const double aside_m = 2.0 * std::tan(Angle::degrees(40.0).rad());
    plan::Beat& second = plan.beats.emplace_back();
    second.id = {"2"};
    plan::Mark mark;
    mark.at = Vec2{5.0 + aside_m, 5.0};
    mark.faces = Angle::degrees(-90.0);
    second.marks[person_id("ada")] = mark;
    EXPECT_TRUE(lamp_findings(lamp_misses, plan).empty());
    plan.lamps[0].beats = {{"1"}};
    EXPECT_EQ(lamp_findings(lamp_misses, plan).size(), 1U);
}

TEST(LampMisses, LampsThatLightNoFaceMayMiss) {
    for (const LampRole role : {LampRole::background, LampRole::effect, LampRole::practical}) {
        EXPECT_TRUE(lamp_findings(lamp_misses, aimed_off(40.0, role)).empty());
    }
    for (const LampRole role : {LampRole::fill, LampRole::back}) {
        EXPECT_EQ(lamp_findings(lamp_misses, aimed_off(40.0, role)).size(), 1U);
    }
}

TEST(LampMisses, CrewAreNotLit) {
    plan::Plan plan = aimed_off(0.0);
    plan.people[0].kind = plan::PersonKind::crew;
    put_person(plan, "bo", Vec2{8.0, 5.0}, Angle::degrees(-90.0));
    const auto findings = lamp_findings(lamp_misses, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_TRUE(says(findings[0].message, "bo in beat 1")) << findings[0].message;
}

TEST(LampMisses, APlanWithoutLampsOrBeatsHasNothingToMiss) {
    EXPECT_TRUE(lamp_findings(lamp_misses, lit_room()).empty());
    plan::Plan plan = aimed_off(40.0);
    plan.beats.clear();
    plan.shots.clear();
    EXPECT_TRUE(lamp_findings(lamp_misses, plan).empty());
}

} // namespace throwline::checks
