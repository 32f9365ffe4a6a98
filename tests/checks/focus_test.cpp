#include "checks/camera_checks.h"
#include "optics/focus.h"
#include "support/check_case.h"
#include "support/number.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::checks {

using namespace support;

namespace {

/// Ada 4 m from the lens and Bo a metre behind her, both in the frame at 40 mm and T2.
plan::Plan two_deep(double focal_mm = 40.0) {
    plan::Plan plan = small_room();
    put_person(plan, "bo", Vec2{5.3, 6.0}, Angle::degrees(-90.0));
    plan::Shot& shot = put_shot(plan, "1A", Vec2{5.0, 1.0}, focal_mm);
    shot.subjects = {{"ada"}, {"bo"}};
    shot.stop = 2.0;
    return plan;
}

} // namespace

TEST(Focus, ASubjectInFocusIsNotMentioned) {
    plan::Plan plan = small_room();
    put_shot(plan, "1A", Vec2{5.0, 1.0}, 80.0);
    const auto findings = found_by(focus, plan);
    EXPECT_TRUE(findings.empty()) << messages(findings);
}

// f 40, N 2, c 0.011, u about 3.9 m: sharp to about 4.15 m; Bo's eyes are 4.9 m away.
TEST(Focus, ASubjectTooFarIsFoundWithTheStopThatWouldDo) {
    plan::Plan plan = two_deep();
    const auto findings = found_by(focus, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].severity, Severity::error);
    EXPECT_EQ(findings[0].things.front(), "bo");
    EXPECT_TRUE(says(findings[0].message, "bo 0.7")) << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "too far; T")) << findings[0].message;
    EXPECT_TRUE(says(findings[0].message, "would do")) << findings[0].message;
}

TEST(Focus, TheStopThatIsNamedDoes) {
    plan::Plan plan = two_deep();
    const std::string message = found_by(focus, plan).at(0).message;
    const std::size_t at = message.rfind("; T");
    ASSERT_NE(at, std::string::npos) << message;
    plan.shots[0].stop = support::number_at_start(message.substr(at + 3));
    EXPECT_TRUE(found_by(focus, plan).empty()) << message;
    plan.shots[0].stop = *plan.shots[0].stop - 0.3;
    EXPECT_EQ(found_by(focus, plan).size(), 1U) << message;
}

TEST(Focus, FocusBetweenTwoSubjectsIsProposedWhereItHoldsBoth) {
    plan::Plan plan = two_deep();
    plan.shots[0].stop = 5.0;
    const auto findings = found_by(focus, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_TRUE(says(findings[0].message, "it holds all of them")) << findings[0].message;
    plan.shots[0].focus = Length::metres(4.36);
    const auto split = found_by(focus, plan);
    EXPECT_TRUE(split.empty()) << messages(split);
}

TEST(Focus, APlaceNearerThanTheLensFocusesIsFound) {
    plan::Plan plan = small_room();
    put_shot(plan, "1A", Vec2{5.0, 4.5}, 8.0);
    const auto findings = found_by(focus, plan);
    ASSERT_EQ(findings.size(), 1U) << messages(findings);
    EXPECT_EQ(findings[0].things.front(), "camera 1");
    EXPECT_TRUE(says(findings[0].message, "no nearer than 0.60 m")) << findings[0].message;
}

RC_GTEST_PROP(Focus, AShorterLensNeverLosesASubject, ()) {
    const int longer_mm = *rc::gen::inRange(9, 80);
    const int shorter_mm = *rc::gen::inRange(8, longer_mm);
    const std::size_t longer = found_by(focus, two_deep(longer_mm)).size();
    const std::size_t shorter = found_by(focus, two_deep(shorter_mm)).size();
    RC_ASSERT(shorter <= longer);
}

} // namespace throwline::checks
