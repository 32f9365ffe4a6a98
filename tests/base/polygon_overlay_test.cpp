#include "base/polygon.h"

#include "base/random_polygon.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <numeric>
#include <rapidcheck/gtest.h>
#include <thread>

namespace throwline {
namespace {

const Polygon kSquare{{0, 0}, {4, 0}, {4, 4}, {0, 4}};
const Polygon kInner{{1, 1}, {3, 1}, {3, 3}, {1, 3}};
const Polygon kBowTie{{0, 0}, {2, 2}, {2, 0}, {0, 2}};

double total_signed_area(const std::vector<Polygon>& parts) {
    return std::accumulate(parts.begin(), parts.end(), 0.0, [](double sum_m2, const Polygon& part) {
        return sum_m2 + signed_area(part);
    });
}

TEST(OverlapArea, IsWhatBothShare) {
    EXPECT_DOUBLE_EQ(overlap_area(kSquare, kInner), 4.0);
    EXPECT_DOUBLE_EQ(overlap_area(kSquare, rectangle({4, 4}, 2, 2, 0.0)), 1.0);
    EXPECT_DOUBLE_EQ(overlap_area(kSquare, rectangle({5, 2}, 2, 2, 0.0)), 0.0);
    EXPECT_DOUBLE_EQ(overlap_area(kSquare, rectangle({9, 9}, 2, 2, 0.0)), 0.0);
    // A square turned by 45 degrees on one of the same size leaves a regular octagon.
    EXPECT_NEAR(
        overlap_area(rectangle({0, 0}, 2, 2, 0.0), rectangle({0, 0}, 2, 2, std::numbers::pi / 4)),
        8.0 * (std::sqrt(2.0) - 1.0), 1e-12);
}

TEST(PartsOutside, BringsHolesBackClockwise) {
    const std::vector<Polygon> parts = parts_outside(kSquare, kInner);
    ASSERT_EQ(parts.size(), 2U);
    EXPECT_DOUBLE_EQ(signed_area(parts[0]), 16.0);
    EXPECT_DOUBLE_EQ(signed_area(parts[1]), -4.0);
}

TEST(PartsOutside, SplitsWhatIsCutThrough) {
    const std::vector<Polygon> parts = parts_outside(kSquare, rectangle({2, 2}, 1, 6, 0.0));
    ASSERT_EQ(parts.size(), 2U);
    EXPECT_DOUBLE_EQ(total_signed_area(parts), 12.0);
}

TEST(PartsOutside, IsTheWholeOrNothingAtTheEnds) {
    EXPECT_DOUBLE_EQ(total_signed_area(parts_outside(kSquare, Polygon{})), 16.0);
    EXPECT_DOUBLE_EQ(total_signed_area(parts_outside(kSquare, rectangle({9, 9}, 1, 1, 0))), 16.0);
    EXPECT_TRUE(parts_outside(kInner, kSquare).empty());
    EXPECT_TRUE(parts_outside(kSquare, kSquare).empty());
    EXPECT_TRUE(parts_outside(Polygon{}, kSquare).empty());
}

TEST(PartsOutside, LeavesOutSlivers) {
    EXPECT_TRUE(parts_outside(kSquare, rectangle({2, 2}, 4.0, 4.0 - 1e-9, 0.0)).empty());
}

TEST(PartsShared, ComesBackAnticlockwise) {
    Polygon clockwise = kInner;
    std::reverse(clockwise.begin(), clockwise.end());
    const std::vector<Polygon> parts = parts_shared(kSquare, clockwise);
    ASSERT_EQ(parts.size(), 1U);
    EXPECT_DOUBLE_EQ(signed_area(parts[0]), 4.0);
    EXPECT_TRUE(parts_shared(kSquare, rectangle({5, 2}, 2, 2, 0.0)).empty());
}

TEST(DistanceBetween, IsZeroWhereTheyMeet) {
    EXPECT_DOUBLE_EQ(distance_between(kSquare, rectangle({7, 2}, 2, 2, 0.0)), 2.0);
    EXPECT_DOUBLE_EQ(distance_between(kSquare, rectangle({8, 9}, 2, 4, 0.0)), std::hypot(3.0, 3.0));
    EXPECT_EQ(distance_between(kSquare, rectangle({5, 2}, 2, 2, 0.0)), 0.0);
    EXPECT_EQ(distance_between(kSquare, kInner), 0.0);
    EXPECT_EQ(distance_between(kSquare, Polygon{}), std::numeric_limits<double>::infinity());
}

TEST(Overlay, TakesACrossedPolygonAsWhatItEncloses) {
    EXPECT_DOUBLE_EQ(overlap_area(kBowTie, kSquare), 2.0);
    EXPECT_DOUBLE_EQ(total_signed_area(parts_outside(kSquare, kBowTie)), 14.0);
    EXPECT_DOUBLE_EQ(total_signed_area(parts_shared(kBowTie, kBowTie)), 2.0);
}

TEST(Overlay, AnswersForBrokenInput) {
    const double nan = std::nan("");
    const double infinite = std::numeric_limits<double>::infinity();
    const std::vector<Polygon> broken{
        {},
        {{1, 1}},
        {{1, 1}, {2, 2}},
        {{1, 1}, {1, 1}, {1, 1}},
        {{1, 1}, {2, 2}, {3, 3}},
        {{1, 1}, {3, 1}, {1, 1}, {3, 1}},
        {{nan, 1}, {2, 2}, {3, 1}},
        {{infinite, 1}, {2, 2}, {3, 1}},
        {{1e308, 1e308}, {-1e308, 1e308}, {-1e308, -1e308}, {1e308, -1e308}},
    };
    for (const Polygon& polygon : broken) {
        const double shared_m2 = overlap_area(kSquare, polygon);
        EXPECT_TRUE(shared_m2 >= 0.0 && shared_m2 <= 16.0 + 1e-9);
        EXPECT_LE(parts_shared(polygon, kSquare).size(), 1U);
        EXPECT_LE(total_signed_area(parts_outside(kSquare, polygon)), 16.0);
        EXPECT_GE(distance_between(polygon, kSquare), 0.0);
    }
}

TEST(Overlay, MayBeUsedFromSeveralThreads) {
    std::vector<double> found_m2(4, 0.0);
    {
        std::vector<std::jthread> threads;
        for (double& result_m2 : found_m2) {
            threads.emplace_back([&result_m2] {
                for (int i = 0; i < 200; ++i) {
                    result_m2 += overlap_area(kSquare, kInner);
                }
            });
        }
    }
    EXPECT_EQ(found_m2, std::vector<double>(4, 800.0));
}

/// Cells of a grid whose centre both contain: the slow twin of the overlay.
double grid_overlap_area(const Polygon& a, const Polygon& b, double cell_m) {
    int count = 0;
    const int cells = static_cast<int>(14.0 / cell_m);
    for (int i = -cells; i < cells; ++i) {
        for (int j = -cells; j < cells; ++j) {
            const Vec2 centre{(i + 0.5) * cell_m, (j + 0.5) * cell_m};
            count += contains(a, centre, 0.0) && contains(b, centre, 0.0) ? 1 : 0;
        }
    }
    return count * cell_m * cell_m;
}

double outline_m(const Polygon& polygon) {
    double total_m = 0.0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        total_m += (polygon[(i + 1) % polygon.size()] - polygon[i]).norm();
    }
    return total_m;
}

RC_GTEST_PROP(OverlapArea, AgreesWithAGrid, ()) {
    constexpr double kCell_m = 0.2;
    const Polygon a = *any_simple_polygon();
    const Polygon b = *any_simple_polygon();
    // Only cells on an outline can be counted wrong: at most one diagonal to each side of it, and
    // half of those in the worst case.
    const double slack_m2 = (outline_m(a) + outline_m(b) + 4.0 * kCell_m) * kCell_m;
    RC_ASSERT(std::abs(overlap_area(a, b) - grid_overlap_area(a, b, kCell_m)) <= slack_m2);
}

RC_GTEST_PROP(OverlapArea, IsTheSumOverPairsOfTriangles, ()) {
    const Polygon a = *any_simple_polygon();
    const Polygon b = *any_simple_polygon();
    const auto triangle = [](const Polygon& polygon, const std::array<int, 3>& corners) {
        return Polygon{polygon[static_cast<std::size_t>(corners[0])],
                       polygon[static_cast<std::size_t>(corners[1])],
                       polygon[static_cast<std::size_t>(corners[2])]};
    };
    double total_m2 = 0.0;
    for (const auto& of_a : triangulated(a)) {
        for (const auto& of_b : triangulated(b)) {
            total_m2 += overlap_area(triangle(a, of_a), triangle(b, of_b));
        }
    }
    RC_ASSERT(std::abs(overlap_area(a, b) - total_m2) <= 1e-6);
}

RC_GTEST_PROP(Overlay, InsideAndOutsideMakeTheWhole, ()) {
    const Polygon a = *any_simple_polygon();
    const Polygon b = *any_simple_polygon();
    const double outside_m2 = total_signed_area(parts_outside(a, b));
    const double shared_m2 = total_signed_area(parts_shared(a, b));
    // Each part left out is below 1 mm²; there are at most as many as pairs of edges.
    const double slack_m2 = 1e-6 * static_cast<double>(a.size() * b.size());
    RC_ASSERT(std::abs(outside_m2 + shared_m2 - area(a)) <= slack_m2);
    RC_ASSERT(std::abs(shared_m2 - overlap_area(a, b)) <= slack_m2);
    RC_ASSERT(std::abs(overlap_area(a, b) - overlap_area(b, a)) <= 1e-9);
}

RC_GTEST_PROP(DistanceBetween, AgreesWithEveryPairOfEdges, ()) {
    const Polygon a = *any_simple_polygon();
    const Polygon b = *any_simple_polygon();
    double nearest_m = contains(a, b[0]) || contains(b, a[0]) ? 0.0 : 1e9;
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (std::size_t j = 0; j < b.size(); ++j) {
            const Vec2& p = a[i];
            const Vec2& q = a[(i + 1) % a.size()];
            const Vec2& r = b[j];
            const Vec2& s = b[(j + 1) % b.size()];
            nearest_m = crossing_share(p, q, r, s) >= 0.0 ? 0.0 : nearest_m;
            nearest_m =
                std::min({nearest_m, distance_to_segment(p, r, s), distance_to_segment(r, p, q)});
        }
    }
    // A corner within a millimetre counts as inside above.
    RC_ASSERT(std::abs(distance_between(a, b) - nearest_m) <= 0.001);
}

} // namespace
} // namespace throwline
