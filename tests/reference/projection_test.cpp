#include "optics/camera_pose.h"

#include <array>
#include <gtest/gtest.h>

namespace throwline::optics {
namespace {

// Pixel positions by a general vision library's point projection (its pinhole model without
// distortion), which agreed with plain geometry to 1e-6 px. There pan runs clockwise from +y, v
// down the picture.
constexpr double kColumns = 1920.0;
constexpr double kRows = 1080.0;
const double kTanHalfH = 9.59 / 16.0;
const double kTanHalfV = 5.39 / 16.0;
constexpr double kPixelDigits = 0.0006;

CameraPose posed(const Vec3& lens, double pan_clockwise_from_y_deg, double tilt_deg,
                 double roll_deg) {
    return {lens, Angle::degrees(90.0 - pan_clockwise_from_y_deg), Angle::degrees(tilt_deg),
            Angle::degrees(roll_deg)};
}

Vec2 pixel_of(const Vec2& frame_point) {
    return {(1.0 + frame_point.x()) * kColumns / 2.0, (1.0 - frame_point.y()) * kRows / 2.0};
}

struct ProjectedPoint {
    std::array<double, 3> point;
    double column;
    double row;
    double depth_m;
};
constexpr std::array<ProjectedPoint, 5> kPoints{{{{2, 5, 1.7}, 1010.7312, 339.5446, 5.3446},
                                                 {{1.5, 6, 0}, 795.5515, 785.4151, 6.2585},
                                                 {{2.2, 6, 1.75}, 963.8380, 336.3534, 6.3445},
                                                 {{2, 5.5, 1.5}, 959.5259, 399.7584, 5.8301},
                                                 {{0, 8, 3}, 364.4165, 71.7384, 7.3582}}};

TEST(ProjectionReference, PointsFallWhereAVisionLibraryPutsThem) {
    const Frame frame(posed({0, 0, 1.5}, 20, -5, 0), kTanHalfH, kTanHalfV);
    for (const ProjectedPoint& expected : kPoints) {
        const Vec3 point(expected.point[0], expected.point[1], expected.point[2]);
        const auto seen = frame.project(point);
        ASSERT_TRUE(seen);
        EXPECT_NEAR(pixel_of(*seen).x(), expected.column, kPixelDigits);
        EXPECT_NEAR(pixel_of(*seen).y(), expected.row, kPixelDigits);
        EXPECT_NEAR(frame.depth(point), expected.depth_m, 0.00006);
    }
}

TEST(ProjectionReference, ARolledCameraAgreesToo) {
    const Frame frame(posed({3, -1, 1.6}, -35, 3, 4), kTanHalfH, kTanHalfV);
    const auto seen = frame.project({1, 4, 1.7});
    ASSERT_TRUE(seen);
    EXPECT_NEAR(pixel_of(*seen).x(), 1338.57, 0.006);
    EXPECT_NEAR(pixel_of(*seen).y(), 567.017, 0.0006);
    EXPECT_NEAR(frame.depth({1, 4, 1.7}), 5.2410, 0.00006);
}

TEST(ProjectionReference, RotationRowsAgree) {
    const CameraAxes axes = axes_of(posed({0, 0, 1.5}, 20, -5, 0));
    EXPECT_LT((axes.right - Vec3(.939693, -.342020, 0)).norm(), 2e-6);
    EXPECT_LT((axes.down - Vec3(-.029809, -.081900, -.996195)).norm(), 2e-6);
    EXPECT_LT((axes.forward - Vec3(.340719, .936117, -.087156)).norm(), 2e-6);
}

TEST(ProjectionReference, AStandingPersonHasTheKnownHeightInPixels) {
    const Frame frame(posed({0, 0, 1.5}, 0, 0, 0), kTanHalfH, kTanHalfV);
    const auto crown = frame.project({0, 6, 1.75});
    const auto soles = frame.project({0, 6, 0});
    ASSERT_TRUE(crown && soles);
    EXPECT_NEAR(pixel_of(*soles).y() - pixel_of(*crown).y(), 467.53, 0.006);
}

} // namespace
} // namespace throwline::optics
