#include "checks/camera_checks.h"
#include "support/check_case.h"

#include <gtest/gtest.h>

namespace throwline::checks {

using namespace support;

TEST(Coverage, AHeadWellInsideTheFrameIsNotMentioned) {
    plan::Plan plan = small_room();
    put_shot(plan, "1A", Vec2{5.0, 1.0}, 20.0);
    const auto findings = found_by(coverage, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

// 20 mm on 5.39 mm at the face, 3.9 m from the lens: the frame is 1.05 m high there, so aimed level
// at 1.05 m its upper edge stands near 1.58 m and the crown at 1.70 m is cut.
TEST(Coverage, ACutCrownIsFoundWithTheEdge) {
    plan::Plan plan = small_room();
    plan::Shot& shot = put_shot(plan, "1A", Vec2{5.0, 1.0}, 20.0);
    shot.height = Length::metres(1.05);
    shot.aim = Vec3{5.0, 5.0, 1.05};
    const auto findings = found_by(coverage, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].things.front(), "ada");
    EXPECT_TRUE(says(findings[0].message, "cut")) << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "at the top edge")) << findings[0].message;
    EXPECT_FALSE(findings[0].working.inputs.empty());
}

TEST(Coverage, AHeadOutsideTheFrameIsFoundWithTheSide) {
    plan::Plan plan = small_room();
    put_shot(plan, "1A", Vec2{5.0, 1.0}, 20.0).aim = Vec3{7.0, 5.0, 1.5};
    const auto findings = found_by(coverage, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_TRUE(says(findings[0].message, "outside the frame")) << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "left edge")) << findings[0].message;
}

TEST(Coverage, ASubjectBehindTheLensIsFound) {
    plan::Plan plan = small_room();
    put_shot(plan, "1A", Vec2{5.0, 6.0}, 20.0).aim = Vec3{5.0, 7.0, 1.5};
    const auto findings = found_by(coverage, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_TRUE(says(findings[0].message, "behind the lens")) << findings[0].message;
}

TEST(Coverage, ABigCloseUpMayCutTheCrown) {
    plan::Plan plan = small_room();
    plan::Shot& shot = put_shot(plan, "1A", Vec2{5.0, 1.8}, 80.0);
    shot.height = Length::metres(1.53);
    shot.aim = Vec3{5.0, 5.0, 1.53};
    shot.size = ShotSize::big_close_up;
    const auto findings = found_by(coverage, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

// A full shot of 1.70 m from 4 m needs about 11 mm; a lens that begins at 20 mm needs about 7 m.
TEST(Coverage, ALensTooLongNamesTheWallThatIsInTheWay) {
    plan::Plan plan = small_room();
    plan::Shot& shot = put_shot(plan, "1A", Vec2{5.0, 1.0}, 20.0);
    shot.size = ShotSize::full;
    shot.focal.reset();
    shot.aim = std::monostate{};
    catalogue::Catalogue tables = test_catalogue();
    tables.lenses.back().focal_min = Length::millimetres(20.0);
    const auto findings = found_by(coverage, plan, tables);
    ASSERT_FALSE(findings.empty());
    const Finding& finding = findings.back();
    EXPECT_EQ(finding.things.front(), "camera 1");
    EXPECT_TRUE(says(finding.message, "begins at 20 mm")) << finding.message;
    EXPECT_TRUE(says(finding.message, "farther back, but wall")) << finding.message;
}

TEST(Coverage, ALensTooLongMayStepBackWhereThereIsRoom) {
    plan::Plan plan = small_room(20.0);
    plan.beats.front().marks.at({"ada"}) =
        plan::Mark{Vec2{5.0, 15.0}, Angle::degrees(-90.0), plan::Pose::stand, {}, {}, {}};
    plan::Shot& shot = put_shot(plan, "1A", Vec2{5.0, 11.0}, 20.0);
    shot.size = ShotSize::full;
    shot.focal.reset();
    shot.aim = std::monostate{};
    catalogue::Catalogue tables = test_catalogue();
    tables.lenses.back().focal_min = Length::millimetres(20.0);
    const auto findings = found_by(coverage, plan, tables);
    ASSERT_FALSE(findings.empty());
    EXPECT_TRUE(says(findings.back().message, "there is room")) << findings.back().message;
}

TEST(Coverage, ALensTooShortMayUseItsExtender) {
    plan::Plan plan = small_room(12.0);
    plan.beats.front().marks.at({"ada"}) =
        plan::Mark{Vec2{5.0, 11.0}, Angle::degrees(-90.0), plan::Pose::stand, {}, {}, {}};
    plan::Shot& shot = put_shot(plan, "1A", Vec2{5.0, 1.0}, 20.0);
    shot.size = ShotSize::close_up;
    shot.focal.reset();
    shot.aim = std::monostate{};
    catalogue::Catalogue tables = test_catalogue();
    tables.lenses.back().extender = 2.0;
    const auto findings = found_by(coverage, plan, tables);
    ASSERT_FALSE(findings.empty());
    EXPECT_TRUE(says(findings.back().message, "ends at 80 mm")) << findings.back().message;
    EXPECT_TRUE(says(findings.back().message, "nearer, or with the extender in"))
        << findings.back().message;
}

TEST(Coverage, ASensorLargerThanTheImageCircleIsACaution) {
    plan::Plan plan = small_room();
    put_shot(plan, "1A", Vec2{5.0, 1.0}, 20.0);
    catalogue::Catalogue tables = test_catalogue();
    tables.lenses.back().image_circle = Length::millimetres(8.0);
    const auto findings = found_by(coverage, plan, tables);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_TRUE(says(findings[0].message, "a circle of 8 mm")) << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "11 mm across")) << findings[0].message;
}

TEST(Coverage, ASubjectInNoBeatOfTheShotIsFound) {
    plan::Plan plan = small_room();
    plan::Person absent;
    absent.id = {"bo"};
    plan.people.push_back(absent);
    put_shot(plan, "1A", Vec2{5.0, 1.0}, 20.0).subjects = {{"ada"}, {"bo"}};
    const auto findings = found_by(coverage, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_TRUE(says(findings[0].message, "Bo is a subject of shot 1A")) << findings[0].message;
}

} // namespace throwline::checks
