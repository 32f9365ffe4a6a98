#include "stage/rays.h"

#include "stage/brute_force.h"
#include "stage/mesh.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <random>
#include <thread>

namespace throwline::stage {
namespace {

Solid solid_of(Mesh mesh, int owner) {
    Solid solid;
    solid.owner_index = owner;
    solid.mesh = std::move(mesh);
    return solid;
}

/// Boxes, cylinders and balls strewn over a floor of 10 x 10 m, each an owner of its own.
std::vector<Solid> strewn(unsigned seed, int count, const Vec3& shift = Vec3::Zero()) {
    std::mt19937 random{seed};
    const auto between = [&](double low, double high) {
        return low + (high - low) * static_cast<double>(random()) / 4294967295.0;
    };
    std::vector<Solid> solids;
    for (int i = 0; i < count; ++i) {
        const double x = between(0.0, 10.0);
        const double y = between(0.0, 10.0);
        const double z = between(0.0, 2.0);
        const double size = between(0.2, 0.8);
        const double turn = between(0.0, 3.0);
        const Vec3 at = Vec3{x, y, z} + shift;
        if (i % 3 == 0) {
            solids.push_back(solid_of(
                upright_box(floor_of(at), size, 2.0 * size, turn, at.z(), at.z() + size), i));
        } else if (i % 3 == 1) {
            solids.push_back(solid_of(cylinder(at, size / 2.0, size), i));
        } else {
            solids.push_back(solid_of(
                ellipsoid(at, Vec3{size, 0, 0}, Vec3{0, size / 2.0, 0}, Vec3{0, 0, size / 3.0}),
                i));
        }
    }
    return solids;
}

Vec3 random_point(std::mt19937& random) {
    const auto unit = [&] { return static_cast<double>(random()) / 4294967295.0; };
    const double x = unit();
    const double y = unit();
    const double z = unit();
    return {12.0 * x - 1.0, 12.0 * y - 1.0, 3.0 * z};
}

std::vector<Segment> random_segments(unsigned seed, int count) {
    std::mt19937 random{seed};
    std::vector<Segment> segments;
    for (int i = 0; i < count; ++i) {
        const Vec3 from = random_point(random);
        const Vec3 to = random_point(random);
        segments.push_back({from, to});
    }
    return segments;
}

// Single precision 10 m away leaves about a hundredth of a millimetre; edges may fall either way.
constexpr double kDistanceTolerance_m = 1e-4;
constexpr int kEdgeCases = 2;

TEST(RayScene, AgreesWithALoopOverAllTriangles) {
    const std::vector<Solid> solids = strewn(7, 60);
    const RayScene scene{solids};
    const BruteForce slow{solids};
    int differences = 0;
    int hits = 0;
    for (const Segment& segment : random_segments(11, 2000)) {
        const auto fast_hit = scene.first_between(segment);
        const auto slow_hit = slow.first_between(segment);
        EXPECT_EQ(fast_hit.has_value(), scene.is_blocked(segment));
        if (fast_hit.has_value() != slow_hit.has_value()
            || (fast_hit
                && (fast_hit->owner != slow_hit->owner || fast_hit->front != slow_hit->front))) {
            ++differences;
            continue;
        }
        if (fast_hit) {
            ++hits;
            EXPECT_NEAR(fast_hit->distance_m, slow_hit->distance_m, kDistanceTolerance_m);
        }
    }
    EXPECT_LE(differences, kEdgeCases);
    EXPECT_GT(hits, 500);
}

TEST(RayScene, PacketsGiveTheAnswersOfSingleRays) {
    const std::vector<Solid> solids = strewn(3, 40);
    const RayScene scene{solids};
    // Not a multiple of 16, so the last packet is not full.
    const std::vector<Segment> segments = random_segments(5, 1003);
    for (const LetThrough through : {LetThrough{}, LetThrough{4, 17}}) {
        const std::vector<bool> blocked = scene.blocked(segments, through);
        const auto firsts = scene.firsts_between(segments, through);
        ASSERT_EQ(blocked.size(), segments.size());
        int differences = 0;
        for (std::size_t i = 0; i < segments.size(); ++i) {
            const auto single = scene.first_between(segments[i], through);
            differences += blocked[i] != scene.is_blocked(segments[i], through) ? 1 : 0;
            differences += firsts[i].has_value() != single.has_value() ? 1 : 0;
            if (single && firsts[i]) {
                EXPECT_EQ(firsts[i]->owner, single->owner);
                EXPECT_NEAR(firsts[i]->distance_m, single->distance_m, kDistanceTolerance_m);
            }
        }
        EXPECT_LE(differences, kEdgeCases);
    }
}

TEST(RayScene, NearestHitsComeInTheOrderOfTheDirections) {
    const std::vector<Solid> solids{solid_of(upright_box({5, 0}, 1, 1, 0, -1, 1), 1),
                                    solid_of(upright_box({0, 3}, 1, 1, 0, -1, 1), 2)};
    const RayScene scene{solids};
    const std::vector<Vec3> directions{Vec3::UnitY(), Vec3::UnitX(), -Vec3::UnitX()};
    const auto hits = scene.nearest_hits(Vec3::Zero(), directions, 100.0);
    ASSERT_EQ(hits.size(), 3U);
    EXPECT_EQ(hits[0]->owner, 2);
    EXPECT_NEAR(hits[0]->distance_m, 2.5, kDistanceTolerance_m);
    EXPECT_EQ(hits[1]->owner, 1);
    EXPECT_NEAR(hits[1]->distance_m, 4.5, kDistanceTolerance_m);
    EXPECT_FALSE(hits[2].has_value());
}

TEST(RayScene, LetsUpToTwoOwnersThrough) {
    const std::vector<Solid> solids{solid_of(upright_box({2, 0}, 1, 1, 0, -1, 1), 1),
                                    solid_of(upright_box({4, 0}, 1, 1, 0, -1, 1), 2),
                                    solid_of(upright_box({6, 0}, 1, 1, 0, -1, 1), 3)};
    const RayScene scene{solids};
    const Segment segment{Vec3::Zero(), {8, 0, 0}};
    EXPECT_EQ(scene.first_between(segment)->owner, 1);
    EXPECT_EQ(scene.first_between(segment, {1, -1})->owner, 2);
    EXPECT_EQ(scene.first_between(segment, {2, 1})->owner, 3);
    EXPECT_EQ(scene.first_between(segment, {3, 1})->owner, 2);
    EXPECT_TRUE(scene.is_blocked(segment, {1, 2}));
    EXPECT_FALSE(scene.is_blocked({Vec3::Zero(), {5, 0, 0}}, {1, 2}));
    EXPECT_FALSE(scene.blocked(std::vector<Segment>{{Vec3::Zero(), {5, 0, 0}}}, {1, 2})[0]);
}

TEST(RayScene, TellsFrontFromBack) {
    const Mesh wall = sheet({2, -1, -1}, {2, -1, 1}, {2, 1, 1}, {2, 1, -1});
    const RayScene scene{std::vector{solid_of(wall, 0)}};
    const auto from_low_x = scene.nearest_hit(Vec3::Zero(), Vec3::UnitX(), 10);
    const auto from_high_x = scene.nearest_hit({4, 0, 0}, -Vec3::UnitX(), 10);
    const Vec3 normal =
        (wall.vertices[1] - wall.vertices[0]).cross(wall.vertices[2] - wall.vertices[0]);
    EXPECT_EQ(from_low_x->front, normal.x() < 0.0);
    EXPECT_EQ(from_high_x->front, normal.x() > 0.0);
}

TEST(RayScene, EndsFallShortByTheOffset) {
    const RayScene scene{
        std::vector{solid_of(sheet({2, -1, -1}, {2, 1, -1}, {2, 1, 1}, {2, -1, 1}), 0)}};
    EXPECT_FALSE(scene.is_blocked({Vec3::Zero(), {2, 0, 0}}));
    EXPECT_FALSE(scene.is_blocked({{2, 0, 0}, {4, 0, 0}}));
    EXPECT_TRUE(scene.is_blocked({Vec3::Zero(), {2 + 2 * kRayOffset_m, 0, 0}}));
    EXPECT_FALSE(scene.is_blocked({{2, 0, 0}, {2, 0, 0}}));
}

TEST(RayScene, AnEmptyStageBlocksNothing) {
    const RayScene scene{std::span<const Solid>{}};
    EXPECT_FALSE(scene.nearest_hit(Vec3::Zero(), Vec3::UnitX(), 100).has_value());
    EXPECT_FALSE(scene.is_blocked({Vec3::Zero(), Vec3::UnitX()}));
}

TEST(RayScene, NoRaySlipsOutBetweenTriangles) {
    const Mesh ball = ellipsoid(Vec3::Zero(), {1, 0, 0}, {0, 1.3, 0}, {0, 0, 0.8}, 12, 24);
    const RayScene scene{std::vector{solid_of(ball, 0)}};
    // Aimed from inside at points on edges, where an unwary test lets rays pass.
    std::mt19937 random{1};
    std::vector<Segment> shots;
    for (const auto& triangle : ball.triangles) {
        for (int i = 0; i < 50; ++i) {
            const double share = static_cast<double>(random()) / 4294967295.0;
            const Vec3 on_edge =
                share * ball.vertices[triangle[0]] + (1 - share) * ball.vertices[triangle[1]];
            shots.push_back({Vec3{0.1, -0.05, 0.02}, 3.0 * on_edge});
        }
    }
    const std::vector<bool> blocked = scene.blocked(shots);
    const auto leaks = std::count(blocked.begin(), blocked.end(), false);
    // Robust queries left 70 leaks in 1.8 million such shots when measured.
    EXPECT_LE(static_cast<double>(leaks), 1e-4 * static_cast<double>(shots.size()));
    EXPECT_GT(shots.size(), 20000U);
}

TEST(RayScene, ThreadsGetTheAnswersOfOne) {
    const std::vector<Solid> solids = strewn(3, 40);
    const RayScene scene{solids};
    const std::vector<Segment> segments = random_segments(5, 800);
    const std::vector<bool> alone = scene.blocked(segments, {5, -1});
    std::vector<std::vector<bool>> answers(4);
    {
        std::vector<std::jthread> threads;
        for (auto& answer : answers) {
            threads.emplace_back([&] { answer = scene.blocked(segments, {5, -1}); });
        }
    }
    for (const auto& answer : answers) {
        EXPECT_EQ(answer, alone);
    }
}

TEST(RayScene, AFarOffPlanAnswersLikeOneAtTheOrigin) {
    const Vec3 shift{4000.0, -9000.0, 0.0};
    const RayScene near_scene{strewn(3, 40)};
    const RayScene far_scene{strewn(3, 40, shift)};
    int differences = 0;
    for (const Segment& segment : random_segments(5, 500)) {
        const Segment moved{segment.from + shift, segment.to + shift};
        differences += near_scene.is_blocked(segment) != far_scene.is_blocked(moved) ? 1 : 0;
    }
    EXPECT_LE(differences, kEdgeCases);
}

RC_GTEST_PROP(RayScene, OneMoreSolidNeverOpensAWay, ()) {
    const auto seed = *rc::gen::inRange(1U, 100000U);
    std::vector<Solid> solids = strewn(seed, 13);
    const Solid last = solids.back();
    solids.pop_back();
    const RayScene fewer{solids};
    solids.push_back(last);
    const RayScene more{solids};
    const std::vector<Segment> segments = random_segments(seed, 64);
    const std::vector<bool> before = fewer.blocked(segments);
    const std::vector<bool> after = more.blocked(segments);
    for (std::size_t i = 0; i < segments.size(); ++i) {
        RC_ASSERT(!before[i] || after[i]);
    }
}

} // namespace
} // namespace throwline::stage
