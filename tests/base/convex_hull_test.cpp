#include "base/convex_hull.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline {
namespace {

TEST(ConvexHull, OfASquareWithPointsInsideIsTheSquare) {
    const Polygon hull =
        convex_hull({{0, 0}, {1, 1}, {2, 0}, {2, 2}, {0, 2}, {1, 0}, {0.5, 1.5}, {2, 0}});
    EXPECT_EQ(hull, (Polygon{{0, 0}, {2, 0}, {2, 2}, {0, 2}}));
}

TEST(ConvexHull, OfPointsOnALineHasNoArea) {
    EXPECT_LT(convex_hull({{0, 0}, {1, 1}, {2, 2}, {3, 3}}).size(), 3U);
    EXPECT_TRUE(convex_hull({}).empty());
}

RC_GTEST_PROP(ConvexHull, HoldsEveryPointAndTurnsLeftAtEachCorner,
              (const std::vector<std::pair<std::int8_t, std::int8_t>>& raw)) {
    std::vector<Vec2> points;
    for (const auto& [x, y] : raw) {
        points.emplace_back(x, y);
    }
    const Polygon hull = convex_hull(points);
    for (std::size_t i = 0; hull.size() >= 3 && i < hull.size(); ++i) {
        const Vec2& a = hull[i];
        const Vec2& b = hull[(i + 1) % hull.size()];
        RC_ASSERT(cross(b - a, hull[(i + 2) % hull.size()] - b) > 0.0);
        for (const Vec2& point : points) {
            RC_ASSERT(cross(b - a, point - a) >= 0.0);
        }
    }
}

} // namespace
} // namespace throwline
