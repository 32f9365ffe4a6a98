#include "command/call.h"

#include <gtest/gtest.h>

namespace throwline::command_test {
namespace {

const std::string kLamp = "throw --peak 20000 --beam 20deg --field 40deg --height 4m --run 3m ";

// By hand: rise 2.5, run 3: d = 3.905125, d^2 = 15.25, elevation atan(2.5 / 3) = 39.8056 deg;
// 20000 / 15.25 * sin = 839.586, * cos = 1007.503 lx; width 2 d tan(10 deg) = 1.377158 m.
TEST(ThrowCommand, GivesThrowAngleAndLevels) {
    const Called answer = call(split(kLamp + "--at 1.5m --json"));
    EXPECT_EQ(answer.code, 0);
    EXPECT_NEAR(number_at(answer, "/throw_m"), 3.905125, 1e-6);
    EXPECT_NEAR(number_at(answer, "/elevation_deg"), 39.805571, 1e-6);
    EXPECT_NEAR(number_at(answer, "/horizontal_lux"), 839.5861, 1e-4);
    EXPECT_NEAR(number_at(answer, "/facing_lux"), 1007.5033, 1e-4);
    EXPECT_NEAR(number_at(answer, "/beam_width_m"), 1.3771577, 1e-6);
}

// Lamp 4 m high, axis 45 deg, half angle 10 deg: near 2.8008, far 5.7126, 2.9118 by 2.0265 m (conic
// section, checked by casting rays).
TEST(ThrowCommand, GivesThePoolOnTheFloor) {
    const Called answer =
        call(split("throw --peak 1000 --beam 20deg --field 30deg --height 4m --run 4m --json"));
    EXPECT_NEAR(number_at(answer, "/floor_ellipse/near_m"), 2.8008, 1e-4);
    EXPECT_NEAR(number_at(answer, "/floor_ellipse/far_m"), 5.7126, 1e-4);
    EXPECT_NEAR(number_at(answer, "/floor_ellipse/length_m"), 2.9118, 2e-4);
    EXPECT_NEAR(number_at(answer, "/floor_ellipse/width_m"), 2.0266, 2e-4);
}

TEST(ThrowCommand, HasNoPoolWhenTheBeamReachesTheHorizontal) {
    const Called answer = call(
        split("throw --peak 1000 --beam 40deg --field 60deg --height 2m --run 8m --at 1m --json"));
    EXPECT_TRUE(is_null_at(answer, "/floor_ellipse"));
}

TEST(ThrowCommand, DimsByTheSquareOfTheLevel) {
    const double full = number_at(call(split(kLamp + "--json")), "/facing_lux");
    const double half = number_at(call(split(kLamp + "--level 0.5 --json")), "/facing_lux");
    EXPECT_NEAR(half / full, 0.25, 1e-12);
}

TEST(ThrowCommand, TakesAnInstrumentAndWarnsOfItsHeat) {
    const Called answer =
        call(split("throw --instrument \"Fresnel 1 kW\" --height 4m --run 3m --at 1.5m"));
    EXPECT_EQ(answer.code, 0) << answer.err;
    EXPECT_NE(answer.out.find("caution: keep people, drapes"), std::string::npos) << answer.out;
}

TEST(ThrowCommand, WeakensTheLightByItsFilters) {
    const std::string lamp = "throw --instrument \"Fresnel 1 kW\" --height 4m --run 3m --json ";
    const double bare = number_at(call(split(lamp)), "/facing_lux");
    const double twice = number_at(
        call(split(lamp + "--filter \"half blue\" --filter \"half blue\"")), "/facing_lux");
    EXPECT_NEAR(twice / bare, 0.52 * 0.52, 1e-9);
}

TEST(ThrowCommand, RefusesTwoLampsAtOnce) {
    const Called answer =
        call(split("throw --instrument \"Fresnel 1 kW\" --peak 5 --height 4m --run 3m"));
    EXPECT_EQ(answer.code, 2);
    EXPECT_NE(answer.err.find("--peak cannot go with --instrument"), std::string::npos);
}

TEST(ThrowCommand, RefusesWhatCannotBe) {
    EXPECT_EQ(call(split("throw --peak -1 --beam 20deg --field 40deg --height 4m --run 3m")).code,
              2);
    EXPECT_EQ(call(split("throw --peak nan --beam 20deg --field 40deg --height 4m --run 3m")).code,
              2);
    EXPECT_EQ(call(split("throw --peak 10 --beam 50deg --field 40deg --height 4m --run 3m")).code,
              2);
    EXPECT_EQ(call(split(kLamp + "--at 4m --run 0m")).code, 2);
}

} // namespace
} // namespace throwline::command_test
