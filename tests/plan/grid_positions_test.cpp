#include "plan/places.h"

#include <gtest/gtest.h>

namespace throwline::plan {
namespace {

TEST(GridName, LettersGoOnAfterZ) {
    EXPECT_EQ(grid_name(0, 0), "A1");
    EXPECT_EQ(grid_name(2, 1), "C2");
    EXPECT_EQ(grid_name(25, 9), "Z10");
    EXPECT_EQ(grid_name(26, 0), "AA1");
    EXPECT_EQ(grid_name(27, 0), "AB1");
    EXPECT_EQ(grid_name(51, 0), "AZ1");
    EXPECT_EQ(grid_name(52, 0), "BA1");
    EXPECT_EQ(grid_name(701, 0), "ZZ1");
    EXPECT_EQ(grid_name(702, 0), "AAA1");
}

Grid small_grid() {
    Grid grid;
    grid.origin = {1, 2};
    grid.pitch_x = Length::metres(1.5);
    grid.pitch_y = Length::metres(0.5);
    grid.columns = 30;
    grid.rows = 12;
    return grid;
}

TEST(GridPoint, EveryNameLeadsBackToItsPlace) {
    const Grid grid = small_grid();
    for (int column = 0; column < grid.columns; ++column) {
        for (int row = 0; row < grid.rows; ++row) {
            const auto point = grid_point(grid, grid_name(column, row));
            ASSERT_TRUE(point) << grid_name(column, row);
            EXPECT_EQ(*point, Vec2(1 + column * 1.5, 2 + row * 0.5));
        }
    }
}

TEST(GridPoint, LetterCaseDoesNotMatter) {
    EXPECT_EQ(grid_point(small_grid(), "c2"), grid_point(small_grid(), "C2"));
    EXPECT_EQ(grid_point(small_grid(), "aB2"), grid_point(small_grid(), "AB2"));
}

TEST(GridPoint, IsNowhereBeyondTheGridOrWithoutAName) {
    for (const char* name : {"", "A", "1", "A0", "A13", "AE1", "A01", "A-1", "1A", "A1 ", " A1",
                             "A1B", "Ä1", "A99999999999999999999", "ZZZZZZZZZZZZZZZZZZ1"}) {
        EXPECT_FALSE(grid_point(small_grid(), name)) << name;
    }
}

TEST(GridPoint, TurnsWithTheGridAboutItsOrigin) {
    Grid grid = small_grid();
    grid.turn = Angle::degrees(90);
    EXPECT_LT((*grid_point(grid, "B1") - Vec2(1, 3.5)).norm(), 1e-12);
    EXPECT_LT((*grid_point(grid, "A2") - Vec2(0.5, 2)).norm(), 1e-12);
}

} // namespace
} // namespace throwline::plan
