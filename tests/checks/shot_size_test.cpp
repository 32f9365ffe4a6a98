#include "checks/camera_checks.h"
#include "checks/subject_frame.h"
#include "support/check_case.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

/// Lens and aim level at a height, 4 m from the mark.
plan::Plan level_shot(double height_m, double focal_mm, ShotSize wanted) {
    plan::Plan plan = small_room();
    plan::Shot& shot = put_shot(plan, "1A", Vec2{5.0, 1.0}, focal_mm);
    shot.height = Length::metres(height_m);
    shot.aim = Vec3{5.0, 5.0, height_m};
    shot.size = wanted;
    return plan;
}

} // namespace

// The head's vertical stands 4 m away: at 28 mm the frame is 0.77 m high there, and centred on 1.39
// m its lower edge cuts at 1.005 m = 0.591 of 1.70 m: a medium.
TEST(ShotSize, TheWantedSizeIsNotMentioned) {
    const auto findings = found_by(shot_size, level_shot(1.39, 28.0, ShotSize::medium));
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(ShotSize, OneStepOffIsACaution) {
    const plan::Plan plan = level_shot(1.39, 28.0, ShotSize::medium_close_up);
    const auto findings = found_by(shot_size, plan);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_EQ(findings[0].shot.name, "1A");
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"camera 1", "ada"}));
    EXPECT_TRUE(
        says(findings[0].message, "gives a medium of ada where a medium close-up is wanted"))
        << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "0.77 m high")) << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "would do")) << findings[0].message;
}

TEST(ShotSize, TwoStepsOffAreAnError) {
    const auto findings = found_by(shot_size, level_shot(1.39, 28.0, ShotSize::close_up));
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].severity, Severity::error);
}

TEST(ShotSize, AShotWithoutAWantedSizeIsNotJudged) {
    plan::Plan plan = level_shot(1.39, 28.0, ShotSize::medium);
    plan.shots[0].size.reset();
    EXPECT_TRUE(found_by(shot_size, plan).empty());
}

TEST(ShotSize, SomebodyWhoLiesIsNotMeasured) {
    plan::Plan plan = level_shot(0.5, 28.0, ShotSize::close_up);
    std::get<plan::Mark>(plan.beats[0].marks.at({"ada"})).pose = plan::Pose::lie;
    EXPECT_TRUE(found_by(shot_size, plan).empty());
}

TEST(ShotSize, OneSubjectOfTheWantedSizeIsEnough) {
    plan::Plan plan = level_shot(1.39, 28.0, ShotSize::medium);
    put_person(plan, "bo", Vec2{5.5, 7.0}, Angle::degrees(-90.0));
    plan.shots[0].subjects = {{"bo"}, {"ada"}};
    const auto findings = found_by(shot_size, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

// Heights of the frame's edges are taken on the vertical through the head, by similar triangles: a
// lens 1.5 m high, 4 m away, tilted down by t, has its lower edge at 1.5 - 4 tan(t + v / 2).
RC_GTEST_PROP(ShotSize, TiltedFramesCutWhereTheEdgeRaysPass, ()) {
    const double focal_mm = *rc::gen::inRange(80, 400) / 10.0;
    const double aim_z_m = *rc::gen::inRange(30, 250) / 100.0;
    plan::Plan plan = small_room();
    put_shot(plan, "1A", Vec2{5.0, 1.0}, focal_mm).aim = Vec3{5.0, 5.0, aim_z_m};
    const RaisedPlan raised = raised_plan(plan, test_catalogue());
    RC_ASSERT(raised.shots.at(0).view.has_value());
    const stage::ShotView& view = *raised.shots[0].view;
    const stage::Figure& ada = raised.shots[0].stage.figures.at(0);
    const auto frame = subject_frame(view, ada);
    RC_ASSERT(frame.has_value());
    const double away_m = ada.crown.y() - view.pose.lens.y();
    const double tilt = std::atan2(aim_z_m - 1.5, 4.0);
    const double half = std::atan(view.frame.tan_half_v());
    RC_ASSERT(std::abs(frame->bottom_z_m - (1.5 + away_m * std::tan(tilt - half))) < 1e-6);
    RC_ASSERT(std::abs(frame->top_z_m - (1.5 + away_m * std::tan(tilt + half))) < 1e-6);
}

} // namespace throwline::checks
