#include "command/call.h"

#include <gtest/gtest.h>

namespace throwline::command_test {
namespace {

const std::string kPlace = "sun --latitude 39.742476 --longitude -105.1786 ";

// NREL/TP-560-34302, example: azimuth 194.340241 deg; zenith 50.111622 deg at 820 mbar and 11 C.
TEST(SunCommand, AgreesWithThePublishedExample) {
    const Called answer = call(
        split(kPlace + "--time 2003-10-17T12:30:30-07:00 --pressure 820 --temperature 11 --json"));
    EXPECT_EQ(answer.code, 0);
    EXPECT_NEAR(number_at(answer, "/azimuth_deg"), 194.340241, 0.01);
    EXPECT_NEAR(number_at(answer, "/elevation_deg"), 90.0 - 50.111622, 0.01);
}

TEST(SunCommand, TakesSouthernPlaces) {
    const Called answer = call(
        split("sun --latitude -33.8688 --longitude 151.2093 --time 2022-01-15T00:30:00Z --json"));
    EXPECT_NEAR(number_at(answer, "/airless_elevation_deg"), 65.6111, 0.01);
    EXPECT_NEAR(number_at(answer, "/azimuth_deg"), 64.6936, 0.02);
}

TEST(SunCommand, WarnsOfTheSunOnlyWhileItIsUp) {
    const Called noon = call(split(kPlace + "--time 2003-10-17T12:30:30-07:00"));
    const Called night = call(split(kPlace + "--time 2003-10-17T00:30:30-07:00"));
    EXPECT_NE(noon.out.find("never look at the sun"), std::string::npos);
    EXPECT_EQ(night.out.find("never look at the sun"), std::string::npos);
    EXPECT_NE(night.out.find("not up"), std::string::npos);
}

TEST(SunCommand, RefusesATimeWithoutItsOffset) {
    const Called answer = call(split(kPlace + "--time 2003-10-17T12:30:30"));
    EXPECT_EQ(answer.code, 2);
    EXPECT_NE(answer.err.find("--time"), std::string::npos);
}

TEST(SunCommand, RefusesPlacesOffTheEarth) {
    EXPECT_EQ(call(split("sun --latitude 91 --longitude 0 --time 2003-10-17T12:30:30Z")).code, 2);
    EXPECT_EQ(call(split("sun --latitude 0 --longitude 181 --time 2003-10-17T12:30:30Z")).code, 2);
}

} // namespace
} // namespace throwline::command_test
