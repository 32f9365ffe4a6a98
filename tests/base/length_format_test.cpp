#include "base/length_text.h"
#include "support/number.h"

#include <cmath>
#include <cstdlib>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline {
namespace {

TEST(FeetInches, RoundsToTheShownFraction) {
    struct Row {
        Length length;
        const char* sixteenths;
        const char* thirty_seconds;
    };
    for (const Row& row : {
             Row{Length::metres(3.5), "11'-5 13/16\"", "11'-5 25/32\""},
             {Length::millimetres(1890.7125), "6'-2 7/16\"", "6'-2 7/16\""},
             {Length::millimetres(3657.6), "12'-0\"", "12'-0\""},
             {Length::inches(11.97), "1'-0\"", "0'-11 31/32\""},
             {Length::inches(-3.0), "-0'-3\"", "-0'-3\""},
             {Length::inches(0.5), "0'-0 1/2\"", "0'-0 1/2\""},
             {Length{}, "0'-0\"", "0'-0\""},
             {Length::inches(-0.01), "0'-0\"", "0'-0\""},
             {Length::metres(-0.0), "0'-0\"", "0'-0\""},
         }) {
        EXPECT_EQ(feet_inches(row.length, {.denominator = 16}), row.sixteenths);
        EXPECT_EQ(feet_inches(row.length, {.denominator = 32}), row.thirty_seconds);
    }
    EXPECT_EQ(feet_inches(Length::metres(2.44)), "8'-0 1/16\"");
}

TEST(FeetInches, RoundsEveryHalfAwayFromZero) {
    for (int odd = 1; odd < 2 * 16 * 12 * 100; odd += 2) {
        const Length half = Length::inches(odd / 32.0);
        const Length up = Length::inches((odd + 1) / 32.0);
        ASSERT_EQ(feet_inches(half), feet_inches(up)) << odd;
        ASSERT_EQ(feet_inches(-half), feet_inches(-up)) << odd;
    }
}

TEST(FeetInches, ShowsWholeInchesWithoutAFraction) {
    EXPECT_EQ(feet_inches(Length::inches(11.5), {.denominator = 1}), "1'-0\"");
    EXPECT_EQ(feet_inches(Length::inches(11.49), {.denominator = 1}), "0'-11\"");
}

TEST(FeetInches, FallsBackToMetresWhereInchesCannotBeCounted) {
    EXPECT_EQ(feet_inches(Length::metres(1e15)), "1000000000000000.00 m");
}

RC_GTEST_PROP(FeetInches, IsNeverMoreThanHalfAFractionOff, ()) {
    const double metres = *rc::gen::inRange(-100'000'000, 100'000'000) * 1e-6;
    const int denominator = *rc::gen::element(1, 2, 4, 8, 16, 32, 64);
    const Length length = Length::metres(metres);
    const Result<Length> read = parse_length(feet_inches(length, {denominator}));
    RC_ASSERT(read.has_value());
    // Rounding of the two doubles is far below a nanometre.
    RC_ASSERT(std::abs(read->m() - metres) <= 0.0254 / (2 * denominator) + 1e-12);
}

TEST(MetresText, KeepsItsDecimals) {
    EXPECT_EQ(metres_text(Length::metres(3.5)), "3.50 m");
    EXPECT_EQ(metres_text(Length::metres(-0.004)), "0.00 m");
    EXPECT_EQ(metres_text(Length::metres(-0.006)), "-0.01 m");
    EXPECT_EQ(metres_text(Length::metres(12.3456), 3), "12.346 m");
    EXPECT_EQ(metres_text(Length::metres(12.3), 0), "12 m");
}

TEST(Shown, FollowsTheSystem) {
    EXPECT_EQ(shown(Length::metres(3.5), UnitSystem::metric), "3.50 m");
    EXPECT_EQ(shown(Length::metres(3.5), UnitSystem::imperial), "11'-5 3/4\"");
}

TEST(ExactMetres, IsTheShortestPlainText) {
    EXPECT_EQ(exact_metres(Length::metres(3.5)), "3.5 m");
    EXPECT_EQ(exact_metres(Length::millimetres(1890.7125)), "1.8907125 m");
    EXPECT_EQ(exact_metres(Length::metres(1e-9)), "0.000000001 m");
    EXPECT_EQ(exact_metres(Length::metres(-0.0)), "0 m");
    EXPECT_EQ(exact_metres(Length::metres(1e6)), "1000000 m");
}

TEST(Fixed, HasNoNegativeZero) {
    EXPECT_EQ(fixed(-0.0, 0), "0");
    EXPECT_EQ(fixed(-0.04, 1), "0.0");
    EXPECT_EQ(fixed(-0.06, 1), "-0.1");
    EXPECT_EQ(fixed(1234567.5, 1), "1234567.5");
}

RC_GTEST_PROP(Shortest, ReadsBackToTheSameDouble, (double value)) {
    RC_ASSERT(support::number_at_start(shortest(value)) == value);
}

TEST(Shortest, WritesFewDigits) {
    EXPECT_EQ(shortest(0.1), "0.1");
    EXPECT_EQ(shortest(-0.0), "0");
    EXPECT_EQ(shortest(2.0), "2");
    EXPECT_EQ(shortest(-2.5), "-2.5");
}

TEST(DegreesText, CarriesItsMark) {
    EXPECT_EQ(degrees_text(Angle::degrees(39.598)), "39.6°");
    EXPECT_EQ(degrees_text(Angle::degrees(-0.01)), "0.0°");
    EXPECT_EQ(degrees_text(Angle::degrees(90.0), 0), "90°");
}

} // namespace
} // namespace throwline
