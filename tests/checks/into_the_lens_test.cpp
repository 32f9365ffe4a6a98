#include "checks/camera_checks.h"
#include "support/check_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

const Vec3 kLens{5.0, 1.0, 1.5};

/// A lamp hung from a pipe across the room, aimed at a point.
plan::Plan with_lamp(const Vec2& at, double height_m, const Vec3& aim, double focal_mm) {
    plan::Plan plan = small_room();
    put_shot(plan, "1A", floor_of(kLens), focal_mm);
    plan::Pipe pipe;
    pipe.id = {"bar"};
    pipe.from = Vec2{0.0, at.y()};
    pipe.to = Vec2{10.0, at.y()};
    pipe.height = Length::metres(3.95);
    plan.pipes.push_back(pipe);
    plan::Lamp lamp;
    lamp.id = {"7"};
    lamp.instrument = "Fresnel 650 W";
    lamp.mount = plan::PipeHang{{"bar"}, Length::metres(at.x()), Length::metres(3.95 - height_m)};
    lamp.aim = aim;
    lamp.focus = 1.0;
    plan.lamps.push_back(lamp);
    return plan;
}

} // namespace

TEST(IntoTheLens, ALampInTheFrameThatShinesAtTheLensIsAnError) {
    const auto findings = found_by(into_the_lens, with_lamp(Vec2{6.0, 7.0}, 2.2, kLens, 8.0));
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"7", "camera 1"}));
    EXPECT_TRUE(says(findings[0].message, "Lamp 7 shows 100 % of its bright face"))
        << findings[0].message;
}

TEST(IntoTheLens, ALampInTheFrameThatLooksAwayIsNotMentioned) {
    const auto findings =
        found_by(into_the_lens, with_lamp(Vec2{6.0, 6.0}, 2.2, Vec3{6.0, 7.9, 1.0}, 8.0));
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(IntoTheLens, APracticalInTheFrameIsANote) {
    plan::Plan plan = with_lamp(Vec2{6.0, 7.0}, 2.2, kLens, 8.0);
    plan.lamps[0].mount = plan::PracticalMount{Vec2{6.0, 7.0}, Length::metres(1.2)};
    plan.lamps[0].role = plan::LampRole::practical;
    const auto findings = found_by(into_the_lens, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::note);
}

// 2 m up over 4 m away: about 27 degrees off a level axis, outside a frame whose upper edge is 3.9
// degrees up. The hood (40 mm, glass 80 mm across) keeps light off beyond about 70 degrees.
TEST(IntoTheLens, ABackLightOutsideTheFrameIsACautionWithItsAngle) {
    const auto findings = found_by(into_the_lens, with_lamp(Vec2{5.0, 5.0}, 3.5, kLens, 40.0));
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_TRUE(says(findings[0].message, "top, 2")) << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "flag")) << findings[0].message;
}

// 2 m up over 1.9 m away: 46 degrees, between where the hood begins to shade and where it is
// complete.
TEST(IntoTheLens, ALampThatTheHoodShadesInPartIsANote) {
    const auto findings = found_by(into_the_lens, with_lamp(Vec2{5.0, 2.9}, 3.5, kLens, 40.0));
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::note);
    EXPECT_TRUE(says(findings[0].message, "in part")) << findings[0].message;
}

TEST(IntoTheLens, BarnDoorsKeepTheLightOff) {
    plan::Plan plan = with_lamp(Vec2{5.0, 5.0}, 3.5, kLens, 40.0);
    plan.lamps[0].aim = Vec3{5.0, 1.2, 1.8};
    EXPECT_EQ(found_by(into_the_lens, plan).size(), 1U);
    plan.lamps[0].cut = plan::BeamCut{0.0, 1.0, 0.0, 0.0};
    const auto findings = found_by(into_the_lens, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(IntoTheLens, AHighBackLightIsKeptOffByTheHood) {
    const auto findings = found_by(into_the_lens, with_lamp(Vec2{5.0, 1.55}, 3.6, kLens, 40.0));
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(IntoTheLens, ALampWhoseFieldPassesTheLensIsNotMentioned) {
    const auto findings =
        found_by(into_the_lens, with_lamp(Vec2{5.0, 7.0}, 3.5, Vec3{5.0, 5.2, 1.0}, 40.0));
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

TEST(IntoTheLens, AFlagKeepsTheLightOff) {
    plan::Plan plan = with_lamp(Vec2{5.0, 5.0}, 3.5, kLens, 40.0);
    put_box(plan, "flag", Vec2{5.0, 3.0}, Vec3{1.0, 0.02, 0.8}, 2.1);
    const auto findings = found_by(into_the_lens, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

} // namespace throwline::checks
