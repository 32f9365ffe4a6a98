#include "base/length_text.h"

#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline {
namespace {

TEST(ParseAngle, ReadsDegrees) {
    for (const char* text : {"12deg", "12°", "12", "12 degrees", "12 DEG", "+12°", "12º", "12,0",
                             "12° 0'", "12°0'0\"", "12.0 deg."}) {
        const Result<Angle> angle = parse_angle(text);
        ASSERT_TRUE(angle) << text << ": " << angle.error().message;
        EXPECT_EQ(angle->rad(), Angle::degrees(12.0).rad()) << text;
    }
    EXPECT_EQ(parse_angle("-3.5 deg")->rad(), Angle::degrees(-3.5).rad());
    EXPECT_EQ(parse_angle("−3.5°")->rad(), Angle::degrees(-3.5).rad());
}

TEST(ParseAngle, ReadsMinutesAndSeconds) {
    EXPECT_EQ(parse_angle("12° 30'")->rad(), Angle::degrees(12.5).rad());
    EXPECT_EQ(parse_angle("-12°30′")->rad(), Angle::degrees(-12.5).rad());
    EXPECT_EQ(parse_angle("12 deg 7.5'")->rad(), Angle::degrees(12.125).rad());
    EXPECT_EQ(parse_angle("12°7'30\"")->rad(), Angle::degrees(12.125).rad());
    EXPECT_EQ(parse_angle("12°7’30”")->rad(), Angle::degrees(12.125).rad());
}

TEST(ParseAngle, ReadsRadians) {
    EXPECT_EQ(parse_angle("0.2rad")->rad(), 0.2);
    EXPECT_EQ(parse_angle("-1 radian")->rad(), -1.0);
    EXPECT_EQ(parse_angle(".5 radians")->rad(), 0.5);
}

TEST(ParseAngle, SaysWhereItRefuses) {
    struct Refusal {
        const char* text;
        int column;
        const char* expected;
    };
    for (const Refusal& refusal : {
             Refusal{"", 1, "a number"},
             {"deg", 1, "a number"},
             {"12 m", 4, "deg, °, rad or the end"},
             {"12° 60'", 5, "minutes below 60"},
             {"12° 30", 7, "'"},
             {"12°30'60\"", 7, "seconds below 60"},
             {"12°30.5'10\"", 4, "whole minutes before seconds"},
             {"12.5° 30'", 1, "whole degrees before minutes"},
             {"12° x", 5, "minutes below 60 or the end"},
             {"12°30'10\" 1", 11, "the end"},
             {"0.2rad 3", 8, "the end"},
             {"1e3", 2, "deg, °, rad or the end"},
             {"nan", 1, "a number"},
             {"1000001", 1, "at most 1 000 000 degrees"},
             {"−2000000 rad", 2, "at most 1 000 000 degrees"},
         }) {
        const Result<Angle> angle = parse_angle(refusal.text);
        ASSERT_FALSE(angle) << refusal.text;
        EXPECT_EQ(angle.error().place.column, refusal.column) << angle.error().message;
        EXPECT_NE(angle.error().message.find(std::string{"expected "} + refusal.expected),
                  std::string::npos)
            << angle.error().message;
    }
}

TEST(ParseAngle, NeverGivesANegativeZero) {
    EXPECT_FALSE(std::signbit(parse_angle("-0°")->rad()));
}

RC_GTEST_PROP(ParseAngle, AnswersWhateverIsTyped, (const std::string& text)) {
    const Result<Angle> angle = parse_angle(text);
    RC_ASSERT((angle ? std::isfinite(angle->rad()) : !angle.error().message.empty()));
}

} // namespace
} // namespace throwline
