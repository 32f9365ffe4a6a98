#include "base/latest.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <thread>
#include <vector>

namespace throwline {
namespace {

using namespace std::chrono_literals;

TEST(Latest, TheNewestWins) {
    Latest<int> latest;
    latest.put(1);
    latest.put(2);
    EXPECT_TRUE(latest.has_one());
    EXPECT_EQ(latest.take({}), 2);
    EXPECT_FALSE(latest.has_one());
}

TEST(Latest, WhatIsClearedIsGone) {
    Latest<int> latest;
    latest.put(1);
    latest.clear();
    EXPECT_FALSE(latest.has_one());
    EXPECT_FALSE(latest.came_within(1ms, {}));
}

TEST(Latest, StoppingEndsTheWait) {
    Latest<int> latest;
    std::optional<int> taken = 7;
    {
        std::jthread worker{[&](const std::stop_token& stop) { taken = latest.take(stop); }};
    }
    EXPECT_EQ(taken, std::nullopt);
}

TEST(Latest, AWorkerAlwaysGetsTheLastOne) {
    Latest<int> latest;
    constexpr int kLast = 5000;
    std::vector<int> taken;
    std::jthread worker{[&] {
        while (taken.empty() || taken.back() != kLast) {
            taken.push_back(*latest.take({}));
        }
    }};
    for (int i = 1; i <= kLast; ++i) {
        latest.put(i);
    }
    worker.join();
    EXPECT_TRUE(std::is_sorted(taken.begin(), taken.end()));
    EXPECT_EQ(taken.back(), kLast);
}

TEST(Latest, WaitingForOneLeavesItThere) {
    Latest<int> latest;
    latest.put(3);
    EXPECT_TRUE(latest.came_within(1ms, {}));
    EXPECT_EQ(latest.take({}), 3);
}

TEST(Latest, AnotherSupersedesWhatWasTaken) {
    Latest<int> latest;
    latest.put(1);
    latest.take({});
    const std::stop_token first = latest.superseded();
    EXPECT_FALSE(first.stop_requested());
    latest.put(2);
    EXPECT_TRUE(first.stop_requested());
    latest.take({});
    EXPECT_TRUE(first.stop_requested());
    EXPECT_FALSE(latest.superseded().stop_requested());
    latest.clear();
    EXPECT_TRUE(latest.superseded().stop_requested());
}

/// Between taking and asking for the token another may come.
TEST(Latest, WhatWaitsHasSupersededAlready) {
    Latest<int> latest;
    latest.put(1);
    latest.take({});
    latest.put(2);
    EXPECT_TRUE(latest.superseded().stop_requested());
}

} // namespace
} // namespace throwline
