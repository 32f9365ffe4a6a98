#include "base/polygon.h"

#include "base/random_polygon.h"

#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <rapidcheck/gtest.h>

namespace throwline {
namespace {

/// An L of 32.4 m².
const Polygon kRoom{{0, 0}, {7.2, 0}, {7.2, 3}, {4.5, 3}, {4.5, 5.4}, {0, 5.4}};
const Polygon kBowTie{{0, 0}, {2, 2}, {2, 0}, {0, 2}};

Polygon reversed(Polygon polygon) {
    std::reverse(polygon.begin(), polygon.end());
    return polygon;
}

TEST(SignedArea, IsPositiveAnticlockwise) {
    EXPECT_DOUBLE_EQ(signed_area(kRoom), 32.4);
    EXPECT_DOUBLE_EQ(signed_area(reversed(kRoom)), -32.4);
    EXPECT_DOUBLE_EQ(area(reversed(kRoom)), 32.4);
    EXPECT_EQ(area(Polygon{}), 0.0);
    EXPECT_EQ(area(Polygon{{1, 1}, {2, 2}}), 0.0);
}

TEST(SignedArea, LosesNothingFarFromTheOrigin) {
    Polygon far;
    for (const Vec2& corner : Polygon{{0, 0}, {2, 0}, {2, 2}, {0, 2}}) {
        far.push_back(corner + Vec2{1e9, -1e9});
    }
    EXPECT_EQ(signed_area(far), 4.0);
}

TEST(Centroid, IsTheCentreOfTheArea) {
    EXPECT_TRUE(centroid(rectangle({3, 4}, 2, 1, 0.3)).isApprox(Vec2{3, 4}, 1e-12));
    // Two boxes: 7.2 x 3 around (3.6, 1.5) and 4.5 x 2.4 around (2.25, 4.2).
    const Vec2 expected{(21.6 * 3.6 + 10.8 * 2.25) / 32.4, (21.6 * 1.5 + 10.8 * 4.2) / 32.4};
    EXPECT_TRUE(centroid(kRoom).isApprox(expected, 1e-12));
    EXPECT_TRUE(centroid(reversed(kRoom)).isApprox(expected, 1e-12));
}

TEST(Centroid, OfNoAreaIsTheMeanOfTheCorners) {
    EXPECT_EQ(centroid(Polygon{}), Vec2(0, 0));
    EXPECT_EQ(centroid(Polygon{{1, 2}}), Vec2(1, 2));
    EXPECT_EQ(centroid(Polygon{{0, 0}, {1, 1}, {2, 2}}), Vec2(1, 1));
}

TEST(Contains, TellsInsideFromOutside) {
    EXPECT_TRUE(contains(kRoom, {1, 1}));
    EXPECT_FALSE(contains(kRoom, {5, 4}));
    EXPECT_TRUE(contains(kRoom, {6, 2}));
    EXPECT_TRUE(contains(kRoom, {2, 3}));
    EXPECT_FALSE(contains(kRoom, {-1, 3}));
    EXPECT_FALSE(contains(Polygon{}, {0, 0}));
}

TEST(Contains, TakesAMillimetreAsOnTheEdge) {
    for (const Vec2& point : {Vec2{0, 0}, Vec2{7.2, 1}, Vec2{4.5, 4}}) {
        EXPECT_TRUE(contains(kRoom, point));
    }
    EXPECT_TRUE(contains(kRoom, {7.2009, 1}));
    EXPECT_FALSE(contains(kRoom, {7.2011, 1}));
    EXPECT_TRUE(contains(kRoom, {7.25, 1}, 0.1));
}

TEST(CrossesItself, FindsEdgesThatMeet) {
    EXPECT_FALSE(crosses_itself(kRoom));
    EXPECT_FALSE(crosses_itself(reversed(kRoom)));
    EXPECT_TRUE(crosses_itself(kBowTie));
    // A corner that touches another edge, and one visited twice.
    EXPECT_TRUE(crosses_itself(Polygon{{0, 0}, {4, 0}, {4, 4}, {2, 0}, {0, 4}}));
    EXPECT_TRUE(crosses_itself(Polygon{{0, 0}, {1, 1}, {2, 0}, {2, 2}, {1, 1}, {0, 2}}));
}

TEST(CrossesItself, FindsEdgesThatFoldBack) {
    EXPECT_TRUE(crosses_itself(Polygon{{0, 0}, {4, 0}, {2, 0}, {2, 3}}));
    EXPECT_TRUE(crosses_itself(Polygon{{0, 0}, {4, 0}}));
    EXPECT_TRUE(crosses_itself(Polygon{{0, 0}, {4, 0}, {4, 4}, {4, -1}, {0, 4}}));
}

TEST(CrossesItself, AllowsStraightAndRepeatedCorners) {
    EXPECT_FALSE(crosses_itself(Polygon{{0, 0}, {1, 0}, {2, 0}, {2, 2}, {0, 2}}));
    EXPECT_FALSE(crosses_itself(Polygon{{0, 0}, {2, 0}, {2, 0}, {2, 2}, {0, 2}, {0, 0}}));
    EXPECT_FALSE(crosses_itself(Polygon{}));
    EXPECT_FALSE(crosses_itself(Polygon{{1, 1}}));
}

TEST(DistanceToSegment, MeasuresToTheNearestPoint) {
    EXPECT_DOUBLE_EQ(distance_to_segment({1, 2}, {0, 0}, {4, 0}), 2.0);
    EXPECT_DOUBLE_EQ(distance_to_segment({-3, 4}, {0, 0}, {4, 0}), 5.0);
    EXPECT_DOUBLE_EQ(distance_to_segment({7, -4}, {0, 0}, {4, 0}), 5.0);
    EXPECT_DOUBLE_EQ(distance_to_segment({3, 4}, {0, 0}, {0, 0}), 5.0);
}

TEST(CrossingShare, IsMeasuredAlongTheFirst) {
    EXPECT_DOUBLE_EQ(crossing_share({0, 0}, {4, 0}, {1, -1}, {1, 3}), 0.25);
    EXPECT_DOUBLE_EQ(crossing_share({0, 0}, {4, 0}, {4, 0}, {4, 3}), 1.0);
    EXPECT_LT(crossing_share({0, 0}, {4, 0}, {5, -1}, {5, 1}), 0.0);
    EXPECT_LT(crossing_share({0, 0}, {4, 0}, {1, 1}, {1, 3}), 0.0);
    EXPECT_LT(crossing_share({0, 0}, {4, 0}, {1, 0}, {3, 0}), 0.0);
    EXPECT_LT(crossing_share({0, 0}, {0, 0}, {1, 0}, {3, 0}), 0.0);
}

TEST(Rectangle, RunsAnticlockwiseFromLowerLeft) {
    const Polygon box = rectangle({1, 2}, 4, 2, 0.0);
    EXPECT_EQ(box, (Polygon{{-1, 1}, {3, 1}, {3, 3}, {-1, 3}}));
    const Polygon turned = rectangle({0, 0}, 4, 2, std::numbers::pi / 2);
    EXPECT_TRUE(turned[0].isApprox(Vec2{1, -2}, 1e-12));
    EXPECT_NEAR(signed_area(turned), 8.0, 1e-12);
}

TEST(Circle, EnclosesWhatIsRound) {
    for (const int sides : {3, 4, 7, 32}) {
        const Polygon round = circle({1, -1}, 2.0, sides);
        ASSERT_EQ(round.size(), static_cast<std::size_t>(sides));
        EXPECT_GT(signed_area(round), 4.0 * std::numbers::pi);
        for (std::size_t i = 0; i < round.size(); ++i) {
            EXPECT_NEAR(distance_to_segment({1, -1}, round[i], round[(i + 1) % round.size()]), 2.0,
                        1e-12);
        }
    }
}

double triangle_area(const Polygon& polygon, const std::array<int, 3>& triangle) {
    const auto corner = [&](int i) { return polygon[static_cast<std::size_t>(i)]; };
    return signed_area(Polygon{corner(triangle[0]), corner(triangle[1]), corner(triangle[2])});
}

/// Triangles anticlockwise, their areas adding up to the polygon's: with no overlap outside it,
/// that is an exact cover.
void expect_covered(const Polygon& polygon) {
    double total_m2 = 0.0;
    for (const auto& triangle : triangulated(polygon)) {
        const double part_m2 = triangle_area(polygon, triangle);
        ASSERT_GT(part_m2, 0.0);
        total_m2 += part_m2;
    }
    ASSERT_NEAR(total_m2, area(polygon), 1e-9 * (1.0 + area(polygon)));
}

TEST(Triangulated, CoversSimplePolygons) {
    expect_covered(kRoom);
    expect_covered(reversed(kRoom));
    expect_covered(circle({3, 3}, 1.0, 64));
    EXPECT_EQ(triangulated(kRoom).size(), 4U);
}

TEST(Triangulated, CopesWithStraightAndRepeatedCorners) {
    expect_covered({{0, 0}, {1, 0}, {2, 0}, {3, 0}, {3, 3}});
    expect_covered({{0, 0}, {1, 0}, {2, 0}, {2, 1}, {2, 2}, {1, 2}, {0, 2}, {0, 1}});
    expect_covered({{0, 0}, {2, 0}, {2, 0}, {2, 2}, {0, 2}, {0, 2}});
    expect_covered({{0, 0}, {4, 0}, {4, 4}, {4, 2}, {4, 5}, {0, 5}});
    // Every straight corner belongs to a triangle, so that neighbours share whole edges.
    EXPECT_EQ(triangulated(Polygon{{0, 0}, {1, 0}, {2, 0}, {3, 0}, {3, 3}}).size(), 3U);
}

TEST(Triangulated, IsEmptyWithoutArea) {
    EXPECT_TRUE(triangulated(Polygon{}).empty());
    EXPECT_TRUE(triangulated(Polygon{{0, 0}, {1, 1}}).empty());
    EXPECT_TRUE(triangulated(Polygon{{0, 0}, {0.1, 0.1}, {0.3, 0.3}, {0.7, 0.7}}).empty());
    EXPECT_TRUE(triangulated(Polygon{{1, 1}, {1, 1}, {1, 1}}).empty());
}

TEST(Triangulated, AnswersForWhatIsNotSimple) {
    EXPECT_LE(triangulated(kBowTie).size(), 2U);
    const double nan = std::nan("");
    EXPECT_LE(triangulated(Polygon{{0, 0}, {nan, 1}, {1, 1}, {1, 0}}).size(), 2U);
}

RC_GTEST_PROP(Triangulated, CoversRandomSimplePolygonsExactly, ()) {
    const Polygon polygon = *any_simple_polygon();
    expect_covered(polygon);
    // No triangle reaches outside: its centre is inside, and so is the middle of each side.
    for (const auto& triangle : triangulated(polygon)) {
        Vec2 centre = Vec2::Zero();
        for (std::size_t k = 0; k < 3; ++k) {
            const Vec2& a = polygon[static_cast<std::size_t>(triangle[k])];
            const Vec2& b = polygon[static_cast<std::size_t>(triangle[(k + 1) % 3])];
            RC_ASSERT(contains(polygon, (a + b) / 2.0, 1e-9));
            centre += a / 3.0;
        }
        RC_ASSERT(contains(polygon, centre, 1e-9));
    }
}

RC_GTEST_PROP(Contains, AgreesWithTheTriangles, ()) {
    const Polygon polygon = *any_simple_polygon();
    const Vec2 point = *any_point();
    bool in_triangle = false;
    for (const auto& triangle : triangulated(polygon)) {
        Polygon corners;
        for (const int i : triangle) {
            corners.push_back(polygon[static_cast<std::size_t>(i)]);
        }
        in_triangle = in_triangle || contains(corners, point, 1e-9);
    }
    RC_ASSERT(contains(polygon, point, 1e-9) == in_triangle);
}

RC_GTEST_PROP(CrossesItself, AcceptsSimplePolygonsAndNoCrossedOnes, ()) {
    Polygon polygon = *any_star_polygon();
    RC_ASSERT(!crosses_itself(polygon));
    // Two corners that are not neighbours swapped cross the edges of a star-shaped polygon.
    if (polygon.size() >= 5) {
        std::swap(polygon[1], polygon[2]);
        bool brute = false;
        for (std::size_t i = 0; i < polygon.size(); ++i) {
            for (std::size_t j = i + 2; j < polygon.size(); ++j) {
                const auto at = [&](std::size_t k) { return polygon[k % polygon.size()]; };
                brute = brute
                        || (!(i == 0 && j + 1 == polygon.size())
                            && crossing_share(at(i), at(i + 1), at(j), at(j + 1)) >= 0.0);
            }
        }
        RC_ASSERT(crosses_itself(polygon) == brute);
    }
}

} // namespace
} // namespace throwline
