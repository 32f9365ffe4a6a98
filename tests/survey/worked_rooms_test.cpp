#include "support/survey_case.h"
#include "survey/adjust.h"

#include <array>
#include <gtest/gtest.h>

namespace throwline::survey {
namespace {

// Rooms made up for the purpose, all readings good to 3 mm; the results were worked out apart from
// this program (by the textbook's formulas in another language) and are given to 0.1 mm and to the
// last digit shown.
constexpr double kTenthMillimetre_m = 0.5e-4;

SurveyCase quadrilateral(double diagonal_m = 7.477) {
    SurveyCase room(4);
    room.tape(1, 2, 6.102).tape(2, 3, 4.279).tape(3, 4, 6.108).tape(4, 1, 4.252);
    room.tape(1, 3, diagonal_m).tape(2, 4, 7.421);
    return room;
}

SurveyCase with_floor_mark(double diagonal_m) {
    SurveyCase room = quadrilateral(diagonal_m);
    room.tape(5, 1, 3.668).tape(5, 2, 3.756).tape(5, 3, 3.811).tape(5, 4, 3.660);
    return room;
}

SurveyCase l_room(double diagonal_24_m = 4.039) {
    SurveyCase room(6);
    room.tape(1, 2, 7.203).tape(2, 3, 2.998).tape(3, 4, 2.701).tape(4, 5, 2.402);
    room.tape(5, 6, 4.497).tape(6, 1, 5.401).tape(1, 3, 7.803).tape(1, 4, 5.405);
    room.tape(1, 5, 7.029).tape(2, 4, diagonal_24_m).tape(2, 6, 8.998).tape(4, 6, 5.103);
    return room;
}

void expect_points(const Adjustment& adjustment, const std::vector<Vec2>& expected) {
    ASSERT_EQ(adjustment.points.size(), expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
        EXPECT_NEAR(adjustment.points[i].x(), expected[i].x(), kTenthMillimetre_m) << i;
        EXPECT_NEAR(adjustment.points[i].y(), expected[i].y(), kTenthMillimetre_m) << i;
    }
}

double standardised(const Adjustment& adjustment, std::size_t i) {
    return adjustment.observations[i].standardised.value_or(0.0);
}

TEST(WorkedRooms, QuadrilateralFitsItsSixTapes) {
    const auto solution = solved(quadrilateral().network);
    ASSERT_TRUE(solution);
    const Adjustment& room = solution->adjustment;
    expect_points(room, {{0, 0}, {6.1026, 0}, {6.1303, 4.2794}, {0.0218, 4.2524}});
    EXPECT_NEAR(room.weighted_sum, 0.2663, 0.5e-4);
    EXPECT_EQ(room.degrees_of_freedom, 1);
    const std::array redundancies{.1681, .0815, .1678, .0825, .2519, .2481};
    for (std::size_t i = 0; i < redundancies.size(); ++i) {
        EXPECT_NEAR(room.observations[i].redundancy, redundancies[i], 0.5e-4) << i;
        EXPECT_NEAR(std::abs(standardised(room, i)), 0.516, 0.5e-3) << i;
    }
    EXPECT_NEAR(room.observations[4].detectable.value_or(0.0), 0.0247, 0.0002);
    EXPECT_NEAR(room.observations[1].detectable.value_or(0.0), 0.0434, 0.0001);
    EXPECT_TRUE(solution->suspects.empty());
}

TEST(WorkedRooms, TwoDiagonalsShowAnErrorButNotWhere) {
    const auto solution = solved(quadrilateral(7.577).network);
    ASSERT_TRUE(solution);
    EXPECT_NEAR(solution->with_all.weighted_sum, 299.299, 0.5e-3);
    for (std::size_t i = 0; i < 6; ++i) {
        EXPECT_NEAR(std::abs(standardised(solution->with_all, i)), 17.300, 0.5e-3) << i;
    }
    ASSERT_EQ(solution->suspects.size(), 1U);
    EXPECT_EQ(solution->suspects[0].or_else.size(), 5U);
}

TEST(WorkedRooms, SquareCornersMakeTheWrongTapeLeadByLittle) {
    SurveyCase room = quadrilateral(7.577);
    room.square(1).square(2).square(3).square(4);
    const auto solution = solved(room.network);
    ASSERT_TRUE(solution);
    EXPECT_NEAR(solution->with_all.weighted_sum, 324.857, 0.5e-3);
    const std::array standard{16.998, 16.892, 16.954, 17.085, -17.935, -15.993};
    for (std::size_t i = 0; i < standard.size(); ++i) {
        EXPECT_NEAR(std::abs(standardised(solution->with_all, i)), std::abs(standard[i]), 0.5e-3);
    }
    ASSERT_EQ(solution->suspects.size(), 1U);
    EXPECT_EQ(solution->suspects[0].observation, 4);
}

TEST(WorkedRooms, FloorMarkTiedToAllCornersNamesTheWrongTape) {
    const auto solution = solved(with_floor_mark(7.577).network);
    ASSERT_TRUE(solution);
    EXPECT_NEAR(solution->with_all.weighted_sum, 516.007, 0.5e-3);
    EXPECT_NEAR(standardised(solution->with_all, 4), -22.685, 0.5e-3);
    EXPECT_NEAR(standardised(solution->with_all, 8), 14.217, 0.5e-3);
    EXPECT_NEAR(standardised(solution->with_all, 6), 14.106, 0.5e-3);
    EXPECT_NEAR(standardised(solution->with_all, 1), 12.707, 0.5e-3);
    ASSERT_EQ(solution->suspects.size(), 1U);
    EXPECT_EQ(solution->suspects[0].observation, 4);
    EXPECT_TRUE(solution->suspects[0].or_else.empty());
    EXPECT_NEAR(solution->suspects[0].probable, 7.477, 0.006);
    EXPECT_NEAR(solution->adjustment.weighted_sum, 1.4015, 0.5e-4);
    expect_points(solution->adjustment,
                  {{0, 0}, {6.1025, 0}, {6.1320, 4.2793}, {0.0235, 4.2523}, {2.9963, 2.1146}});
}

TEST(WorkedRooms, LRoomFitsItsTwelveTapes) {
    const auto solution = solved(l_room().network);
    ASSERT_TRUE(solution);
    EXPECT_EQ(solution->adjustment.degrees_of_freedom, 3);
    EXPECT_NEAR(solution->adjustment.weighted_sum, 4.0479, 0.5e-4);
    expect_points(solution->adjustment, {{0, 0},
                                         {7.2027, 0},
                                         {7.2024, 2.9985},
                                         {4.5002, 2.9975},
                                         {4.4992, 5.3999},
                                         {0.0019, 5.4006}});
}

TEST(WorkedRooms, LRoomNamesItsMisreadDiagonal) {
    const auto solution = solved(l_room(4.139).network);
    ASSERT_TRUE(solution);
    EXPECT_NEAR(solution->with_all.weighted_sum, 429.321, 0.5e-3);
    EXPECT_NEAR(standardised(solution->with_all, 9), -20.701, 0.5e-3);
    EXPECT_NEAR(standardised(solution->with_all, 10), 17.158, 0.5e-3);
    EXPECT_NEAR(standardised(solution->with_all, 5), -12.273, 0.5e-3);
    EXPECT_NEAR(standardised(solution->with_all, 11), -12.234, 0.5e-3);
    ASSERT_EQ(solution->suspects.size(), 1U);
    EXPECT_EQ(solution->suspects[0].observation, 9);
}

TEST(WorkedRooms, SquareCornersOfTheLRoomConfirmIt) {
    SurveyCase room = l_room(4.139);
    room.square(1).square(2).square(3).square(4).square(5).square(6);
    const auto solution = solved(room.network);
    ASSERT_TRUE(solution);
    EXPECT_NEAR(solution->with_all.weighted_sum, 452.501, 0.5e-3);
    EXPECT_NEAR(standardised(solution->with_all, 9), -21.249, 0.5e-3);
    EXPECT_NEAR(standardised(solution->with_all, 10), 16.484, 0.5e-3);
    ASSERT_EQ(solution->suspects.size(), 1U);
    EXPECT_EQ(solution->suspects[0].observation, 9);
    EXPECT_NEAR(solution->adjustment.weighted_sum, 0.9515, 0.5e-4);
    EXPECT_EQ(solution->adjustment.degrees_of_freedom, 8);
    for (std::size_t i = 0; i < 18; ++i) {
        if (i != 9) {
            EXPECT_LT(std::abs(standardised(solution->adjustment, i)), 0.81) << i;
        }
    }
}

TEST(WorkedRooms, JambOnAWallIsAFeature) {
    SurveyCase room = quadrilateral();
    room.along(5, 1, 2, 2.410).offset(5, 1, 2, 0.0, 0.002).tape(4, 5, 4.885).tape(3, 5, 5.668);
    const auto solution = solved(room.network);
    ASSERT_TRUE(solution);
    EXPECT_NEAR(solution->adjustment.points[4].x(), 2.4122, kTenthMillimetre_m);
    EXPECT_NEAR(solution->adjustment.points[4].y(), -0.0010, kTenthMillimetre_m);
    EXPECT_NEAR(solution->adjustment.weighted_sum, 3.3899, 0.5e-4);
    EXPECT_EQ(solution->adjustment.degrees_of_freedom, 3);
}

} // namespace
} // namespace throwline::survey
