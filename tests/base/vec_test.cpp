#include "base/vec.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <rapidcheck/gtest.h>

namespace throwline {
namespace {

constexpr double kPi = std::numbers::pi;

TEST(Vec, TurnsAnticlockwise) {
    EXPECT_EQ(turned_left({1, 0}), Vec2(0, 1));
    EXPECT_TRUE(rotated({1, 0}, kPi / 2).isApprox(Vec2{0, 1}, 1e-15));
    EXPECT_GT(cross({1, 0}, {0, 1}), 0.0);
    EXPECT_EQ(angle_of({0, 2}), kPi / 2);
    EXPECT_EQ(angle_of({0, 0}), 0.0);
}

TEST(Wrapped, EndsAtPlusPi) {
    EXPECT_EQ(wrapped(kPi), kPi);
    EXPECT_EQ(wrapped(-kPi), kPi);
    EXPECT_NEAR(wrapped(3.5 * kPi), -0.5 * kPi, 1e-15);
    EXPECT_EQ(wrapped(0.25), 0.25);
}

RC_GTEST_PROP(Vec, AngleAndUnitAreInverse, ()) {
    const double angle_rad = *rc::gen::inRange(-100'000, 100'000) * 1e-4;
    RC_ASSERT(std::abs(wrapped(angle_of(unit_at(angle_rad)) - angle_rad)) < 1e-12);
}

} // namespace
} // namespace throwline
