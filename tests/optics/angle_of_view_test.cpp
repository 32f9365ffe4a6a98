#include "optics/angle_of_view.h"
#include "optics/coverage.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::optics {
namespace {

const PictureArea kChip{Length::millimetres(36), Length::millimetres(24), 1.0};

RC_GTEST_PROP(AngleOfView, LongerLensSeesLess, ()) {
    const int shorter_mm = *rc::gen::inRange(4, 800);
    const int longer_mm = *rc::gen::inRange(shorter_mm + 1, 1000);
    const AngleOfView wide = angle_of_view(kChip, Length::millimetres(shorter_mm));
    const AngleOfView tele = angle_of_view(kChip, Length::millimetres(longer_mm));
    RC_ASSERT(tele.horizontal < wide.horizontal);
    RC_ASSERT(tele.vertical < wide.vertical);
    RC_ASSERT(tele.diagonal < wide.diagonal);
}

RC_GTEST_PROP(AngleOfView, NearFocusNarrowsAndFarFocusApproachesInfinity, ()) {
    const Length focal = Length::millimetres(*rc::gen::inRange(4, 300));
    const Length near = focal * (1.0 + *rc::gen::inRange(1, 100) / 10.0);
    const Angle infinite = angle_of_view(kChip, focal).horizontal;
    RC_ASSERT(angle_of_view_focused(kChip, focal, near)->horizontal < infinite);
    const Angle far = angle_of_view_focused(kChip, focal, focal * 1e6)->horizontal;
    RC_ASSERT(infinite.rad() - far.rad() < 2e-6);
}

TEST(AngleOfView, ALensFocusedAtOrInsideItsFocalLengthHasNoPicture) {
    const Length focal = Length::millimetres(50);
    EXPECT_FALSE(angle_of_view_focused(kChip, focal, focal));
    EXPECT_FALSE(angle_of_view_focused(kChip, focal, Length::millimetres(20)));
    EXPECT_FALSE(coverage_focused(kChip, focal, focal));
}

TEST(AngleOfView, SqueezeWidensTheHorizontalAngleOnly) {
    PictureArea squeezed = kChip;
    squeezed.squeeze = 2.0;
    const Length focal = Length::millimetres(50);
    EXPECT_GT(angle_of_view(squeezed, focal).horizontal, angle_of_view(kChip, focal).horizontal);
    EXPECT_EQ(angle_of_view(squeezed, focal).vertical, angle_of_view(kChip, focal).vertical);
}

TEST(AngleOfView, WorkingShowsInputsResultAndSource) {
    const Working working = angle_of_view_working(kChip, Length::millimetres(50));
    EXPECT_EQ(working.result, "39.60° x 26.99°");
    ASSERT_EQ(working.inputs.size(), 4U);
    EXPECT_EQ(working.inputs.back().value, "50 mm");
    EXPECT_FALSE(working.source.empty());
}

RC_GTEST_PROP(Coverage, FocalAndDistanceUndoIt, ()) {
    const Length focal = Length::millimetres(*rc::gen::inRange(4, 800));
    const Length distance = Length::millimetres(*rc::gen::inRange(300, 30000));
    const Coverage seen = coverage(kChip, focal, distance);
    const auto same = [](Length a, Length b) { return std::abs(a / b - 1.0) < 1e-12; };
    RC_ASSERT(same(focal_for_width(kChip, seen.width, distance), focal));
    RC_ASSERT(same(focal_for_height(kChip, seen.height, distance), focal));
    RC_ASSERT(same(distance_for_width(kChip, focal, seen.width), distance));
    RC_ASSERT(same(distance_for_height(kChip, focal, seen.height), distance));
}

RC_GTEST_PROP(Coverage, PinholeExceedsTheThinLensByFocalOverDistance, ()) {
    const Length focal = Length::millimetres(*rc::gen::inRange(4, 200));
    const Length distance = Length::millimetres(*rc::gen::inRange(300, 30000));
    const double pinhole_m = coverage(kChip, focal, distance).width.m();
    const double thin_m = coverage_focused(kChip, focal, distance)->width.m();
    RC_ASSERT(std::abs((pinhole_m - thin_m) / pinhole_m - focal / distance) < 1e-9);
}

TEST(Coverage, WorkingsCarryTheirResult) {
    const Length focal = Length::millimetres(50);
    EXPECT_EQ(coverage_working(kChip, focal, Length::metres(3)).result, "2.160 m x 1.440 m");
    EXPECT_EQ(distance_for_height_working(kChip, focal, Length::metres(1.44)).result, "3.000 m");
}

} // namespace
} // namespace throwline::optics
