#include "optics/angle_of_view.h"
#include "optics/coverage.h"
#include "optics/extender.h"
#include "optics/safe_areas.h"

#include <array>
#include <gtest/gtest.h>

namespace throwline::optics {
namespace {

const PictureArea kStill{Length::millimetres(36), Length::millimetres(24), 1.0};

PictureArea area_mm(double width_mm, double height_mm, double squeeze = 1.0) {
    return {Length::millimetres(width_mm), Length::millimetres(height_mm), squeeze};
}

// "Angle of View Values for Common Focal Lengths" (2006), 36 x 24 mm, 20-135 mm; a three-decimal
// list of 1999 agrees for 20, 28, 35, 135 and 200 mm, and for the list's 24 and 50 mm.
struct PublishedAngles {
    double focal_mm;
    double horizontal_deg;
    double vertical_deg;
    double diagonal_deg;
};
constexpr std::array<PublishedAngles, 9> kPublished{{{20, 83.974, 61.928, 94.493},
                                                     {24, 73.740, 53.130, 84.062},
                                                     {28, 65.470, 46.397, 75.381},
                                                     {35, 54.432, 37.849, 63.440},
                                                     {50, 39.598, 26.991, 46.793},
                                                     {85, 23.913, 16.071, 28.558},
                                                     {100, 20.408, 13.686, 24.414},
                                                     {135, 15.189, 10.159, 18.208},
                                                     {200, 10.286, 6.867, 12.347}}};
constexpr double kLastDigit_deg = 0.0006;

TEST(AngleOfViewReference, PublishedTablesOf36By24AreMetToTheirLastDigit) {
    for (const PublishedAngles& row : kPublished) {
        const AngleOfView view = angle_of_view(kStill, Length::millimetres(row.focal_mm));
        EXPECT_NEAR(view.horizontal.deg(), row.horizontal_deg, kLastDigit_deg) << row.focal_mm;
        EXPECT_NEAR(view.vertical.deg(), row.vertical_deg, kLastDigit_deg) << row.focal_mm;
        EXPECT_NEAR(view.diagonal.deg(), row.diagonal_deg, kLastDigit_deg) << row.focal_mm;
    }
}

// The rest was computed by a separate script from plain geometry.

TEST(AngleOfViewReference, TwoThirdsTypeAnglesAgreeWithASeparateComputation) {
    const PictureArea area = area_mm(9.59, 5.39);
    const std::array<std::array<double, 3>, 4> rows{
        {{8, 61.875, 37.235}, {20, 26.964, 15.349}, {100, 5.490, 3.087}, {160, 3.433, 1.930}}};
    for (const auto& [focal_mm, horizontal_deg, vertical_deg] : rows) {
        const AngleOfView view = angle_of_view(area, Length::millimetres(focal_mm));
        EXPECT_NEAR(view.horizontal.deg(), horizontal_deg, kLastDigit_deg);
        EXPECT_NEAR(view.vertical.deg(), vertical_deg, kLastDigit_deg);
    }
}

TEST(AngleOfViewReference, SqueezedPicturesAgreeWithASeparateComputation) {
    const PictureArea classic = area_mm(22.00, 18.60, 2.0);
    const AngleOfView fifty = angle_of_view(classic, Length::millimetres(50));
    EXPECT_NEAR(fifty.horizontal.deg(), 47.499, kLastDigit_deg);
    EXPECT_NEAR(fifty.vertical.deg(), 21.073, kLastDigit_deg);
    EXPECT_NEAR(classic.aspect(), 2.3656, 0.00005);
    const PictureArea modern = area_mm(24, 18, 1.8);
    const AngleOfView forty = angle_of_view(modern, Length::millimetres(40));
    EXPECT_NEAR(forty.horizontal.deg(), 56.738, kLastDigit_deg);
    EXPECT_NEAR(forty.vertical.deg(), 25.361, kLastDigit_deg);
    EXPECT_NEAR(modern.aspect(), 2.400, 1e-9);
}

TEST(AngleOfViewReference, NearFocusNarrowsTheThinLens) {
    const auto near = angle_of_view_focused(kStill, Length::millimetres(85), Length::metres(1.5));
    ASSERT_TRUE(near);
    EXPECT_NEAR(near->horizontal.deg(), 22.594, kLastDigit_deg);
    EXPECT_NEAR(angle_of_view(area_mm(24.89, 14), Length::millimetres(35)).horizontal.deg(), 39.148,
                kLastDigit_deg);
}

TEST(CoverageReference, CheckRowsAgreeWithASeparateComputation) {
    const Coverage small =
        coverage(area_mm(9.59, 5.39), Length::millimetres(20), Length::metres(4));
    EXPECT_NEAR(small.width.m(), 1.918, 0.0005);
    EXPECT_NEAR(small.height.m(), 1.078, 0.0005);
    const Coverage cine =
        coverage(area_mm(24.89, 14.00), Length::millimetres(35), Length::metres(3.5));
    EXPECT_NEAR(cine.width.m(), 2.489, 0.0005);
    EXPECT_NEAR(cine.height.m(), 1.400, 0.0005);
    EXPECT_NEAR(
        distance_for_height(area_mm(9.59, 5.39), Length::millimetres(20), Length::metres(1.80)).m(),
        6.679, 0.0005);
    EXPECT_NEAR(focal_for_width(area_mm(24.89, 14), Length::metres(3), Length::metres(5)).mm(),
                41.483, 0.0005);
}

TEST(CoverageReference, PinholeAndThinLensDifferByTheKnownAmount) {
    const Length fifty = Length::millimetres(50);
    EXPECT_NEAR(coverage(kStill, fifty, Length::metres(2)).width.mm(), 1440, 0.01);
    EXPECT_NEAR(coverage_focused(kStill, fifty, Length::metres(2))->width.mm(), 1404, 0.01);
    const Length portrait = Length::millimetres(85);
    EXPECT_NEAR(coverage(kStill, portrait, Length::metres(1.5)).width.mm(), 635.29, 0.005);
    EXPECT_NEAR(coverage_focused(kStill, portrait, Length::metres(1.5))->width.mm(), 599.29, 0.005);
}

TEST(ExtenderReference, LossesAgreeWithASeparateComputation) {
    const ExtendedLens doubled = extended(Length::millimetres(160), 2.7, 2.0);
    EXPECT_NEAR(doubled.focal.mm(), 320, 1e-9);
    EXPECT_NEAR(doubled.stop, 5.4, 1e-12);
    EXPECT_NEAR(doubled.lost_stops, 2.0, 1e-12);
    EXPECT_NEAR(extended(Length::millimetres(50), 2.8, 1.4).lost_stops, 0.971, 0.0005);
}

// Percentages: SMPTE ST 2046-1:2009 as quoted in a moving-image dictionary.
TEST(SafeAreasReference, BoxesInTheUsualRastersAreThoseOfTheStandard) {
    const SafeBox action = safe_box(1920, 1080, kActionSafeShare);
    EXPECT_NEAR(action.width_px, 1785.60, 1e-9);
    EXPECT_NEAR(action.height_px, 1004.40, 1e-9);
    EXPECT_NEAR(action.margin_x_px, 67.20, 1e-9);
    EXPECT_NEAR(action.margin_y_px, 37.80, 1e-9);
    const SafeBox title = safe_box(3840, 2160, kTitleSafeShare);
    EXPECT_NEAR(title.width_px, 3456, 1e-9);
    EXPECT_NEAR(title.margin_y_px, 108, 1e-9);
    EXPECT_NEAR(safe_box(1280, 720, kActionSafeShare).width_px, 1190.40, 1e-9);
    EXPECT_NEAR(safe_box(1280, 720, kTitleSafeShare).height_px, 648, 1e-9);
}

} // namespace
} // namespace throwline::optics
