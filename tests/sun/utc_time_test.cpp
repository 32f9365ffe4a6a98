#include "sun/utc_time.h"

#include <array>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::sun {
namespace {

double seconds(const char* text) {
    const auto time = parse_time(text);
    EXPECT_TRUE(time) << text;
    return time ? time->unix_s : 0.0;
}

TEST(Time, OffsetsNameTheSameMoment) {
    EXPECT_EQ(seconds("1970-01-01T00:00:00Z"), 0.0);
    EXPECT_EQ(seconds("2003-10-17T12:30:30-07:00"), seconds("2003-10-17T19:30:30Z"));
    EXPECT_EQ(seconds("2003-10-17T12:30:30-0700"), seconds("2003-10-17T19:30:30Z"));
    EXPECT_EQ(seconds("2024-03-01T05:15+05:30"), seconds("2024-02-29T23:45Z"));
    EXPECT_EQ(seconds("2024-03-01 05:15:00+00:00"), seconds("2024-03-01T05:15Z"));
    EXPECT_NEAR(seconds("2024-03-01T05:15:10.25Z") - seconds("2024-03-01T05:15:10Z"), 0.25, 1e-6);
}

TEST(Time, WhatIsWrongIsShownByItsColumn) {
    const std::array<std::pair<const char*, int>, 11> rows{{{"2003-10-17T12:30:30", 20},
                                                            {"2003-13-17T12:30Z", 6},
                                                            {"2003-02-29T12:30Z", 9},
                                                            {"2003-10-17T24:30Z", 12},
                                                            {"2003-10-17T12:60Z", 15},
                                                            {"2003-10-17", 11},
                                                            {"17.10.2003 12:30Z", 3},
                                                            {"2003-10-17T12:30Z!", 18},
                                                            {"2003-10-17T12:30+25:00", 18},
                                                            {"2003-10-17T12:30:30.Z", 21},
                                                            {"", 1}}};
    for (const auto& [text, column] : rows) {
        const auto time = parse_time(text);
        ASSERT_FALSE(time) << text;
        EXPECT_EQ(time.error().place.column, column) << text;
        EXPECT_NE(time.error().message.find("2003-10-17T12:30:30-07:00"), std::string::npos);
    }
}

RC_GTEST_PROP(Time, TextReadsBack, ()) {
    const UtcTime time{static_cast<double>(*rc::gen::inRange(-2000000000, 2000000000))};
    const int offset_minutes = *rc::gen::inRange(-840, 840);
    const auto again = parse_time(time_text(time, offset_minutes));
    RC_ASSERT(again.has_value());
    RC_ASSERT(*again == time);
}

TEST(Time, TextShowsLocalTime) {
    EXPECT_EQ(time_text(UtcTime{1066419030}, -420), "2003-10-17T12:30:30-07:00");
    EXPECT_EQ(time_text(UtcTime{1066419030}), "2003-10-17T19:30:30Z");
}

TEST(Time, DaysAreCountedByTheLocalCalendar) {
    EXPECT_EQ(day_of_year({seconds("2024-01-01T00:30Z")}), 1);
    EXPECT_EQ(day_of_year({seconds("2024-01-01T00:30Z")}, -60), 365);
    EXPECT_EQ(day_of_year({seconds("2024-12-31T12:00Z")}), 366);
    EXPECT_NEAR(julian_date({seconds("2000-01-01T12:00Z")}), 2451545.0, 1e-9);
}

} // namespace
} // namespace throwline::sun
