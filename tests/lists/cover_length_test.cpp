#include "lists/cover_length.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::lists {
namespace {

StockLength any(double length_m) {
    return {Length::metres(length_m), std::nullopt};
}
StockLength some(double length_m, int pieces) {
    return {Length::metres(length_m), pieces};
}

std::optional<Cover> cover(double run_m, const std::vector<StockLength>& stock) {
    return cover_length(Length::metres(run_m), stock);
}

TEST(CoverLength, MeetsARunExactlyWithFewestPieces) {
    const auto made = cover(7.3152, {any(0.3048), any(0.6096), any(1.2192)});
    ASSERT_TRUE(made);
    EXPECT_EQ(made->pieces, (std::vector<int>{0, 0, 6}));
    EXPECT_NEAR(made->total.m(), 7.3152, 1e-9);
    EXPECT_EQ(made->piece_count(), 6);
}

// 1.7 m from 1.0 and 0.9: 1.8 lies nearer above it than 1.9 or 2.0.
TEST(CoverLength, WastesLeast) {
    const auto made = cover(1.7, {any(1.0), any(0.9)});
    ASSERT_TRUE(made);
    EXPECT_EQ(made->pieces, (std::vector<int>{0, 2}));
    EXPECT_NEAR(made->total.m(), 1.8, 1e-9);
}

TEST(CoverLength, KeepsToWhatThereIs) {
    const auto made = cover(3.6, {some(1.2, 2), some(0.6, 4)});
    ASSERT_TRUE(made);
    EXPECT_EQ(made->pieces, (std::vector<int>{2, 2}));
    EXPECT_FALSE(cover(3.6, {some(1.2, 2), some(0.6, 1)}));
    EXPECT_FALSE(cover(3.6, {some(1.2, 0)}));
    EXPECT_FALSE(cover(3.6, {some(1.2, -3)}));
    EXPECT_FALSE(cover(3.6, {}));
}

TEST(CoverLength, LetsJointsCloseUp) {
    EXPECT_EQ(cover(2.402, {any(1.2)})->piece_count(), 2);
    EXPECT_EQ(cover(2.403, {any(1.2)})->piece_count(), 3);
    EXPECT_EQ(cover(0.001, {any(1.2)})->piece_count(), 0);
}

TEST(CoverLength, LeavesEndlessRunsAlone) {
    EXPECT_TRUE(cover(100.0, {any(1.2)}));
    EXPECT_FALSE(cover(100.1, {any(1.2)}));
}

struct Best {
    double total_m = 1e9;
    int pieces = 1'000'000;
};

/// Every choice of numbers, one stock length after the other.
Best best_by_trial(double run_m, const std::vector<StockLength>& stock) {
    Best best;
    const std::function<void(std::size_t, double, int)> tried = [&](std::size_t next, double sum_m,
                                                                    int pieces) {
        if (next == stock.size()) {
            if (sum_m + kJointPlay.m() > run_m - 1e-9
                && (sum_m < best.total_m - 1e-9
                    || (sum_m < best.total_m + 1e-9 && pieces < best.pieces))) {
                best = {sum_m, pieces};
            }
            return;
        }
        const double length_m = stock[next].length.m();
        const int enough = static_cast<int>(run_m / length_m) + 1;
        const int most = std::min(stock[next].pieces.value_or(enough), enough);
        for (int count = 0; count <= most; ++count) {
            tried(next + 1, sum_m + count * length_m, pieces + count);
        }
    };
    tried(0, 0.0, 0);
    return best;
}

RC_GTEST_PROP(CoverLength, IsNoWorseThanEveryTrial, ()) {
    std::vector<StockLength> stock;
    const int kinds = *rc::gen::inRange(1, 4);
    for (int i = 0; i < kinds; ++i) {
        const Length length = Length::millimetres(10.0 * *rc::gen::inRange(30, 200));
        const int pieces = *rc::gen::inRange(0, 5);
        stock.push_back({length, pieces == 0 ? std::nullopt : std::optional{pieces}});
    }
    const double run_m = *rc::gen::inRange(10, 4000) / 1000.0;
    const Best best = best_by_trial(run_m, stock);
    const std::optional<Cover> made = cover_length(Length::metres(run_m), stock);
    RC_ASSERT(made.has_value() == (best.pieces < 1'000'000));
    if (made) {
        RC_ASSERT(std::abs(made->total.m() - best.total_m) < 1e-9);
        RC_ASSERT(made->piece_count() == best.pieces);
        double summed_m = 0.0;
        for (std::size_t i = 0; i < stock.size(); ++i) {
            RC_ASSERT(made->pieces[i] <= stock[i].pieces.value_or(1'000'000));
            summed_m += made->pieces[i] * stock[i].length.m();
        }
        RC_ASSERT(std::abs(summed_m - made->total.m()) < 1e-9);
    }
}

} // namespace
} // namespace throwline::lists
