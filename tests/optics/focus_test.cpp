#include "optics/focus.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::optics {
namespace {

FocusSetting any_setting() {
    return {Length::millimetres(*rc::gen::inRange(8, 300)), *rc::gen::inRange(10, 220) / 10.0,
            Length::millimetres(*rc::gen::inRange(5, 40) / 1000.0)};
}

constexpr double kShare = 1e-9;

RC_GTEST_PROP(DepthOfField, BlurAtTheLimitsIsTheCircleOfConfusion, ()) {
    const FocusSetting setting = any_setting();
    const Length focus = Length::millimetres(*rc::gen::inRange(400, 20000));
    const auto depth = depth_of_field(setting, focus);
    RC_ASSERT(depth.has_value());
    const Length near_blur = *blur_diameter(setting, focus, depth->near_limit);
    // Close to the focal length the near limit shrinks to the focus itself and digits run out.
    RC_ASSERT(std::abs(near_blur / setting.circle_of_confusion - 1.0) < 1e-6);
    if (depth->far_limit && depth->far_limit->m() < 1e6) {
        const Length far_blur = *blur_diameter(setting, focus, *depth->far_limit);
        RC_ASSERT(std::abs(far_blur / setting.circle_of_confusion - 1.0) < 1e-6);
    }
}

RC_GTEST_PROP(DepthOfField, TheFocusLiesBetweenTheLimits, ()) {
    const FocusSetting setting = any_setting();
    const Length focus = Length::millimetres(*rc::gen::inRange(400, 20000));
    const auto depth = depth_of_field(setting, focus);
    RC_ASSERT(depth.has_value());
    RC_ASSERT(depth->near_limit < focus);
    RC_ASSERT(depth->far_limit.value_or(focus * 2.0) > focus);
    RC_ASSERT(is_sharp(setting, focus, focus));
    RC_ASSERT(!is_sharp(setting, focus, depth->near_limit * (1.0 - 1e-6)));
}

RC_GTEST_PROP(DepthOfField, StoppingDownDeepensIt, ()) {
    const FocusSetting open = any_setting();
    FocusSetting closed = open;
    closed.f_number *= 1.5;
    const Length focus = Length::millimetres(*rc::gen::inRange(400, 20000));
    RC_ASSERT(hyperfocal(closed) < hyperfocal(open));
    RC_ASSERT(depth_of_field(closed, focus)->near_limit < depth_of_field(open, focus)->near_limit);
}

TEST(DepthOfField, BeyondHyperfocalEverythingBehindIsSharp) {
    const FocusSetting setting{Length::millimetres(20), 8.0, Length::millimetres(0.011)};
    const Length beyond = hyperfocal(setting) * 1.01;
    EXPECT_FALSE(depth_of_field(setting, beyond)->far_limit);
    EXPECT_TRUE(is_sharp(setting, beyond, Length::metres(1e7)));
    EXPECT_NEAR(depth_of_field(setting, hyperfocal(setting))->near_limit
                    / (hyperfocal(setting) / 2.0),
                1.0, kShare);
}

TEST(DepthOfField, FocusInsideTheFocalLengthHasNoAnswer) {
    const FocusSetting setting{Length::millimetres(100), 2.8, Length::millimetres(0.025)};
    EXPECT_FALSE(depth_of_field(setting, Length::millimetres(100)));
    EXPECT_FALSE(blur_diameter(setting, Length::millimetres(90), Length::metres(1)));
    EXPECT_FALSE(blur_diameter(setting, Length::metres(1), Length{}));
    EXPECT_FALSE(is_sharp(setting, Length::millimetres(90), Length::metres(1)));
}

TEST(DepthOfField, AFocusedPointHasNoBlur) {
    const FocusSetting setting{Length::millimetres(50), 2.8, Length::millimetres(0.025)};
    EXPECT_EQ(blur_diameter(setting, Length::metres(3), Length::metres(3))->m(), 0.0);
}

TEST(DepthOfField, WorkingsSayWhenThereIsNoFarLimit) {
    const FocusSetting setting{Length::millimetres(50), 2.8, Length::millimetres(0.025)};
    EXPECT_EQ(hyperfocal_working(setting).result, "35.764 m");
    EXPECT_EQ(near_limit_working(setting, Length::metres(3)).result, "2.771 m");
    EXPECT_EQ(far_limit_working(setting, Length::metres(3)).result, "3.270 m");
    EXPECT_EQ(far_limit_working(setting, Length::metres(40)).result.substr(0, 7), "endless");
    EXPECT_EQ(far_limit_working(setting, Length::millimetres(50)).result.substr(0, 4), "none");
}

} // namespace
} // namespace throwline::optics
