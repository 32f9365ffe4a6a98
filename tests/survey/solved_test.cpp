#include "base/polygon.h"
#include "support/survey_case.h"
#include "survey/adjust.h"
#include "survey/first_shape.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::survey {
namespace {

/// A room of which everything is known, read without error to the millimetre.
struct KnownRoom {
    std::vector<Vec2> truth;
    SurveyCase survey;

    KnownRoom(std::vector<Vec2> corners, std::vector<Vec2> marks = {})
        : truth(std::move(corners)), survey(static_cast<int>(truth.size())) {
        truth.insert(truth.end(), marks.begin(), marks.end());
        survey.network.points = static_cast<int>(truth.size());
        for (int i = 1; i <= survey.network.outline; ++i) {
            tape(i, i % survey.network.outline + 1);
        }
    }
    KnownRoom& tape(int from, int to, double wrong_by_m = 0.0) {
        const double length_m =
            (truth[static_cast<std::size_t>(from - 1)] - truth[static_cast<std::size_t>(to - 1)])
                .norm();
        survey.read(from, to, std::round(1000.0 * length_m) / 1000.0 + wrong_by_m);
        return *this;
    }
    KnownRoom& square(const std::vector<int>& corners) {
        for (const int corner : corners) {
            survey.square(corner);
        }
        return *this;
    }
    KnownRoom& clockwise() {
        survey.network.walk = Walk::clockwise;
        return *this;
    }
};

/// Standard errors of rounding are small: the room comes out within a few millimetres, and on the
/// right side.
void expect_room(const KnownRoom& room) {
    constexpr double kRounding_m = 0.008;
    const auto solution = solved(room.survey.network);
    ASSERT_TRUE(solution) << "two shapes: " << solution.error().two_shapes;
    EXPECT_TRUE(solution->suspects.empty());
    const Vec2 origin = room.truth[0];
    const double turn_rad = -angle_of(room.truth[1] - origin);
    for (std::size_t i = 0; i < room.truth.size(); ++i) {
        const Vec2 expected = rotated(room.truth[i] - origin, turn_rad);
        EXPECT_LT((solution->adjustment.points[i] - expected).norm(), kRounding_m) << i;
    }
}

const std::vector<Vec2> kL{{0, 0}, {7.2, 0}, {7.2, 3}, {4.5, 3}, {4.5, 5.4}, {0, 5.4}};
const std::vector<Vec2> kBay{{0, 0}, {6, 0},     {6, 5},     {4.5, 5},
                             {4, 6}, {2.2, 6.0}, {1.7, 5.0}, {0, 5}};

TEST(Solved, LRoomFromWallsAndDiagonals) {
    expect_room(KnownRoom(kL).tape(1, 3).tape(1, 4).tape(1, 5).tape(2, 4).tape(2, 6).tape(4, 6));
}

TEST(Solved, LRoomFromWallsAndSquareCornersAlone) {
    expect_room(KnownRoom(kL).square({1, 2, 3, 4, 5, 6}));
}

TEST(Solved, RoomWithABay) {
    expect_room(KnownRoom(kBay)
                    .tape(1, 3)
                    .tape(2, 8)
                    .tape(1, 4)
                    .tape(2, 7)
                    .tape(1, 5)
                    .tape(2, 5)
                    .tape(1, 6)
                    .tape(2, 6)
                    .tape(3, 8)
                    .tape(4, 7));
}

TEST(Solved, SplayedRoomWithoutASquareCorner) {
    expect_room(KnownRoom({{0, 0}, {5.8, 0.4}, {7.1, 3.2}, {3.6, 5.1}, {-0.9, 3.8}})
                    .tape(1, 3)
                    .tape(1, 4)
                    .tape(2, 4)
                    .tape(2, 5)
                    .tape(3, 5));
}

TEST(Solved, RoomWalkedClockwise) {
    std::vector<Vec2> corners = kL;
    std::reverse(corners.begin(), corners.end());
    expect_room(KnownRoom(corners)
                    .clockwise()
                    .tape(1, 3)
                    .tape(1, 4)
                    .tape(2, 4)
                    .tape(2, 5)
                    .tape(2, 6)
                    .tape(3, 5)
                    .tape(3, 6));
}

TEST(Solved, TheWalkDecidesWhichWayRoundTheRoomLies) {
    KnownRoom room({{0, 0}, {5, 0}, {6, 4}, {0, 3}});
    room.tape(1, 3).tape(2, 4);
    for (const Walk walk : {Walk::anticlockwise, Walk::clockwise}) {
        room.survey.network.walk = walk;
        const auto solution = solved(room.survey.network);
        ASSERT_TRUE(solution);
        EXPECT_EQ(signed_area(solution->adjustment.points) > 0.0, walk == Walk::anticlockwise);
    }
}

TEST(Solved, ColumnOnTheFloorTiedToCorners) {
    // A square column; two of its corners are tied from two corners of the room each, the others
    // measured round it.
    const std::vector<Vec2> column{{2.0, 1.8}, {2.4, 1.8}, {2.4, 2.2}, {2.0, 2.2}};
    KnownRoom room({{0, 0}, {6, 0}, {6, 4}, {0, 4}}, column);
    room.tape(1, 3)
        .tape(2, 4)
        .tape(5, 1)
        .tape(5, 2)
        .tape(6, 2)
        .tape(6, 1)
        .tape(5, 6)
        .tape(6, 7)
        .tape(7, 8)
        .tape(8, 5)
        .tape(7, 3)
        .tape(8, 4)
        .tape(5, 7);
    expect_room(room);
}

TEST(Solved, APointThatMayLieOnEitherSideOfAWallLiesInside) {
    KnownRoom inside({{0, 0}, {6, 0}, {6, 4}, {0, 4}}, {{2, 1.5}});
    inside.tape(1, 3).tape(2, 4).tape(5, 1).tape(5, 2);
    expect_room(inside);
    KnownRoom outside({{0, 0}, {6, 0}, {6, 4}, {0, 4}}, {{2, -1.5}});
    outside.tape(1, 3).tape(2, 4).tape(5, 1).tape(5, 2);
    outside.survey.network.outside = {4};
    expect_room(outside);
}

TEST(Solved, RunningDimensionsAndOffsetsPlaceWhatStandsInTheRoom) {
    KnownRoom room({{0, 0}, {6, 0}, {6, 4}, {0, 4}}, {{1.2, 0}, {2.1, 0}, {3.3, 1.4}});
    room.tape(1, 3).tape(2, 4);
    room.survey.along(5, 1, 2, 1.2).offset(5, 1, 2, 0.0).along(6, 1, 2, 2.1).offset(6, 1, 2, 0.0);
    room.survey.along(7, 1, 2, 3.3).offset(7, 1, 2, 1.4);
    expect_room(room);
}

TEST(Solved, HexagonHeldByItsLongDiagonalsOnly) {
    // No point can be placed from two others; only all nine readings together hold the shape.
    expect_room(KnownRoom({{0, 0}, {7.2, 0.3}, {7.0, 2.1}, {3.9, 2.4}, {4.3, 6.1}, {-0.4, 4.9}})
                    .tape(1, 4)
                    .tape(2, 5)
                    .tape(3, 6));
}

TEST(Solved, LongRoomWithTwelveCorners) {
    const std::vector<Vec2> corners{{0, 0},  {5, 0},   {5, 1.2}, {7.5, 1.2}, {7.5, 0},   {12, 0},
                                    {12, 6}, {8.2, 6}, {8.2, 5}, {4.1, 5},   {4.1, 6.3}, {0, 6.3}};
    KnownRoom room(corners);
    room.square({1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12});
    room.tape(1, 11)
        .tape(2, 12)
        .tape(1, 10)
        .tape(2, 10)
        .tape(3, 10)
        .tape(4, 9)
        .tape(3, 9)
        .tape(5, 7)
        .tape(6, 8)
        .tape(6, 9);
    expect_room(room);
}

TEST(Solved, SameReadingsGiveTheSameBytes) {
    KnownRoom room(kL);
    room.tape(1, 3).tape(1, 4, 0.1).tape(1, 5).tape(2, 4).tape(2, 6).tape(4, 6).tape(3, 6);
    const auto first = solved(room.survey.network);
    const auto second = solved(room.survey.network);
    ASSERT_TRUE(first && second);
    EXPECT_EQ(first->adjustment.points, second->adjustment.points);
    EXPECT_EQ(first->adjustment.weighted_sum, second->adjustment.weighted_sum);
}

std::vector<std::pair<int, int>> wanted_of(const tl::expected<Solution, Undetermined>& solution) {
    return solution ? std::vector<std::pair<int, int>>{} : solution.error().wanted;
}

TEST(Undetermined, FourWallsNeedADiagonal) {
    const auto solution = solved(KnownRoom({{0, 0}, {6, 0}, {6, 4}, {0, 4}}).survey.network);
    ASSERT_FALSE(solution);
    EXPECT_FALSE(solution.error().two_shapes);
    EXPECT_EQ(solution.error().needed, 1);
    EXPECT_EQ(solution.error().loose.size(), 2U);
    std::vector<std::pair<int, int>> wanted = wanted_of(solution);
    std::sort(wanted.begin(), wanted.end());
    EXPECT_EQ(wanted, (std::vector<std::pair<int, int>>{{0, 2}, {1, 3}}));
}

TEST(Undetermined, AMarkWithOneTieIsLooseAndNothingElse) {
    KnownRoom room({{0, 0}, {6, 0}, {6, 4}, {0, 4}}, {{2, 1.5}});
    room.tape(1, 3).tape(2, 4).tape(5, 1);
    const auto solution = solved(room.survey.network);
    ASSERT_FALSE(solution);
    EXPECT_EQ(solution.error().loose, std::vector<int>{4});
    ASSERT_FALSE(wanted_of(solution).empty());
    EXPECT_EQ(wanted_of(solution).front().second, 4);
}

TEST(Undetermined, AMarkWithoutAnyTieNeedsTwo) {
    KnownRoom room({{0, 0}, {6, 0}, {6, 4}, {0, 4}}, {{2, 1.5}});
    room.tape(1, 3).tape(2, 4);
    const auto solution = solved(room.survey.network);
    ASSERT_FALSE(solution);
    EXPECT_EQ(solution.error().loose, std::vector<int>{4});
    EXPECT_EQ(solution.error().needed, 2);
    ASSERT_EQ(wanted_of(solution).size(), 2U);
    EXPECT_EQ(wanted_of(solution)[0].second, 4);
    EXPECT_EQ(wanted_of(solution)[1].second, 4);
}

TEST(Undetermined, ACornerTiedOnlyAlongItsOwnWallIsNotHeld) {
    // Corner 2 lies in the straight wall from 1 to 3: its two walls add up to what is known anyway.
    KnownRoom room({{0, 0}, {3, 0}, {6, 0}, {6, 4}, {0, 4}});
    room.tape(1, 3).tape(1, 4).tape(3, 5);
    const auto solution = solved(room.survey.network);
    ASSERT_FALSE(solution);
    EXPECT_EQ(solution.error().loose, std::vector<int>{1});
}

TEST(Undetermined, WhatIsAskedForSettlesIt) {
    for (const std::vector<Vec2>& corners : {kL, kBay}) {
        KnownRoom room(corners);
        int asked = 0;
        auto solution = solved(room.survey.network);
        while (!solution && asked < 12) {
            ASSERT_FALSE(solution.error().wanted.empty());
            const auto [from, to] = solution.error().wanted.front();
            room.tape(from + 1, to + 1);
            ++asked;
            solution = solved(room.survey.network);
        }
        EXPECT_GE(asked, static_cast<int>(corners.size()) - 3);
        expect_room(room);
    }
}

TEST(Undetermined, ABayThatMayAsWellBeANicheIsTwoShapes) {
    // Walls and square corners alone do not say on which side of the wall the bay lies.
    KnownRoom room({{0, 0}, {6, 0}, {6, 5}, {4, 5}, {4, 6}, {2, 6}, {2, 5}, {0, 5}});
    room.square({1, 2, 3, 4, 5, 6, 7, 8});
    const auto solution = solved(room.survey.network);
    ASSERT_FALSE(solution);
    EXPECT_TRUE(solution.error().two_shapes);
    EXPECT_EQ(solution.error().loose, (std::vector<int>{4, 5}));
    ASSERT_FALSE(wanted_of(solution).empty());
    const auto [from, to] = wanted_of(solution).front();
    expect_room(room.tape(from + 1, to + 1));
}

KnownRoom well_measured() {
    KnownRoom room(kL, {{2.2, 2.4}});
    room.tape(1, 3).tape(1, 4).tape(1, 5).tape(2, 4).tape(2, 6).tape(4, 6).tape(3, 6);
    for (int corner = 1; corner <= 6; ++corner) {
        room.tape(7, corner);
    }
    return room;
}

std::vector<int> named(const Solution& solution) {
    std::vector<int> numbers;
    for (const Suspect& suspect : solution.suspects) {
        numbers.push_back(suspect.observation);
    }
    std::sort(numbers.begin(), numbers.end());
    return numbers;
}

TEST(WrongReadings, AnyOneOfAWellMeasuredRoomIsNamedAndRestored) {
    const Network clean = well_measured().survey.network;
    for (std::size_t i = 0; i < clean.observations.size(); ++i) {
        Network network = clean;
        network.observations[i].value += 0.25;
        const auto solution = solved(network);
        ASSERT_TRUE(solution) << i;
        ASSERT_EQ(solution->suspects.size(), 1U) << i;
        const Suspect& suspect = solution->suspects.front();
        const bool named_so = suspect.observation == static_cast<int>(i);
        const bool one_of =
            std::find(suspect.or_else.begin(), suspect.or_else.end(), static_cast<int>(i))
            != suspect.or_else.end();
        EXPECT_TRUE(named_so || one_of) << i;
        if (named_so) {
            EXPECT_NEAR(suspect.probable, clean.observations[i].value,
                        0.002 + 3.0 * suspect.probable_sigma)
                << i;
        }
    }
}

TEST(WrongReadings, TwoAreBothNamed) {
    Network network = well_measured().survey.network;
    network.observations[9].value += 0.100;
    network.observations[14].value -= 0.305;
    const auto solution = solved(network);
    ASSERT_TRUE(solution);
    EXPECT_EQ(named(*solution), (std::vector<int>{9, 14}));
    EXPECT_FALSE(solution->unexplained);
    EXPECT_EQ(solution->with_all.test, GlobalTest::fails);
    EXPECT_EQ(solution->adjustment.test, GlobalTest::passes);
    EXPECT_EQ(solution->adjustment.degrees_of_freedom, solution->with_all.degrees_of_freedom - 2);
    EXPECT_EQ(solution->adjustment.observations[9].redundancy, 1.0);
    EXPECT_NEAR(solution->adjustment.observations[9].residual, -0.100, 0.01);
}

TEST(WrongReadings, ACornerThatIsNotSquareIsNamed) {
    KnownRoom room({{0, 0}, {6, 0}, {6.4, 4}, {0, 4}}, {{2.9, 2.1}});
    room.tape(1, 3).tape(2, 4).square({1, 2, 4});
    for (int corner = 1; corner <= 4; ++corner) {
        room.tape(5, corner);
    }
    const auto solution = solved(room.survey.network);
    ASSERT_TRUE(solution);
    ASSERT_EQ(solution->suspects.size(), 1U);
    const auto number = static_cast<std::size_t>(solution->suspects[0].observation);
    EXPECT_EQ(room.survey.network.observations[number].sight, (Sight{Corner{2, 1, 0}}));
}

TEST(WrongReadings, AnAbsurdReadingIsNamedToo) {
    Network network = well_measured().survey.network;
    network.observations[8].value += 5.0;
    const auto solution = solved(network);
    ASSERT_TRUE(solution);
    EXPECT_EQ(named(*solution), std::vector<int>{8});
}

TEST(WrongReadings, ReadingsThatAreAllWrongAreNotExplained) {
    Network network = well_measured().survey.network;
    double by_m = 0.06;
    for (Observation& observation : network.observations) {
        observation.value += by_m;
        by_m = -by_m * 1.1;
    }
    const auto solution = solved(network);
    ASSERT_TRUE(solution);
    EXPECT_TRUE(solution->unexplained);
}

} // namespace
} // namespace throwline::survey
