#include "optics/focus.h"

#include <array>
#include <cmath>
#include <gtest/gtest.h>

namespace throwline::optics {
namespace {

// Symmetric thin-lens depth of field as in standard optics texts (from memory); the figures were
// computed by a separate script, millimetres from the front principal plane.
struct FocusRow {
    double focal_mm;
    double f_number;
    double confusion_mm;
    double focus_mm;
    double hyperfocal_mm;
    double near_mm;
    double far_mm;
};
constexpr std::array<FocusRow, 6> kRows{{{50, 2.8, 0.025, 3000, 35764.3, 2771.1, 3270.1},
                                         {25, 4, 0.025, 3000, 6275.0, 2032.5, 5725.2},
                                         {85, 2, 0.029, 2000, 124654.0, 1969.7, 2031.2},
                                         {20, 4, 0.011, 4000, 9110.9, 2782.0, 7114.9},
                                         {35, 5.6, 0.029, 5000, 7578.1, 3015.3, 14629.2},
                                         {100, 2.8, 0.025, 4000, 142957.1, 3893.7, 4112.3}}};
constexpr double kLastDigit_mm = 0.06;

FocusSetting setting_of(const FocusRow& row) {
    return {Length::millimetres(row.focal_mm), row.f_number, Length::millimetres(row.confusion_mm)};
}

TEST(DepthOfFieldReference, LimitsAgreeWithASeparateComputation) {
    for (const FocusRow& row : kRows) {
        const auto depth = depth_of_field(setting_of(row), Length::millimetres(row.focus_mm));
        ASSERT_TRUE(depth && depth->far_limit) << row.focal_mm;
        EXPECT_NEAR(depth->hyperfocal.mm(), row.hyperfocal_mm, kLastDigit_mm);
        EXPECT_NEAR(depth->near_limit.mm(), row.near_mm, kLastDigit_mm);
        EXPECT_NEAR(depth->far_limit->mm(), row.far_mm, kLastDigit_mm);
    }
}

TEST(DepthOfFieldReference, FocusAtHyperfocalReachesFromHalfOfItToTheHorizon) {
    const FocusSetting setting = setting_of(kRows[0]);
    const auto depth = depth_of_field(setting, hyperfocal(setting));
    ASSERT_TRUE(depth);
    EXPECT_NEAR(depth->near_limit.mm(), 17882.1, kLastDigit_mm);
    EXPECT_FALSE(depth->far_limit);
}

// Diagonal / 1500 is common practice without a source; the figures were computed apart.
TEST(DepthOfFieldReference, UsualCircleOfConfusionFollowsTheDiagonal) {
    const std::array<std::array<double, 3>, 4> rows{
        {{36, 24, 0.0288}, {24.89, 18.66, 0.0207}, {17.3, 13, 0.0144}, {9.59, 5.39, 0.0073}}};
    for (const auto& [width_mm, height_mm, confusion_mm] : rows) {
        const Length diagonal = Length::millimetres(std::hypot(width_mm, height_mm));
        EXPECT_NEAR(usual_circle_of_confusion(diagonal).mm(), confusion_mm, 0.00006);
    }
}

} // namespace
} // namespace throwline::optics
