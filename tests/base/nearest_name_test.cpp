#include "base/nearest_name.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <vector>

namespace throwline {
namespace {

const std::vector<std::string> kNames{"height", "width", "depth", "weight"};

TEST(NearestName, FindsWhatWasMeant) {
    EXPECT_EQ(nearest_name("heigth", kNames), "height");
    EXPECT_EQ(nearest_name("widht", kNames), "width");
    EXPECT_EQ(nearest_name("dpth", kNames), "depth");
    EXPECT_EQ(nearest_name("weights", kNames), "weight");
    EXPECT_EQ(nearest_name("WIDTH", kNames), "width");
}

TEST(NearestName, SaysNothingWhenNothingIsNear) {
    EXPECT_EQ(nearest_name("colour", kNames), "");
    EXPECT_EQ(nearest_name("", kNames), "");
    EXPECT_EQ(nearest_name("height", std::vector<std::string>{}), "");
    // Half of the longer name is not nearer than half.
    EXPECT_EQ(nearest_name("abxy", std::vector<std::string>{"abcd"}), "");
    EXPECT_EQ(nearest_name("abcx", std::vector<std::string>{"abcd"}), "abcd");
}

TEST(NearestName, LetsTheEarlierWinATie) {
    EXPECT_EQ(nearest_name("eight", kNames), "height");
    EXPECT_EQ(nearest_name("cat", std::vector<std::string>{"hat", "bat"}), "hat");
}

TEST(NearestName, CountsASwapOfNeighboursOnce) {
    // As two changes the swap would be no nearer than half of "abc".
    EXPECT_EQ(nearest_name("acb", std::vector<std::string>{"abc"}), "abc");
}

TEST(NearestName, CountsCharactersNotBytes) {
    EXPECT_EQ(nearest_name("fenetre", std::vector<std::string>{"fenêtre"}), "fenêtre");
    EXPECT_EQ(nearest_name("aé", std::vector<std::string>{"ae"}), "");
}

TEST(NearestName, IsQuickWithAHugeText) {
    EXPECT_EQ(nearest_name(std::string(1'000'000, 'x'), kNames), "");
}

RC_GTEST_PROP(NearestName, AnExactNameIsItsOwnNearest, (const std::vector<std::string>& names)) {
    for (const std::string& name : names) {
        const std::string nearest = nearest_name(name, names);
        // Letter case is ignored, so a twin in another case may come first.
        RC_ASSERT((nearest == name || nearest.size() == name.size()));
    }
}

} // namespace
} // namespace throwline
