#include "checks/camera_checks.h"
#include "support/check_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

/// Ada at (4, 4) and Bo at (6, 4) face each other; two shots of both, the first from below the
/// line.
plan::Plan two_hander(const Vec2& second_at) {
    plan::Plan plan = small_room();
    std::get<plan::Mark>(plan.beats[0].marks.at({"ada"})).at = Vec2{4.0, 4.0};
    std::get<plan::Mark>(plan.beats[0].marks.at({"ada"})).faces = Angle::degrees(0.0);
    put_person(plan, "bo", Vec2{6.0, 4.0}, Angle::degrees(180.0));
    for (const auto& [name, at] : {std::pair{"1A", Vec2{5.0, 1.0}}, std::pair{"1B", second_at}}) {
        plan::Shot& shot = put_shot(plan, name, at, 10.0);
        shot.aim = Vec3{5.0, 4.0, 1.5};
        shot.subjects = {{"ada"}, {"bo"}};
    }
    return plan;
}

} // namespace

TEST(LineOfAction, CamerasOnOneSideAreNotMentioned) {
    EXPECT_TRUE(found_by(line_of_action, two_hander(Vec2{8.0, 2.0})).empty());
}

TEST(LineOfAction, ACameraAcrossTheLineIsFoundWithHowFar) {
    const auto findings = found_by(line_of_action, two_hander(Vec2{6.0, 6.5}));
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_EQ(findings[0].shot.name, "1B");
    EXPECT_EQ(findings[0].things, (std::vector<std::string>{"camera 1", "ada", "bo"}));
    EXPECT_TRUE(
        says(findings[0].message, "from shot 1A to shot 1B crosses the line between ada and bo"))
        << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "2.50 m over it")) << findings[0].message;
}

TEST(LineOfAction, ACameraOnTheLineCrossesNothing) {
    EXPECT_TRUE(found_by(line_of_action, two_hander(Vec2{9.0, 4.0})).empty());
}

TEST(LineOfAction, SinglesOfTwoPeopleKeepTheirLineToo) {
    plan::Plan plan = two_hander(Vec2{6.0, 6.5});
    plan.shots[0].subjects = {{"ada"}};
    plan.shots[1].subjects = {{"bo"}};
    EXPECT_EQ(found_by(line_of_action, plan).size(), 1U);
    plan.shots[1].at = Vec2{6.0, 1.5};
    EXPECT_TRUE(found_by(line_of_action, plan).empty());
}

TEST(LineOfAction, AMoveDuringTheShotCarriesTheCameraAcross) {
    plan::Plan plan = two_hander(Vec2{6.0, 6.5});
    plan.shots[0].moves = {Vec2{2.0, 4.5}, Vec2{4.0, 7.0}};
    EXPECT_TRUE(found_by(line_of_action, plan).empty());
}

TEST(LineOfAction, OnlyShotsThatAreCutTogetherAreCompared) {
    plan::Plan plan = two_hander(Vec2{6.0, 6.5});
    plan::Shot& third = put_shot(plan, "1C", Vec2{6.0, 1.5}, 10.0);
    third.subjects = {{"ada"}, {"bo"}};
    plan.shots[0].cuts_to = {{"1C"}};
    plan.shots[1].subjects = {};
    plan.shots[1].beats = {};
    EXPECT_TRUE(found_by(line_of_action, plan).empty());
}

TEST(LineOfAction, WithOnePersonTheLookThatTurnsRoundIsANote) {
    plan::Plan plan = two_hander(Vec2{6.0, 6.5});
    plan.shots[0].subjects = {{"ada"}};
    plan.shots[1].subjects = {{"ada"}};
    const auto findings = found_by(line_of_action, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::note);
}

} // namespace throwline::checks
