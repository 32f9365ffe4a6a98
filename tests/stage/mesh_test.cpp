#include "stage/mesh.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <Eigen/Geometry>
#include <numbers>

namespace throwline::stage {
namespace {

constexpr double kPi = std::numbers::pi;

TEST(Mesh, ABoxIsClosedAndHoldsItsVolume) {
    const Mesh mesh = upright_box({3, 4}, 2.0, 0.5, 0.7, 1.0, 2.5);
    EXPECT_TRUE(is_closed(mesh));
    EXPECT_NEAR(volume_m3(mesh), 2.0 * 0.5 * 1.5, 1e-12);
}

TEST(Mesh, APrismIsClosedWhicheverWayItsOutlineRuns) {
    Polygon outline{{0, 0}, {4, 0}, {4, 1}, {1, 1}, {1, 3}, {0, 3}};
    const Mesh mesh = prism(outline, 0.5, 2.5);
    EXPECT_TRUE(is_closed(mesh));
    EXPECT_NEAR(volume_m3(mesh), 6.0 * 2.0, 1e-12);
    std::reverse(outline.begin(), outline.end());
    const Mesh turned = prism(outline, 0.5, 2.5);
    EXPECT_TRUE(is_closed(turned));
    EXPECT_NEAR(volume_m3(turned), 12.0, 1e-12);
    EXPECT_TRUE(prism(Polygon{{0, 0}, {1, 0}, {2, 0}}, 0, 1).triangles.empty());
}

TEST(Mesh, RoundShapesAreClosedAndFaceOutwards) {
    const Mesh drum = cylinder({1, 2, 3}, 0.5, 2.0, 32);
    EXPECT_TRUE(is_closed(drum));
    EXPECT_NEAR(volume_m3(drum), kPi * 0.25 * 2.0, 0.01 * kPi);
    const Mesh egg = ellipsoid({1, 2, 3}, {0.3, 0, 0}, {0, 0.4, 0}, {0, 0, 0.5}, 24, 32);
    EXPECT_TRUE(is_closed(egg));
    EXPECT_NEAR(volume_m3(egg), 4.0 / 3.0 * kPi * 0.06, 0.01);
    const Mesh pill = capsule({0, 0, 0}, {1, 1, 0.3}, 0.2, 32);
    EXPECT_TRUE(is_closed(pill));
    EXPECT_GT(volume_m3(pill), 0.9 * kPi * 0.04 * std::sqrt(2.09));
    const Mesh cone = rod({0, 0, 0}, {0, 0, 2}, 0.02, 0.01);
    EXPECT_TRUE(is_closed(cone));
    EXPECT_GT(volume_m3(cone), 0.0);
}

TEST(Mesh, SheetsLookTheWayTheyAreTold) {
    const Polygon outline{{0, 0}, {0, 2}, {2, 2}, {2, 0}};
    for (const bool up : {true, false}) {
        const Mesh mesh = level_sheet(outline, 1.0, up);
        ASSERT_EQ(mesh.triangles.size(), 2U);
        for (const auto& [a, b, c] : mesh.triangles) {
            const Vec3 normal =
                (mesh.vertices[b] - mesh.vertices[a]).cross(mesh.vertices[c] - mesh.vertices[a]);
            EXPECT_EQ(normal.z() > 0.0, up);
        }
    }
}

RC_GTEST_PROP(Mesh, AnOrientedBoxKeepsItsVolumeHoweverItIsTurned, ()) {
    const double turn = *rc::gen::inRange(-314, 314) / 100.0;
    const double width = *rc::gen::inRange(1, 500) / 100.0;
    const double depth = *rc::gen::inRange(1, 500) / 100.0;
    const Mesh mesh = upright_box({1, -2}, width, depth, turn, 0.0, 1.0);
    RC_ASSERT(is_closed(mesh));
    RC_ASSERT(std::abs(volume_m3(mesh) - width * depth) < 1e-9);
}

} // namespace
} // namespace throwline::stage
