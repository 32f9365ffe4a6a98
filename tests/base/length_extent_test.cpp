#include "base/length_text.h"
#include "base/measure_tokens.h"
#include "base/utf8.h"

#include <gtest/gtest.h>
#include <string>

namespace throwline {
namespace {

std::string length_at_start(const std::string& text) {
    const std::vector<char32_t> characters = characters_of(text);
    return utf8_of(std::span{characters}.first(length_extent(characters)));
}

TEST(LengthExtent, EndsBeforeTheNextWord) {
    EXPECT_EQ(length_at_start("4ft 2in deep 18in"), "4ft 2in");
    EXPECT_EQ(length_at_start("5.32 m, B 3m"), "5.32 m");
    EXPECT_EQ(length_at_start("12,5cm high"), "12,5cm");
    EXPECT_EQ(length_at_start("14'-7 1/2\" high"), "14'-7 1/2\"");
    EXPECT_EQ(length_at_start("6’ 2½” x"), "6’ 2½”");
    EXPECT_EQ(length_at_start("3m 20 high"), "3m 20");
    EXPECT_EQ(length_at_start("-3 m"), "-3 m");
}

TEST(LengthExtent, TakesAQuoteForInchesOnlyBehindADigit) {
    EXPECT_EQ(length_at_start("14' 7\" \"tape sagged\""), "14' 7\"");
    EXPECT_EQ(length_at_start("14ft 7 \"tape sagged\""), "14ft 7");
    EXPECT_EQ(length_at_start("14ft \"tape sagged\""), "14ft");
}

TEST(LengthExtent, LeavesOutWhatOnlyBeginsToGoOn) {
    EXPECT_EQ(length_at_start("3m - a note"), "3m");
    EXPECT_EQ(length_at_start("3 / x"), "3");
    EXPECT_EQ(length_at_start("2mm + 0.5mm/m"), "2mm");
    EXPECT_EQ(length_at_start("wall 3m"), "");
    EXPECT_EQ(length_at_start("- m"), "");
    EXPECT_EQ(length_at_start(""), "");
}

TEST(ExactAngle, ReadsBackToTheSameDouble) {
    for (const double radians : {0.0, 1.0, -0.1, 1e-300, 6.283185307179586, 1e3}) {
        const Angle angle = Angle::radians(radians);
        EXPECT_EQ(parse_angle(exact_angle(angle)).value(), angle) << exact_angle(angle);
    }
    EXPECT_EQ(exact_angle(Angle::degrees(95)), "95deg");
    EXPECT_EQ(exact_angle(Angle::degrees(-12.5)), "-12.5deg");
}

} // namespace
} // namespace throwline
