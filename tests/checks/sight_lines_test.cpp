#include "checks/camera_checks.h"
#include "checks/sight.h"
#include "support/check_case.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

/// All of ada, 4 m from a lens 1.5 m high.
plan::Plan whole_figure() {
    plan::Plan plan = small_room();
    plan::Shot& shot = put_shot(plan, "1A", Vec2{5.0, 1.0}, 8.0);
    shot.aim = Vec3{5.0, 5.0, 1.2};
    return plan;
}

Sight sight_in(const plan::Plan& plan) {
    const RaisedPlan raised = raised_plan(plan, test_catalogue());
    const ShotScene& scene = raised.shots.at(0);
    return sight_of(scene, scene.view.value(), *scene.stage.figure({"ada"})).value();
}

} // namespace

TEST(SightLines, AnOpenViewSeesAllOfTheSubject) {
    const Sight sight = sight_in(whole_figure());
    EXPECT_DOUBLE_EQ(sight.body.share, 1.0);
    EXPECT_TRUE(sight.body.hiders.empty());
    EXPECT_GT(sight.body.rays, 400);
    ASSERT_TRUE(sight.face.has_value());
    EXPECT_DOUBLE_EQ(sight.face->share, 1.0);
    EXPECT_EQ(sight.eyes.asked, 2);
    EXPECT_EQ(sight.eyes.seen, 2);
    EXPECT_TRUE(found_by(sight_lines, whole_figure()).empty());
}

// Similar triangles: a box 1.20 m high whose far edge is 2.0 m from a lens 1.50 m high hides what
// is below 0.90 m at 4.0 m: 46 % of a figure made of plain strips, and about that of the mesh.
TEST(SightLines, ABoxHidesWhatItsFarEdgeHides) {
    plan::Plan plan = whole_figure();
    put_box(plan, "counter", Vec2{5.0, 2.8}, Vec3{3.0, 0.4, 1.2});
    const Sight sight = sight_in(plan);
    EXPECT_NEAR(sight.body.share, 0.46, 0.06);
    EXPECT_DOUBLE_EQ(sight.face.value().share, 1.0);
    const auto findings = found_by(sight_lines, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"counter", "ada", "camera 1"}));
    EXPECT_TRUE(says(findings[0].message, "counter hides 5")) << findings[0].message;
}

TEST(SightLines, ALowTableIsACaution) {
    plan::Plan plan = whole_figure();
    put_box(plan, "table", Vec2{5.0, 4.2}, Vec3{2.0, 0.8, 0.75});
    const auto findings = found_by(sight_lines, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::caution);
}

TEST(SightLines, AHiddenFaceIsAnErrorThoughTheBodyIsSeen) {
    plan::Plan plan = whole_figure();
    put_box(plan, "sign", Vec2{5.0, 4.0}, Vec3{0.6, 0.05, 0.35}, 1.4);
    const Sight sight = sight_in(plan);
    EXPECT_GT(sight.body.share, 0.75);
    EXPECT_LT(sight.face.value().share, 0.05);
    EXPECT_EQ(sight.eyes.seen, 0);
    const auto findings = found_by(sight_lines, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_TRUE(says(findings[0].message, "neither eye is seen")) << findings[0].message;
}

TEST(SightLines, SharesOfTwoHidersAreToldApart) {
    plan::Plan plan = whole_figure();
    put_box(plan, "left post", Vec2{4.85, 4.0}, Vec3{0.1, 0.1, 3.0});
    put_box(plan, "right post", Vec2{5.2, 4.0}, Vec3{0.06, 0.1, 3.0});
    const Sight sight = sight_in(plan);
    ASSERT_EQ(sight.body.hiders.size(), 2U);
    EXPECT_GT(sight.body.hiders[0].share, sight.body.hiders[1].share);
    EXPECT_NEAR(sight.body.share + sight.body.hiders[0].share + sight.body.hiders[1].share, 1.0,
                1e-12);
}

TEST(SightLines, OnlyTheFramedPartIsAsked) {
    plan::Plan plan = whole_figure();
    put_box(plan, "table", Vec2{5.0, 4.2}, Vec3{2.0, 0.8, 0.75});
    plan.shots[0].aim = Vec3{5.0, 5.0, 1.5};
    plan.shots[0].focal = Length::millimetres(30.0);
    EXPECT_DOUBLE_EQ(sight_in(plan).body.share, 1.0);
}

TEST(SightLines, ATurnedAwayFaceIsANote) {
    plan::Plan plan = whole_figure();
    std::get<plan::Mark>(plan.beats[0].marks.at({"ada"})).faces = Angle::degrees(90.0);
    const auto findings = found_by(sight_lines, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::note);
    EXPECT_TRUE(says(findings[0].message, "turned away")) << findings[0].message;
}

TEST(SightLines, WhatTheCrewAcceptsIsNotACaution) {
    plan::Plan plan = whole_figure();
    put_box(plan, "table", Vec2{5.0, 4.2}, Vec3{2.0, 0.8, 0.75});
    plan.targets.visible_share = 0.5;
    EXPECT_TRUE(found_by(sight_lines, plan).empty());
}

RC_GTEST_PROP(SightLines, MoreInTheWayNeverShowsMore, ()) {
    plan::Plan plan = whole_figure();
    double before = 1.0;
    for (int i = 0; i < 4; ++i) {
        const Vec2 at{*rc::gen::inRange(420, 580) / 100.0, *rc::gen::inRange(160, 440) / 100.0};
        const Vec3 size{*rc::gen::inRange(5, 60) / 100.0, *rc::gen::inRange(5, 30) / 100.0,
                        *rc::gen::inRange(10, 160) / 100.0};
        put_box(plan, "box " + std::to_string(i), at, size);
        const Sight sight = sight_in(plan);
        RC_ASSERT(sight.body.share <= before + 1e-12);
        before = sight.body.share;
    }
}

} // namespace throwline::checks
