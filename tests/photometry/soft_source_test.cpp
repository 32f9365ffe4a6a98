#include "photometry/soft_source.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <rapidcheck/gtest.h>

namespace throwline::photometry {
namespace {

SoftPanel panel_at(const Vec3& centre, const Vec3& facing, double width_m, double height_m) {
    catalogue::Instrument instrument;
    instrument.face_width = Length::metres(width_m);
    instrument.face_height = Length::metres(height_m);
    instrument.round_face = false;
    instrument.soft = true;
    return soft_panel(instrument, 1000.0 * width_m * height_m, centre, facing.normalized());
}

Vec3 side_of(const SoftPanel& panel) {
    const Vec3& u = panel.up;
    const Vec3& f = panel.facing;
    return {u.y() * f.z() - u.z() * f.y(), u.z() * f.x() - u.x() * f.z(),
            u.x() * f.y() - u.y() * f.x()};
}

/// The slow way: the face cut into small pieces, each a Lambertian point.
double summed_lx(const SoftPanel& panel, const Vec3& receiver, const Vec3& normal) {
    constexpr int kPieces = 160;
    const Vec3 side = side_of(panel);
    const double piece_m2 = face_area_m2(panel) / (kPieces * kPieces);
    double sum_lx = 0.0;
    for (int i = 0; i < kPieces; ++i) {
        for (int j = 0; j < kPieces; ++j) {
            const Vec3 from = panel.centre + side * (((i + 0.5) / kPieces - 0.5) * panel.width.m())
                              + panel.up * (((j + 0.5) / kPieces - 0.5) * panel.height.m());
            const Vec3 sight = receiver - from;
            const double away2 = sight.squaredNorm();
            const double sent = std::max(0.0, panel.facing.dot(sight));
            const double taken = std::max(0.0, -normal.dot(sight));
            sum_lx += panel.luminance_cd_m2 * piece_m2 * sent * taken / (away2 * away2);
        }
    }
    return sum_lx;
}

RC_GTEST_PROP(SoftSource, ThePolygonFormulaAgreesWithAFineSum, ()) {
    const SoftPanel panel = panel_at({0, 0, 2.5}, Vec3(0.3, 0.2, -1), 1.2, 0.6);
    const Vec3 receiver(*rc::gen::inRange(-30, 30) / 10.0, *rc::gen::inRange(-30, 30) / 10.0,
                        *rc::gen::inRange(0, 15) / 10.0);
    const double turn_rad = *rc::gen::inRange(-314, 314) / 100.0;
    const double lean_rad = *rc::gen::inRange(-150, 150) / 100.0;
    const Vec3 normal = raised(unit_at(turn_rad) * std::cos(lean_rad), std::sin(lean_rad));
    const double exact_lx = soft_illuminance_lx(panel, receiver, normal);
    const double slow_lx = summed_lx(panel, receiver, normal);
    // Where the horizon cuts the face, whole pieces fall in or out of the sum.
    RC_ASSERT(std::abs(exact_lx - slow_lx) <= 0.002 * std::max(1.0, slow_lx));
}

TEST(SoftSource, NothingIsSentBehindTheFace) {
    const SoftPanel panel = panel_at({0, 0, 2}, -Vec3::UnitZ(), 1, 1);
    EXPECT_EQ(soft_illuminance_lx(panel, {0, 0, 3}, -Vec3::UnitZ()), 0.0);
    EXPECT_GT(soft_illuminance_lx(panel, {0, 0, 1}, Vec3::UnitZ()), 0.0);
}

TEST(SoftSource, AReceiverTurnedAwayGetsNothing) {
    const SoftPanel panel = panel_at({0, 0, 2}, -Vec3::UnitZ(), 1, 1);
    EXPECT_EQ(soft_illuminance_lx(panel, {0, 0, 0}, -Vec3::UnitZ()), 0.0);
}

TEST(SoftSource, AFaceAcrossTheWholeSkyGivesPiTimesItsLuminance) {
    const SoftPanel sky = panel_at({0, 0, 1}, -Vec3::UnitZ(), 20000, 20000);
    EXPECT_NEAR(soft_illuminance_lx(sky, Vec3::Zero(), Vec3::UnitZ())
                    / (std::numbers::pi * sky.luminance_cd_m2),
                1.0, 1e-6);
    // An upright receiver sees half of it.
    EXPECT_NEAR(soft_illuminance_lx(sky, Vec3::Zero(), Vec3::UnitX())
                    / (std::numbers::pi * sky.luminance_cd_m2),
                0.5, 1e-3);
}

TEST(SoftSource, FarAwayItActsFromOnePoint) {
    SoftPanel panel = panel_at({0, 0, 50}, -Vec3::UnitZ(), 1, 0.5);
    const double point_lx = 1000.0 * 0.5 / (50.0 * 50.0);
    EXPECT_NEAR(soft_illuminance_lx(panel, Vec3::Zero(), Vec3::UnitZ()) / point_lx, 1.0, 2e-4);
    panel.round = true;
    EXPECT_NEAR(soft_illuminance_lx(panel, Vec3::Zero(), Vec3::UnitZ())
                    / (point_lx * std::numbers::pi / 4.0),
                1.0, 2e-4);
}

TEST(SoftSource, WindingOfTheCornersDoesNotMatter) {
    std::vector<Vec3> corners = face_corners(panel_at({1, 0, 2}, -Vec3::UnitZ(), 1, 1));
    const double one_lx = polygon_illuminance_lx(100, corners, Vec3::Zero(), Vec3::UnitX());
    std::reverse(corners.begin(), corners.end());
    EXPECT_NEAR(polygon_illuminance_lx(100, corners, Vec3::Zero(), Vec3::UnitX()), one_lx, 1e-12);
    EXPECT_GT(one_lx, 0.0);
}

TEST(SoftPanel, KeepsItsFaceLevel) {
    const SoftPanel tilted = panel_at({0, 0, 2}, Vec3(1, 1, -1), 1, 0.5);
    EXPECT_NEAR(tilted.up.dot(tilted.facing), 0.0, 1e-12);
    EXPECT_GT(tilted.up.z(), 0.0);
    EXPECT_NEAR(tilted.up.norm(), 1.0, 1e-12);
    const SoftPanel down = panel_at({0, 0, 2}, -Vec3::UnitZ(), 1, 0.5);
    EXPECT_NEAR(down.up.norm(), 1.0, 1e-12);
    EXPECT_NEAR(down.luminance_cd_m2, 1000, 1e-9);
}

TEST(SoftPanel, AFaceWithoutAreaIsDark) {
    EXPECT_EQ(panel_at({0, 0, 2}, -Vec3::UnitZ(), 0, 0.5).luminance_cd_m2, 0.0);
}

TEST(SoftPanel, ARoundFaceKeepsItsArea) {
    SoftPanel panel = panel_at({0, 0, 0}, -Vec3::UnitZ(), 1.0, 1.0);
    panel.round = true;
    double area_m2 = 0.0;
    const std::vector<Vec3> corners = face_corners(panel);
    for (std::size_t i = 0; i < corners.size(); ++i) {
        area_m2 += cross(floor_of(corners[i]), floor_of(corners[(i + 1) % corners.size()])) / 2.0;
    }
    EXPECT_NEAR(std::abs(area_m2), std::numbers::pi / 4.0, 1e-9);
}

TEST(SoftSource, WorkingCarriesItsResult) {
    const SoftPanel panel = panel_at({0, 0, 2}, -Vec3::UnitZ(), 1, 1);
    EXPECT_EQ(soft_illuminance_working(panel, Vec3::Zero(), Vec3::UnitZ()).result, "231 lx");
}

} // namespace
} // namespace throwline::photometry
