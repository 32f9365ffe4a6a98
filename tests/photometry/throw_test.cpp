#include "photometry/throw.h"

#include <cmath>
#include <gtest/gtest.h>

namespace throwline::photometry {
namespace {

ThrowSetup usual_setup() {
    return {{20000, Angle::degrees(20), Angle::degrees(40)},
            Length::metres(4),
            Length::metres(3),
            Length::metres(1.5)};
}

// Worked by hand: slant sqrt(3^2 + 2.5^2) = 3.90512 m, elevation atan(2.5 / 3) = 39.8056 deg.
TEST(Throw, FiguresOfAUsualThrow) {
    const auto figures = throw_figures(usual_setup());
    ASSERT_TRUE(figures);
    EXPECT_NEAR(figures->slant.m(), 3.90512, 0.00001);
    EXPECT_NEAR(figures->elevation.deg(), 39.8056, 0.0001);
    EXPECT_NEAR(figures->horizontal_lx, 20000 / 15.25 * 2.5 / 3.905125, 0.001);
    EXPECT_NEAR(figures->facing_lx, 20000 / 15.25 * 3.0 / 3.905125, 0.001);
    EXPECT_NEAR(figures->beam_width.m(), 2 * 3.905125 * std::tan(Angle::degrees(10).rad()), 1e-6);
    ASSERT_TRUE(figures->floor_ellipse);
    EXPECT_NEAR(figures->floor_ellipse->axis_hit.m(), 4.0 * 3.0 / 2.5, 1e-9);
}

TEST(Throw, ALowLampHasAnOpenBeam) {
    ThrowSetup setup = usual_setup();
    setup.height = Length::metres(1.6);
    const auto figures = throw_figures(setup);
    ASSERT_TRUE(figures);
    EXPECT_FALSE(figures->floor_ellipse);
    EXPECT_NE(throw_workings(setup).back().result.find("open"), std::string::npos);
}

TEST(Throw, ALampBelowThePointLightsNoLevelSurface) {
    ThrowSetup setup = usual_setup();
    setup.height = Length::metres(1.0);
    const auto figures = throw_figures(setup);
    ASSERT_TRUE(figures);
    EXPECT_LT(figures->elevation.rad(), 0.0);
    EXPECT_EQ(figures->horizontal_lx, 0.0);
    EXPECT_GT(figures->facing_lx, 0.0);
}

TEST(Throw, WhatCannotBeIsRefusedInWords) {
    const auto message_of = [](const ThrowSetup& setup) {
        const auto figures = throw_figures(setup);
        return figures ? std::string{} : figures.error().message;
    };
    ThrowSetup same = usual_setup();
    same.run = Length{};
    same.at_height = same.height;
    EXPECT_NE(message_of(same).find("same"), std::string::npos);
    ThrowSetup crossed = usual_setup();
    crossed.beam.field = Angle::degrees(10);
    EXPECT_NE(message_of(crossed).find("field"), std::string::npos);
    ThrowSetup flat = usual_setup();
    flat.beam.beam = Angle::degrees(180);
    EXPECT_NE(message_of(flat).find("beam"), std::string::npos);
    ThrowSetup negative = usual_setup();
    negative.beam.peak_cd = -1;
    EXPECT_NE(message_of(negative).find("peak"), std::string::npos);
    ThrowSetup sunk = usual_setup();
    sunk.height = Length{};
    EXPECT_NE(message_of(sunk).find("above the floor"), std::string::npos);
    EXPECT_TRUE(throw_workings(sunk).empty());
    EXPECT_EQ(message_of(usual_setup()), "");
}

TEST(Throw, EveryFigureHasItsWorking) {
    const std::vector<Working> workings = throw_workings(usual_setup());
    ASSERT_EQ(workings.size(), 6U);
    EXPECT_EQ(workings[0].result, "3.905 m");
    EXPECT_EQ(workings[1].result, "39.81°");
    EXPECT_EQ(workings[2].result, "840 lx");
    EXPECT_EQ(workings[3].result, "1008 lx");
    EXPECT_EQ(workings[4].result, "1.377 m");
}

} // namespace
} // namespace throwline::photometry
