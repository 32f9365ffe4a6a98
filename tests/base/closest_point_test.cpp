#include "base/closest_point.h"

#include <gtest/gtest.h>
#include <random>

namespace throwline {
namespace {

TEST(ClosestOnTriangle, IsTheFootOfThePerpendicularAboveTheFace) {
    const Vec3 foot = closest_on_triangle({0.25, 0.25, 3}, {0, 0, 0}, {1, 0, 0}, {0, 1, 0});
    EXPECT_TRUE(foot.isApprox(Vec3(0.25, 0.25, 0))) << foot.transpose();
}

TEST(ClosestOnTriangle, IsACornerOrAnEdgePointOutside) {
    const Vec3 a{0, 0, 0};
    const Vec3 b{1, 0, 0};
    const Vec3 c{0, 1, 0};
    EXPECT_EQ(closest_on_triangle({-1, -1, 1}, a, b, c), a);
    EXPECT_EQ(closest_on_triangle({3, -1, 0}, a, b, c), b);
    EXPECT_EQ(closest_on_triangle({-1, 4, 0}, a, b, c), c);
    EXPECT_TRUE(closest_on_triangle({0.5, -2, 0}, a, b, c).isApprox(Vec3(0.5, 0, 0)));
    EXPECT_TRUE(closest_on_triangle({1, 1, 0}, a, b, c).isApprox(Vec3(0.5, 0.5, 0)));
}

TEST(ClosestOnTriangle, IsNeverFartherThanAnyPointOfAFineGridOverIt) {
    std::mt19937 random{11};
    std::uniform_real_distribution<double> at{-2.0, 2.0};
    const auto any = [&] {
        const double x = at(random);
        const double y = at(random);
        const double z = at(random);
        return Vec3{x, y, z};
    };
    constexpr int kSteps = 40;
    for (int i = 0; i < 300; ++i) {
        const Vec3 a = any();
        const Vec3 b = any();
        const Vec3 c = any();
        const Vec3 point = any();
        const double found_m = (closest_on_triangle(point, a, b, c) - point).norm();
        double least_m = 1e9;
        for (int u = 0; u <= kSteps; ++u) {
            for (int v = 0; u + v <= kSteps; ++v) {
                const Vec3 on = a + (b - a) * u / kSteps + (c - a) * v / kSteps;
                least_m = std::min(least_m, (on - point).norm());
            }
        }
        EXPECT_LE(found_m, least_m + 1e-9);
        EXPECT_GE(found_m, least_m - 4.0 * std::sqrt(2.0) * 4.0 / kSteps);
    }
}

} // namespace
} // namespace throwline
