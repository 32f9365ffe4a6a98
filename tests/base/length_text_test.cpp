#include "base/length_text.h"
#include "support/number.h"

#include <cmath>
#include <cstdint>
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <limits>
#include <rapidcheck/gtest.h>

namespace throwline {
namespace {

struct Reading {
    const char* text;
    double millimetres;
};

void expect_read(const Reading& reading) {
    const Result<Length> length = parse_length(reading.text);
    ASSERT_TRUE(length) << reading.text << ": " << length.error().message;
    // Both are the double nearest to the exact value, if the millimetres are exact in 1/10000.
    EXPECT_EQ(length->m(), std::round(reading.millimetres * 1e4) / 1e7) << reading.text;
}

TEST(ParseLength, ReadsWhatCrewsWrite) {
    for (const Reading& reading : {
             Reading{"6' 2 7/16\"", 1890.7125},
             {"10'6", 3200.4},
             {"10'-6\"", 3200.4},
             {"126in", 3200.4},
             {"126\"", 3200.4},
             {"3.5 m", 3500.0},
             {"350cm", 3500.0},
             {"1-1/2\"", 38.1},
             {"1 1/2 in", 38.1},
             {"5’ 9½”", 1765.3},
             {"-0'-3\"", -76.2},
             {"12.5 ft", 3810.0},
         }) {
        expect_read(reading);
    }
}

TEST(ParseLength, ReadsOtherHabitsOfTyping) {
    for (const Reading& reading : {
             Reading{"10ft 6in", 3200.4},
             {"10 ft. 6 in.", 3200.4},
             {"10ft6in", 3200.4},
             {"10 FEET 6 Inches", 3200.4},
             {"10 ft - 6 in", 3200.4},
             {"10 foot 6 inch", 3200.4},
             {"10′ 6″", 3200.4},
             {"10' 6''", 3200.4},
             {"10’–6”", 3200.4},
             {"10'\u00A06\u202F\"", 3200.4},
             {"  10'6\"\t", 3200.4},
             {"10'", 3048.0},
             {"1/2 ft", 152.4},
             {"6 1/2'", 1981.2},
             {"0'-0\"", 0.0},
             {"0' ½\"", 12.7},
             {"10' ¾", 3067.05},
             {"2⅛\"", 53.975},
             {"2-⅜\"", 60.325},
             {"2 ⅝ in", 66.675},
             {"⅞ in", 22.225},
             {"⅓ ft", 101.6},
             {"⅔'", 203.2},
             {"1⁄4\"", 6.35},
             {"6' 2.5\"", 1892.3},
             {"6' 11 15/16\"", 2132.0125},
         }) {
        expect_read(reading);
    }
}

TEST(ParseLength, ReadsMetricHabits) {
    for (const Reading& reading : {
             Reading{"3,5 m", 3500.0},
             {"0,125 m", 125.0},
             {"3m 20", 3200.0},
             {"3m20", 3200.0},
             {"3 m 5", 3050.0},
             {"3m 20cm", 3200.0},
             {"3m 20,5 cm", 3205.0},
             {"1200 mm", 1200.0},
             {".5m", 500.0},
             {"2 metres", 2000.0},
             {"2 meters", 2000.0},
             {"1 metre", 1000.0},
             {"50 centimetres", 500.0},
             {"5 millimeters", 5.0},
             {"1/2 m", 500.0},
             {"+3 m", 3000.0},
             {"−3 m", -3000.0},
             {"- 3 m", -3000.0},
         }) {
        expect_read(reading);
    }
}

TEST(ParseLength, ReadsBareNumbersOnlyInAGivenUnit) {
    EXPECT_EQ(parse_length("12", {.bare_unit = UnitSystem::metric})->m(), 12.0);
    EXPECT_EQ(parse_length("12", {.bare_unit = UnitSystem::imperial})->m(), 3.6576);
    EXPECT_EQ(parse_length("12 1/2", {.bare_unit = UnitSystem::imperial})->m(), 3.81);
    EXPECT_EQ(parse_length("12 in", {.bare_unit = UnitSystem::metric})->m(), 0.3048);
    EXPECT_FALSE(parse_length("12"));
}

struct Refusal {
    const char* text;
    /// In characters.
    int column;
    const char* found;
    const char* expected;
};

TEST(ParseLength, SaysWhereAndWhyItRefuses) {
    for (const Refusal& refusal : {
             Refusal{"5'13", 3, "\"13\"", "inches below 12 after feet"},
             {"5.5' 3\"", 1, "\"5.5\"", "whole feet before inches"},
             {"5 1/2' 3\"", 1, "\"5\"", "whole feet before inches"},
             {"12", 3, "the end", "a unit"},
             {"1/0 in", 3, "\"0\"", "a denominator above 0"},
             {"", 1, "the end", "a number"},
             {"-", 2, "the end", "a number"},
             {"--3 m", 2, "\"-\"", "a number"},
             {"m", 1, "\"m\"", "a number"},
             {"5' 12\"", 4, "\"12\"", "inches below 12"},
             {"5' 11 3/2\"", 4, "\"11\"", "inches below 12"},
             {"5’ 13”", 4, "\"13\"", "inches below 12"},
             {"½½ in", 2, "\"½\"", "a unit"},
             {"½ x", 3, "\"x\"", "a unit"},
             {"1 000 mm", 3, "\"000\"", "a unit"},
             {"1,000 mm", 2, "\",\"", "a unit"},
             {"1,000,000 mm", 2, "\",\"", "a unit"},
             {"1.000.000 mm", 6, "\".000\"", "a unit"},
             {"1'000", 3, "\"000\"", "inches below 12"},
             {"1'000'000", 3, "\"000\"", "inches below 12"},
             {"10' −6\"", 5, "\"−\"", "inches"},
             {"10'-", 5, "the end", "inches"},
             {"10' 6' ", 6, "\"'\"", "in or the end"},
             {"10' 6\" 2", 8, "\"2\"", "the end"},
             {"10' 6 m", 7, "\"m\"", "in or the end"},
             {"1/2/3 in", 4, "\"/\"", "a unit"},
             {"1/ in", 4, "\"in\"", "a whole number under"},
             {"1/2.5 in", 3, "\"2.5\"", "a whole number under"},
             {"1.5 1/2 in", 5, "\"1\"", "a unit"},
             {"5. m", 2, "\".\"", "a unit"},
             {"3.5m 20", 1, "\"3.5\"", "whole metres before centimetres"},
             {"3m 120", 4, "\"120\"", "centimetres below 100"},
             {"3m 20mm", 6, "\"mm\"", "cm or the end"},
             {"3m-20", 3, "\"-\"", "centimetres"},
             {"3 km", 3, "\"km\"", "a unit"},
             {"1e3 m", 2, "\"e\"", "a unit"},
             {"inf m", 1, "\"inf\"", "a number"},
             {"nan", 1, "\"nan\"", "a number"},
             {"0x10 m", 2, "\"x\"", "a unit"},
             {"10000001 m", 1, "\"10000001\"", "at most 10 000 000 m"},
             {"-40000000 ft", 2, "\"40000000\"", "at most 10 000 000 m"},
             {"3 m\n", 4, "\"\uFFFD\"", "centimetres or the end"},
             {"\xFF 3 m", 1, "\"\uFFFD\"", "a number"},
         }) {
        const Result<Length> length = parse_length(refusal.text);
        ASSERT_FALSE(length) << refusal.text;
        const Error& error = length.error();
        EXPECT_EQ(error.place.column, refusal.column) << error.message;
        EXPECT_NE(error.message.find(fmt::format("found {}, expected ", refusal.found)),
                  std::string::npos)
            << error.message;
        EXPECT_NE(error.message.find(refusal.expected, error.message.find("expected")),
                  std::string::npos)
            << error.message;
    }
}

TEST(ParseLength, RefusesACommaWhereItIsNoPoint) {
    const Result<Length> length = parse_length("3,5 m", {.decimal_comma = false});
    ASSERT_FALSE(length);
    EXPECT_EQ(length.error().place.column, 2);
}

TEST(ParseLength, WordsTheWholeSentence) {
    EXPECT_EQ(
        parse_length("5'13").error().message,
        "cannot read \"5'13\" as a length: found \"13\", expected inches below 12 after feet");
}

TEST(ParseLength, RefusesMoreDigitsThanItCanHoldExactly) {
    const std::string digits(60, '3');
    EXPECT_FALSE(parse_length("0." + digits + " ft"));
    EXPECT_FALSE(parse_length("1/" + digits + " in"));
    EXPECT_FALSE(parse_length(digits + "/7 in"));
    EXPECT_FALSE(parse_length(digits + "'"));
    EXPECT_FALSE(parse_length(digits + " 1/2 in"));
    EXPECT_FALSE(parse_length(std::string(400, '9') + " m"));
    // A metric decimal is rounded straight from its digits, however many.
    EXPECT_EQ(parse_length("0." + digits + " m")->m(), support::number_at_start("0." + digits));
}

TEST(ParseLength, NeverGivesANegativeZero) {
    for (const char* text : {"-0 m", "-0'-0\"", "−0 in", "-0 ft"}) {
        EXPECT_FALSE(std::signbit(parse_length(text)->m())) << text;
    }
}

std::string as_mixed_inches(std::int64_t sixty_fourths) {
    return fmt::format("{} {}/64\"", sixty_fourths / 64, sixty_fourths % 64);
}

/// Up to 1e6 ft, in 1/64 in.
std::int64_t any_sixty_fourths() {
    return *rc::gen::inRange<std::int64_t>(0, std::int64_t{12'000'000} * 64);
}

RC_GTEST_PROP(LengthText, EverySixtyFourthComesBackTheSame, ()) {
    const std::int64_t count = any_sixty_fourths() * (*rc::gen::arbitrary<bool>() ? 1 : -1);
    const Length length = Length::inches(static_cast<double>(count) / 64.0);
    const std::string text = feet_inches(length, {.denominator = 64});
    const Result<Length> read = parse_length(text);
    RC_ASSERT(read.has_value());
    RC_ASSERT(read->m() == length.m());
    RC_ASSERT(feet_inches(*read, {.denominator = 64}) == text);
}

TEST(LengthText, EverySixtyFourthUpToARoomComesBackTheSame) {
    for (int count = -64 * 12 * 60; count <= 64 * 12 * 60; ++count) {
        const Length length = Length::inches(count / 64.0);
        ASSERT_EQ(parse_length(feet_inches(length, {.denominator = 64}))->m(), length.m()) << count;
    }
}

RC_GTEST_PROP(LengthText, TheUnitDoesNotChangeTheValue, ()) {
    const std::int64_t count = any_sixty_fourths();
    // 1/64 in = 0.396875 mm, six decimals.
    const std::int64_t nanometres = count * 396875;
    const auto decimal = [&](std::int64_t per_unit, int digits) {
        return fmt::format("{}.{:0{}}", nanometres / per_unit, nanometres % per_unit, digits);
    };
    const double expected_m = Length::inches(static_cast<double>(count) / 64.0).m();
    RC_ASSERT(parse_length(as_mixed_inches(count))->m() == expected_m);
    RC_ASSERT(parse_length(decimal(1'000'000, 6) + " mm")->m() == expected_m);
    RC_ASSERT(parse_length(decimal(10'000'000, 7) + " cm")->m() == expected_m);
    RC_ASSERT(parse_length(decimal(1'000'000'000, 9) + " m")->m() == expected_m);
}

RC_GTEST_PROP(LengthText, ASignOnlyTurnsTheValueRound, ()) {
    const std::string text = as_mixed_inches(any_sixty_fourths());
    const double value_m = parse_length(text)->m();
    RC_ASSERT(parse_length("-" + text)->m() == -value_m);
    RC_ASSERT(parse_length("\u2212 " + text)->m() == -value_m);
    RC_ASSERT(parse_length("+" + text)->m() == value_m);
}

RC_GTEST_PROP(LengthText, ExactMetresReadBackToTheSameDouble, ()) {
    const auto mantissa = *rc::gen::inRange<std::int64_t>(-(1LL << 53), 1LL << 53);
    const auto exponent = *rc::gen::inRange(-1120, -30);
    const Length length = Length::metres(std::ldexp(static_cast<double>(mantissa), exponent));
    const Result<Length> read = parse_length(exact_metres(length));
    RC_ASSERT(read.has_value());
    RC_ASSERT(read->m() == length.m());
}

RC_GTEST_PROP(ParseLength, AnswersWhateverIsTyped, (const std::string& text)) {
    const Result<Length> length = parse_length(text);
    RC_ASSERT((length ? std::isfinite(length->m()) : !length.error().message.empty()));
}

RC_GTEST_PROP(ParseLength, AnswersWhateverIsMadeOfItsOwnSigns, ()) {
    const auto parts = *rc::gen::container<std::vector<std::string>>(rc::gen::element<std::string>(
        "1", "0", "12", ".", ",", "/", "'", "\"", "-", "½", " ", "m", "cm", "ft", "in", "−", "’"));
    std::string text;
    for (const std::string& part : parts) {
        text += part;
    }
    const Result<Length> length = parse_length(text);
    RC_ASSERT((length ? std::isfinite(length->m()) : length.error().place.column >= 1));
}

} // namespace
} // namespace throwline
