#include "sheet/underlay.h"

#include "plan/picture_placing.h"
#include "sheet/png_picture.h"
#include "sheet/sheet_support.h"
#include "sheet/written_sheet.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::session;

constexpr int kWidth_px = 600;
constexpr int kHeight_px = 400;
/// Dark spots of the scan, and how far they reach from their middles.
constexpr int kSpot_px = 6;
const Vec2 kSpotA{120.0, 90.0};
const Vec2 kSpotB{480.0, 310.0};

/// A white scan with two dark spots.
std::shared_ptr<const Pixels> scan() {
    auto pixels = std::make_shared<Pixels>();
    pixels->width = kWidth_px;
    pixels->height = kHeight_px;
    pixels->rgb.assign(std::size_t{3} * kWidth_px * kHeight_px, 255);
    for (const Vec2& spot : {kSpotA, kSpotB}) {
        for (int y = static_cast<int>(spot.y()) - kSpot_px; y < spot.y() + kSpot_px; ++y) {
            for (int x = static_cast<int>(spot.x()) - kSpot_px; x < spot.x() + kSpot_px; ++x) {
                for (int channel = 0; channel < 3; ++channel) {
                    pixels->rgb.at(static_cast<std::size_t>(3 * (y * kWidth_px + x) + channel)) =
                        31;
                }
            }
        }
    }
    return pixels;
}

plan::Underlay placed(const Vec2& at_a, const Vec2& at_b, bool mirrored) {
    plan::Underlay underlay;
    underlay.file = "scan.png";
    underlay.pixel_a = kSpotA;
    underlay.pixel_b = kSpotB;
    underlay.at_a = at_a;
    underlay.at_b = at_b;
    underlay.strength = 1.0;
    underlay.mirrored = mirrored;
    return underlay;
}

Drawing drawn(const plan::Underlay& underlay) {
    plan::Plan plan = test::small_plan();
    plan.underlay = underlay;
    plan.scenery.clear();
    plan.people.clear();
    plan.beats.front().marks.clear();
    plan.shots.clear();
    plan.lamps.clear();
    SheetOptions options;
    options.scale = "1:25";
    options.ground = false;
    options.underlay = scan();
    return test::floor_plan_of(test::analysed(plan), options, session().measure()).value();
}

const Picture& picture_in(const Drawing& drawing) {
    return std::get<Picture>(drawing.layers.front().marks.front());
}

/// Paper place of a pixel of the whole scan, from what was laid down of it.
Vec2 place_of(const Picture& picture, const Vec2& pixel, const Vec2& first_pixel) {
    const Vec2 from = pixel - first_pixel;
    return picture.corner + picture.across * (from.x() / picture.pixels->width)
           + picture.down * (from.y() / picture.pixels->height);
}

/// Paper places of the plan's corners [0, 0] and [5, 4], from the walls that are drawn.
struct PaperOfPlan {
    Vec2 origin;
    double mm_per_m;
    Vec2 at(const Vec2& place) const {
        return origin + Vec2{place.x() * mm_per_m, -place.y() * mm_per_m};
    }
};

PaperOfPlan paper_of_plan(const Drawing& drawing) {
    Vec2 low = Vec2::Constant(1e9);
    for (const Layer& layer : drawing.layers) {
        for (const Mark& mark : layer.marks) {
            const auto* path = std::get_if<Path>(&mark);
            // The inner face of the left wall is the only line of its length.
            if (layer.name == "built" && path != nullptr && path->points.size() == 2
                && std::abs((path->points[1] - path->points[0]).y()) > 159.99
                && std::abs((path->points[1] - path->points[0]).norm() - 160.0) < 1e-6) {
                const double bottom = std::max(path->points[0].y(), path->points[1].y());
                if (path->points[0].x() < low.x()) {
                    low = {path->points[0].x(), bottom};
                }
            }
        }
    }
    return {low, 40.0};
}

struct PlacingCase {
    Vec2 at_a;
    Vec2 at_b;
    bool mirrored;
};

std::vector<PlacingCase> placing_cases() {
    std::vector<PlacingCase> cases;
    for (const bool mirrored : {false, true}) {
        for (const double turn_deg : {0.0, 17.0, 90.0, 143.0, 260.0}) {
            const Vec2 middle{2.5, 2.0};
            const Vec2 half = rotated(Vec2{1.1, 0.3}, turn_deg * 3.14159265358979 / 180.0);
            cases.push_back({middle - half, middle + half, mirrored});
        }
    }
    return cases;
}

TEST(Underlay, BothPointsLandWhereThePlanSays) {
    for (const PlacingCase& placing : placing_cases()) {
        const plan::PicturePlacing where{placed(placing.at_a, placing.at_b, placing.mirrored)};
        EXPECT_LT((where.at(kSpotA) - placing.at_a).norm(), 1e-12);
        EXPECT_LT((where.at(kSpotB) - placing.at_b).norm(), 1e-12);
        // Flipped pictures turn the other way round.
        const Vec2 right = where.at({1.0, 0.0}) - where.at({0.0, 0.0});
        const Vec2 down = where.at({0.0, 1.0}) - where.at({0.0, 0.0});
        EXPECT_NEAR(right.norm(), down.norm(), 1e-12);
        EXPECT_EQ(cross(right, down) > 0.0, placing.mirrored);
    }
}

/// Middle of the dark pixels within 5 mm of a place, millimetres.
Vec2 dark_middle(const test::PngPicture& picture, const Vec2& near) {
    const auto pixel = [&](double mm) {
        return static_cast<int>(std::lround(mm * picture.pixels_per_mm));
    };
    Vec2 moment = Vec2::Zero();
    double ink = 0.0;
    for (int y = pixel(near.y() - 5.0); y < pixel(near.y() + 5.0); ++y) {
        for (int x = pixel(near.x() - 5.0); x < pixel(near.x() + 5.0); ++x) {
            ink += picture.cover(x, y);
            moment += picture.cover(x, y) * Vec2{x + 0.5, y + 0.5};
        }
    }
    return moment / ink / picture.pixels_per_mm;
}

TEST(Underlay, SpotsOfTheScanArePaintedWithinATenthOfAMillimetre) {
    double worst_mm = 0.0;
    for (const PlacingCase& placing : placing_cases()) {
        const Drawing drawing = drawn(placed(placing.at_a, placing.at_b, placing.mirrored));
        const PaperOfPlan paper = paper_of_plan(drawing);
        const test::PngPicture picture =
            test::png_picture(paint::rendered_png(session(), drawing, 127.0).value());
        for (const Vec2& at : {placing.at_a, placing.at_b}) {
            const Vec2 expected = paper.at(at);
            worst_mm = std::max(worst_mm, (dark_middle(picture, expected) - expected).norm());
        }
    }
    EXPECT_LT(worst_mm, 0.1);
    RecordProperty("worst_mm", std::to_string(worst_mm));
}

TEST(Underlay, LiesBeneathEverythingAndStaysInItsField) {
    const Drawing drawing = drawn(placed({-20.0, -20.0}, {30.0, 25.0}, false));
    ASSERT_EQ(drawing.layers.front().name, "underlay");
    const std::vector<Mark>& marks = drawing.layers.front().marks;
    ASSERT_EQ(marks.size(), 5U);
    double masked_mm2 = 0.0;
    for (std::size_t i = 1; i < marks.size(); ++i) {
        const auto& mask = std::get<Path>(marks[i]);
        EXPECT_EQ(mask.fill, (Fill{Ink::paper, Hatch::solid, 1.0}));
        const Vec2 size = mask.points[2] - mask.points[0];
        masked_mm2 += size.x() * size.y();
    }
    EXPECT_GT(masked_mm2, 0.3 * drawing.width_mm * drawing.height_mm);
    EXPECT_LT(masked_mm2, 0.7 * drawing.width_mm * drawing.height_mm);
}

TEST(Underlay, OnlyTheNeededPartIsKept) {
    const plan::Underlay underlay = placed({-10.0, -8.0}, {14.0, 12.0}, false);
    const Drawing drawing = drawn(underlay);
    const Picture& part = picture_in(drawing);
    EXPECT_LT(part.pixels->width, kWidth_px);
    EXPECT_LT(part.pixels->height, kHeight_px);
    const PaperOfPlan paper = paper_of_plan(drawing);
    // The step from pixel to pixel is the same everywhere, so the first kept one follows.
    const plan::PicturePlacing where{underlay};
    const Vec2 right = paper.at(where.at({1.0, 0.0})) - paper.at(where.at({0.0, 0.0}));
    EXPECT_LT((part.across / part.pixels->width - right).norm(), 1e-6);
    const Vec2 corner = paper.at(where.at({0.0, 0.0}));
    const Vec2 down = paper.at(where.at({0.0, 1.0})) - corner;
    const double area = cross(right, down);
    const Vec2 first{cross(part.corner - corner, down) / area,
                     cross(right, part.corner - corner) / area};
    EXPECT_NEAR(first.x(), std::round(first.x()), 1e-3);
    EXPECT_NEAR(first.y(), std::round(first.y()), 1e-3);
    EXPECT_LT((place_of(part, kSpotA, first) - paper.at(underlay.at_a)).norm(), 1e-3);
}

TEST(Underlay, NoneWithoutAPicture) {
    plan::Plan plan = test::small_plan();
    plan.underlay = placed({0.0, 0.0}, {1.0, 0.0}, false);
    SheetOptions options;
    const auto drawing = test::floor_plan_of(test::analysed(plan), options, session().measure());
    ASSERT_TRUE(drawing);
    EXPECT_EQ(drawing->layers.front().name, "ground");
}

TEST(Underlay, TurnsUpInEveryFormat) {
    const Drawing drawing = drawn(placed({1.0, 1.0}, {4.0, 3.0}, true));
    EXPECT_NE(paint::rendered_pdf(session(), drawing).value().find("/Subtype /Image"),
              std::string::npos);
    EXPECT_NE(paint::rendered_svg(session(), drawing).value().find("<image"), std::string::npos);
}

} // namespace
} // namespace throwline::sheet
