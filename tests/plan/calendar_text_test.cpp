#include "plan/calendar_text.h"

#include "plan/shutter_text.h"

#include <gtest/gtest.h>

namespace throwline::plan {
namespace {

TEST(CalendarDate, KnowsLeapYears) {
    EXPECT_TRUE(is_calendar_date("2024-02-29"));
    EXPECT_TRUE(is_calendar_date("2000-02-29"));
    EXPECT_FALSE(is_calendar_date("2025-02-29"));
    EXPECT_FALSE(is_calendar_date("2100-02-29"));
    EXPECT_FALSE(is_calendar_date("1900-02-29"));
}

TEST(CalendarDate, IsYearMonthDay) {
    EXPECT_TRUE(is_calendar_date("2026-12-31"));
    for (const char* text :
         {"", "2026-13-01", "2026-00-01", "2026-01-00", "2026-04-31", "2026-1-01", "26-01-01",
          "2026/01/01", "2026-01-01 ", "-026-01-01", "1899-01-01", "2200-01-01", "2026-01-0a"}) {
        EXPECT_FALSE(is_calendar_date(text)) << text;
    }
}

TEST(ClockTime, GoesFromMidnightToMidnight) {
    EXPECT_EQ(clock_time_of("00:00")->minutes, 0);
    EXPECT_EQ(clock_time_of("09:05")->minutes, 545);
    EXPECT_EQ(clock_time_of("24:00")->minutes, 1440);
    for (const char* text : {"", "9:05", "09:60", "24:01", "25:00", "09-05", "09:05:00", "-9:05"}) {
        EXPECT_FALSE(clock_time_of(text)) << text;
    }
}

TEST(ClockTime, EveryMinuteReadsBack) {
    for (int minutes = 0; minutes <= 1440; ++minutes) {
        EXPECT_EQ(clock_time_of(text_of(ClockTime{minutes}))->minutes, minutes);
    }
}

TEST(UtcOffset, HasASign) {
    EXPECT_EQ(utc_offset_of("+05:30"), 330);
    EXPECT_EQ(utc_offset_of("-03:30"), -210);
    EXPECT_EQ(utc_offset_of("+00:00"), 0);
    for (const char* text : {"05:30", "+5:30", "+14:01", "-12:01", "Z", "", "+"}) {
        EXPECT_FALSE(utc_offset_of(text)) << text;
    }
}

TEST(UtcOffset, EveryMinuteReadsBack) {
    for (int minutes = -720; minutes <= 840; ++minutes) {
        EXPECT_EQ(utc_offset_of(utc_offset_text(minutes)), minutes);
    }
}

TEST(Shutter, IsOneOverANumber) {
    EXPECT_EQ(exposure_of("1/50"), 0.02);
    EXPECT_EQ(exposure_of("1/59.94"), 1.0 / 59.94);
    for (const char* text :
         {"", "1/", "1/0", "1/-50", "2/50", "1/50s", "1/inf", "1/nan", "1/1e-320"}) {
        EXPECT_FALSE(exposure_of(text)) << text;
    }
}

TEST(Shutter, IsWrittenOnlyWhereItIsExact) {
    EXPECT_EQ(shutter_text(0.02), "1/50");
    EXPECT_EQ(shutter_text(1.0 / 60.0), "1/60");
    EXPECT_FALSE(shutter_text(0.3));
}

} // namespace
} // namespace throwline::plan
