#include "sheet/scale_words.h"

#include "support/demo_plan.h"

#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

std::string words(double ratio, UnitSystem system = UnitSystem::metric) {
    return scale_words(ratio, system, support::shipped_catalogue());
}

TEST(ScaleWords, AStandardScaleIsNamed) {
    EXPECT_EQ(words(50.0), "1:50");
    EXPECT_EQ(words(48.0, UnitSystem::imperial), "1/4 in = 1 ft");
}

TEST(ScaleWords, NearAStandardScaleIsAboutIt) {
    EXPECT_EQ(words(52.0), "about 1:50");
    EXPECT_EQ(words(50.0, UnitSystem::imperial), "about 1/4 in = 1 ft");
    EXPECT_EQ(words(82.0, UnitSystem::imperial), "about 1/8 in = 1 ft");
}

TEST(ScaleWords, FarFromAllIsARatioOfTwoFigures) {
    EXPECT_EQ(words(63.4), "about 1:63");
    EXPECT_EQ(words(634.0), "about 1:630");
    EXPECT_EQ(words(7.13), "about 1:7.1");
}

} // namespace
} // namespace throwline::sheet
