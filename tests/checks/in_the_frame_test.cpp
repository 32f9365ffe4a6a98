#include "checks/camera_checks.h"
#include "support/check_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

/// A wide shot over the room: at the mark the frame is 4.8 m wide and 2.7 m high.
plan::Plan wide_shot() {
    plan::Plan plan = small_room();
    put_shot(plan, "1A", Vec2{5.0, 1.0}, 8.0);
    return plan;
}

void put_lamp_on_stand(plan::Plan& plan, const Vec2& at, double height_m) {
    plan::Lamp lamp;
    lamp.id = {"4"};
    lamp.instrument = "Fresnel 650 W";
    lamp.mount = plan::StandMount{at, Length::metres(height_m), "medium light stand"};
    lamp.aim = plan::ThingName{"ada"};
    plan.lamps.push_back(lamp);
}

void put_boom(plan::Plan& plan, double microphone_z_m) {
    plan::Boom boom;
    boom.id = {"boom"};
    boom.operator_at = Vec2{8.5, 3.0};
    boom.microphone = Vec2{5.2, 4.8};
    boom.pole = Length::metres(4.5);
    boom.height = Length::metres(microphone_z_m);
    plan.booms.push_back(boom);
}

const Finding* about(const std::vector<Finding>& findings, const std::string& thing) {
    for (const Finding& finding : findings) {
        if (finding.things.front() == thing) {
            return &finding;
        }
    }
    return nullptr;
}

} // namespace

TEST(InTheFrame, AFrameWithOnlyTheSubjectIsNotMentioned) {
    plan::Plan plan = wide_shot();
    put_camera(plan, "camera 2", Vec2{1.0, 0.8});
    const auto findings = found_by(in_the_frame, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(InTheFrame, AnotherCameraIsAnErrorWithItsPlace) {
    plan::Plan plan = wide_shot();
    put_camera(plan, "camera 2", Vec2{7.0, 5.0});
    const auto findings = found_by(in_the_frame, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"camera 2", "camera 1"}));
    EXPECT_TRUE(says(findings[0].message, "right")) << findings[0].message;
    EXPECT_NEAR(findings[0].at.x(), 7.0, 0.4);
    EXPECT_NEAR(findings[0].at.y(), 5.0, 0.5);
}

TEST(InTheFrame, ACameraBehindAWallIsNotSeen) {
    plan::Plan plan = wide_shot();
    put_camera(plan, "camera 2", Vec2{7.0, 5.0});
    put_box(plan, "screen", Vec2{7.0, 4.0}, Vec3{3.0, 0.1, 3.0});
    const auto findings = found_by(in_the_frame, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(InTheFrame, AStandAtTheFarWallIsFound) {
    plan::Plan plan = wide_shot();
    put_lamp_on_stand(plan, Vec2{8.0, 7.5}, 2.0);
    const auto findings = found_by(in_the_frame, plan);
    const Finding* lamp = about(findings, "4");
    ASSERT_NE(lamp, nullptr) << messages(findings);
    EXPECT_EQ(lamp->severity, Severity::error);
    EXPECT_TRUE(says(lamp->message, "stand")) << lamp->message;
    EXPECT_TRUE(says(lamp->message, "of lamp 4")) << lamp->message;
}

TEST(InTheFrame, APracticalBelongsToTheSet) {
    plan::Plan plan = wide_shot();
    put_lamp_on_stand(plan, Vec2{8.0, 7.5}, 2.0);
    plan.lamps[0].mount = plan::PracticalMount{Vec2{8.0, 7.5}, Length::metres(1.2)};
    plan.lamps[0].role = plan::LampRole::practical;
    const auto findings = found_by(in_the_frame, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(InTheFrame, AMicrophoneThatDipsInIsFound) {
    plan::Plan plan = wide_shot();
    put_boom(plan, 2.3);
    const auto findings = found_by(in_the_frame, plan);
    const Finding* boom = about(findings, "boom");
    ASSERT_NE(boom, nullptr) << messages(findings);
    EXPECT_TRUE(says(boom->message, "microphone")) << boom->message;
}

TEST(InTheFrame, ABoomAboveTheFrameIsNot) {
    plan::Plan plan = wide_shot();
    plan.shots[0].focal = Length::millimetres(30.0);
    put_boom(plan, 2.3);
    const auto findings = found_by(in_the_frame, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(InTheFrame, CrewIsAnErrorAndCastANote) {
    plan::Plan plan = wide_shot();
    put_person(plan, "runner", Vec2{3.5, 5.5}, Angle::degrees(0.0), plan::PersonKind::crew);
    put_person(plan, "bo", Vec2{6.5, 5.5}, Angle::degrees(180.0));
    const auto findings = found_by(in_the_frame, plan);
    ASSERT_EQ(findings.size(), 2U) << messages(findings);
    const Finding* runner = about(findings, "runner");
    ASSERT_NE(runner, nullptr);
    EXPECT_EQ(runner->severity, Severity::error);
    EXPECT_TRUE(says(runner->message, "left")) << runner->message;
    const Finding* bo = about(findings, "bo");
    ASSERT_NE(bo, nullptr);
    EXPECT_EQ(bo->severity, Severity::note);
}

// A strip that is far thinner than a cell of the frame: the only thing of the stand that shows.
TEST(InTheFrame, AColumnBehindASlitIsFound) {
    plan::Plan plan = wide_shot();
    put_lamp_on_stand(plan, Vec2{6.5, 7.0}, 2.0);
    put_box(plan, "left screen", Vec2{5.475, 6.0}, Vec3{1.5, 0.05, 4.0});
    put_box(plan, "right screen", Vec2{7.02, 6.0}, Vec3{1.5, 0.05, 4.0});
    const auto findings = found_by(in_the_frame, plan);
    EXPECT_NE(about(findings, "4"), nullptr) << messages(findings);
}

} // namespace throwline::checks
