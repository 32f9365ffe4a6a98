#include "checks/mark_light.h"

#include "checks/light_text.h"
#include "support/light_case.h"

#include <cmath>
#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;
using plan::LampRole;

namespace {

/// A spot whose axis passes ada's face by an angle. Its beam is 20 and its field 30 degrees wide.
LampAtMark spot_off_axis(double off_axis_deg) {
    plan::Plan plan = lit_room();
    const Vec3 bright = place_from(ada_face(), 0.0, 0.0, 2.0);
    const Vec3 aside{2.0 * std::tan(Angle::degrees(off_axis_deg).rad()), 0.0, 0.0};
    put_lamp(plan, "key", LampRole::key, bright, ada_face() + aside);
    return marks_of(plan).at(0).lamps.at(0);
}

/// A key from 30 degrees to camera right and 40 degrees up, seen from ada's eyes.
plan::Plan key_from_the_right() {
    plan::Plan plan = lit_room();
    put_lamp(plan, "key", LampRole::key, place_from(ada_eyes(), 30.0, 40.0, 2.0), ada_face());
    return plan;
}

} // namespace

TEST(MarkLight, BeamAndFieldEndAtHalfTheirAngles) {
    EXPECT_TRUE(spot_off_axis(9.9).in_beam);
    EXPECT_FALSE(spot_off_axis(10.1).in_beam);
    EXPECT_TRUE(spot_off_axis(14.9).in_field);
    EXPECT_FALSE(spot_off_axis(15.1).in_field);
}

TEST(MarkLight, AFlatInABeamTakesItsLightAndIsNamed) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "key", LampRole::key, 0.0, 0.0, 2.0);
    put_box(plan, "flat", Vec2{5.0, 4.0}, Vec3{1.0, 0.05, 3.0});
    const LampAtMark at = marks_of(plan).at(0).lamps.at(0);
    EXPECT_TRUE(at.in_beam);
    EXPECT_EQ(at.facing_lx, 0.0);
    EXPECT_NEAR(at.open_facing_lx, 250.0, 1e-6);
    const RaisedPlan raised = raised_plan(plan, lamp_catalogue());
    EXPECT_EQ(blockers_text(raised.shots.at(0).stage, at.light), "flat 100 %");
}

TEST(MarkLight, AFaceBehindABarnDoorIsInNoBeam) {
    plan::Plan plan = lit_room();
    const Vec3 bright = place_from(ada_face(), 0.0, 0.0, 2.0);
    put_lamp(plan, "key", LampRole::key, bright, ada_face() - Vec3{0.2, 0.0, 0.0});
    EXPECT_TRUE(marks_of(plan).at(0).lamps.at(0).in_beam);
    plan.lamps[0].cut.right = 1.0;
    EXPECT_FALSE(marks_of(plan).at(0).lamps.at(0).in_beam);
    EXPECT_FALSE(marks_of(plan).at(0).lamps.at(0).in_field);
}

TEST(MarkLight, DirectionsAreTakenFromTheCamera) {
    const LampAtMark at = marks_of(key_from_the_right()).at(0).lamps.at(0);
    ASSERT_TRUE(at.direction.has_value());
    EXPECT_NEAR(at.direction->azimuth.deg(), 30.0, 1e-6);
    EXPECT_NEAR(at.direction->elevation.deg(), 40.0, 1e-6);
}

// Straight down from h metres a cone of 20 degrees is 2 h tan 10 degrees across.
TEST(MarkLight, APoolStraightDownIsRound) {
    plan::Plan plan = lit_room();
    const Vec3 above = ada_face() + Vec3{0.0, 0.0, 2.0};
    put_lamp(plan, "top", LampRole::effect, above, ada_face());
    const LampAtMark at = marks_of(plan).at(0).lamps.at(0);
    ASSERT_TRUE(at.beam_on_floor.has_value());
    ASSERT_TRUE(at.field_at_face.has_value());
    const double tan_half_beam = std::tan(Angle::degrees(10.0).rad());
    const double tan_half_field = std::tan(Angle::degrees(15.0).rad());
    EXPECT_NEAR(at.beam_on_floor->length().m(), 2.0 * above.z() * tan_half_beam, 1e-6);
    EXPECT_NEAR(at.beam_on_floor->width().m(), 2.0 * above.z() * tan_half_beam, 1e-6);
    EXPECT_NEAR(at.field_at_face->width().m(), 2.0 * 2.0 * tan_half_field, 1e-6);
}

TEST(MarkLight, ALampBelowTheFaceHasNoPoolThere) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "low", LampRole::effect, 0.0, -30.0, 2.0);
    EXPECT_FALSE(marks_of(plan).at(0).lamps.at(0).beam_at_face.has_value());
}

TEST(MarkLight, OnlySubjectsOnTheFloorAreMarks) {
    plan::Plan plan = lit_room();
    put_person(plan, "bo", Vec2{3.0, 5.0}, Angle::degrees(-90.0));
    EXPECT_EQ(marks_of(plan).size(), 1U);
    plan.shots[0].subjects = {person_id("bo"), person_id("ada")};
    const auto marks = marks_of(plan);
    ASSERT_EQ(marks.size(), 2U);
    EXPECT_EQ(marks[0].person, person_id("bo"));
    plan.beats[0].marks[person_id("bo")] = plan::OffFloor{};
    EXPECT_EQ(marks_of(plan).size(), 1U);
}

// 1 fc = 10.764 lx.
TEST(LightText, LevelsAreInThePlansUnits) {
    EXPECT_EQ(level_text(420.4, UnitSystem::metric), "420 lx");
    EXPECT_EQ(level_text(420.4, UnitSystem::imperial), "39 fc");
    EXPECT_EQ(level_text(9.94, UnitSystem::metric), "9.9 lx");
    EXPECT_EQ(level_text(50.0, UnitSystem::imperial), "4.6 fc");
    EXPECT_EQ(level_text(0.0, UnitSystem::metric), "0.0 lx");
    EXPECT_EQ(intensity_text(12000.0), "12000 cd");
}

// The key gives 1000 x cos 40 / 0.9² = 946 lx and the fill 1000 / 2² = 250 lx; the faint one's 9 lx
// are under a hundredth of all.
TEST(LightText, TermsNameTheStrongestLampFirstAndNoFaintOne) {
    plan::Plan plan = lit_room();
    put_lamp_on_ada(plan, "fill", LampRole::fill, 0.0, 0.0, 2.0);
    put_lamp_on_ada(plan, "faint", LampRole::effect, 40.0, 0.0, 1.0).level = setting_for_lx(9.0);
    put_lamp_on_ada(plan, "key", LampRole::key, -40.0, 0.0, 0.9);
    const RaisedPlan raised = raised_plan(plan, lamp_catalogue());
    const auto terms =
        lamp_terms(marks_of(plan).at(0), raised.shots.at(0).stage, UnitSystem::metric);
    ASSERT_EQ(terms.size(), 2U);
    EXPECT_EQ(terms[0].symbol, "lamp key");
    EXPECT_EQ(terms[0].value, "946 lx");
    EXPECT_EQ(terms[1].symbol, "lamp fill");
    EXPECT_EQ(terms[1].value, "250 lx");
    EXPECT_TRUE(says(terms[1].name, "fill, throw 2.00 m, 0° off axis, 1000 cd")) << terms[1].name;
}

} // namespace throwline::checks
