#include "plan/places.h"

#include "plan/reading_support.h"

#include <gtest/gtest.h>

namespace throwline::plan {
namespace {

using testing::tables;

Scenery piece(SceneryShape shape) {
    Scenery scenery;
    scenery.shape = std::move(shape);
    return scenery;
}

FlatRun run_of_three() {
    return {{10, 5},
            Angle::degrees(180),
            {Length::metres(1), Length::metres(1.5), Length::metres(0.5)},
            Length::metres(3),
            Length::metres(0.1)};
}

TEST(Footprint, FlatsLieBehindTheirDressedFace) {
    const Polygon outline = footprint(piece(run_of_three()), tables());
    EXPECT_NEAR(area(outline), 0.3, 1e-12);
    // Heading 180 degrees: left of it is down the page, so the thickness is above y = 5.
    EXPECT_TRUE(contains(outline, {8.5, 5.05}));
    EXPECT_FALSE(contains(outline, {8.5, 4.95}));
    EXPECT_FALSE(contains(outline, {10.05, 5.05}));
    EXPECT_FALSE(contains(outline, {6.95, 5.05}));
}

TEST(Footprint, StockTakesTheCataloguesSizes) {
    const catalogue::StockItem* table = tables().stock_item("work table 6x2.5");
    ASSERT_NE(table, nullptr);
    const Scenery bench = piece(StockPiece{"work table 6x2.5", {2, 3}, Angle::degrees(90)});
    const Polygon outline = footprint(bench, tables());
    EXPECT_NEAR(area(outline), table->width.m() * table->depth.m(), 1e-12);
    EXPECT_TRUE(contains(outline, {2, 3 + table->width.m() / 2 - 0.01}));
    EXPECT_EQ(height_of(bench, tables()), table->height);
}

TEST(Footprint, RoundStockEnclosesItsCircle) {
    const catalogue::StockItem* table = tables().stock_item("round table 1.2");
    ASSERT_NE(table, nullptr);
    ASSERT_EQ(table->shape, catalogue::StockShape::round);
    const Polygon outline = footprint(piece(StockPiece{"round table 1.2", {0, 0}, {}}), tables());
    for (int degrees = 0; degrees < 360; degrees += 5) {
        const Vec2 rim = unit_at(Angle::degrees(degrees).rad()) * (table->width.m() / 2 - 1e-9);
        EXPECT_TRUE(contains(outline, rim)) << degrees;
    }
}

TEST(Footprint, UnknownStockHasNone) {
    const Scenery unknown = piece(StockPiece{"no such thing", {0, 0}, {}});
    EXPECT_TRUE(footprint(unknown, tables()).empty());
    EXPECT_EQ(height_of(unknown, tables()), Length{});
}

TEST(Footprint, DrapeHasTheDepthOfItsFoldsAroundItsLine) {
    const Scenery drape = piece(Drape{{{0, 0}, {4, 0}, {4, 3}, {4, 3}}, Length::metres(3)});
    const Polygon outline = footprint(drape, tables());
    EXPECT_NEAR(area(outline), 7 * kDrapeDepth.m(), 1e-12);
    EXPECT_TRUE(contains(outline, {2, 0.04}));
    EXPECT_TRUE(contains(outline, {4.04, -0.04}));
    EXPECT_FALSE(contains(outline, {3, 1}));
}

TEST(Footprint, SharpFoldOfADrapeDoesNotReachFar) {
    const Polygon outline =
        footprint(piece(Drape{{{0, 0}, {4, 0}, {0, 0.01}}, Length::metres(3)}), tables());
    for (const Vec2& corner : outline) {
        EXPECT_LT((corner - Vec2(4, 0)).norm(), 4.3);
        EXPECT_LT(corner.x(), 4.5);
    }
}

TEST(HeightOf, IsThatOfTheShape) {
    EXPECT_EQ(height_of(piece(run_of_three()), tables()), Length::metres(3));
    EXPECT_EQ(
        height_of(piece(CylinderPiece{{0, 0}, Length::metres(1), Length::metres(2)}), tables()),
        Length::metres(2));
    EXPECT_EQ(height_of(piece(PrismPiece{{{0, 0}, {1, 0}, {0, 1}}, Length::metres(0.5)}), tables()),
              Length::metres(0.5));
}

} // namespace
} // namespace throwline::plan
