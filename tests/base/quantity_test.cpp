#include "base/quantity.h"

#include <gtest/gtest.h>

namespace throwline {
namespace {

// 1 ft = 0.3048 m and 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
static_assert(Length::feet(1.0).m() == 0.3048);
static_assert(Length::inches(1.0).m() == 0.0254);
static_assert(Length::feet(10.0).m() == 3.048);
static_assert(Length::millimetres(25.4).m() == 0.0254);

TEST(Length, TwelveInchesAreAFootToTheLastBit) {
    for (int feet = 0; feet <= 100'000; ++feet) {
        ASSERT_EQ(Length::inches(12.0 * feet).m(), Length::feet(feet).m()) << feet;
    }
}

TEST(Length, ComesBackInItsUnit) {
    EXPECT_DOUBLE_EQ(Length::feet(12.5).ft(), 12.5);
    EXPECT_DOUBLE_EQ(Length::inches(126.0).in(), 126.0);
    EXPECT_DOUBLE_EQ(Length::millimetres(50.0).mm(), 50.0);
}

TEST(Angle, ComesBackInItsUnit) {
    EXPECT_DOUBLE_EQ(Angle::degrees(33.0).deg(), 33.0);
    EXPECT_DOUBLE_EQ(Angle::degrees(180.0).rad(), std::numbers::pi);
}

} // namespace
} // namespace throwline
