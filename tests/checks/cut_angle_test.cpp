#include "checks/camera_checks.h"
#include "support/check_case.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

/// Two shots of ada at (5, 5) from 4 m away, the second turned about her by an angle.
plan::Plan turned_by(double angle_deg, double second_focal_mm = 20.0) {
    plan::Plan plan = small_room();
    put_shot(plan, "1A", Vec2{5.0, 1.0}, 20.0);
    const Vec2 at = Vec2{5.0, 5.0} + rotated(Vec2{0.0, -4.0}, Angle::degrees(angle_deg).rad());
    put_shot(plan, "1B", at, second_focal_mm);
    return plan;
}

} // namespace

TEST(CutAngle, ATurnOfMoreThanThirtyDegreesIsNotMentioned) {
    EXPECT_TRUE(found_by(cut_angle, turned_by(35.0)).empty());
}

TEST(CutAngle, ASmallTurnAtOneSizeIsACaution) {
    const auto findings = found_by(cut_angle, turned_by(23.575));
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_EQ(findings[0].shot.name, "1B");
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"camera 1", "ada"}));
    EXPECT_TRUE(says(findings[0].message, "by only 24°")) << findings[0].message;
}

TEST(CutAngle, ACutFromOnePlaceDoesNotTurnAtAll) {
    const auto findings = found_by(cut_angle, turned_by(0.0));
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_TRUE(says(findings[0].message, "does not turn the view of ada")) << findings[0].message;
}

TEST(CutAngle, AChangeOfTwoSizesNeedsNoTurn) {
    EXPECT_TRUE(found_by(cut_angle, turned_by(0.0, 60.0)).empty());
}

TEST(CutAngle, ShotsWithoutACommonSubjectAreNotCompared) {
    plan::Plan plan = turned_by(10.0);
    put_person(plan, "bo", Vec2{4.0, 5.0}, Angle::degrees(-90.0));
    plan.shots[1].subjects = {{"bo"}};
    EXPECT_TRUE(found_by(cut_angle, plan).empty());
}

TEST(CutAngle, APersonWhoMovesOnTurnsTheView) {
    plan::Plan plan = turned_by(0.0);
    plan.beats.emplace_back();
    plan.beats.back().id = {"2"};
    plan::Mark mark;
    mark.at = Vec2{7.0, 3.0};
    mark.faces = Angle::degrees(-90.0);
    plan.beats.back().marks[{"ada"}] = mark;
    plan.shots[1].beats = {{"2"}};
    plan.shots[1].aim = Vec3{7.0, 3.0, 1.5};
    EXPECT_TRUE(found_by(cut_angle, plan).empty());
}

RC_GTEST_PROP(CutAngle, TheSideOfTheTurnDoesNotMatter, ()) {
    const double angle_deg = *rc::gen::inRange(1, 45);
    RC_ASSERT(found_by(cut_angle, turned_by(angle_deg)).size()
              == found_by(cut_angle, turned_by(-angle_deg)).size());
    RC_ASSERT(found_by(cut_angle, turned_by(angle_deg)).size() == (angle_deg < 30.0 ? 1U : 0U));
}

} // namespace throwline::checks
