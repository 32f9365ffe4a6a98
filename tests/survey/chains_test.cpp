#include "survey/chains.h"

#include <cmath>
#include <gtest/gtest.h>

namespace throwline::survey {
namespace {

using plan::Chain;
using plan::Stretch;
using plan::StretchKind;
using plan::Survey;

Chain chain_of(std::vector<double> widths_m) {
    Chain chain{"A", "B", {}, true};
    for (const double width_m : widths_m) {
        chain.stretches.push_back({"", StretchKind::wall, Length::metres(width_m), {}, {}, {}});
    }
    return chain;
}

// 2 mm and 0.5 mm/m: sqrt(4 + 2.25) = 2.5 mm at 3 m, sqrt(4 + 9) = 3.606 mm at 6 m.
TEST(TapeSigma, AddsTheTwoPartsAsVariances) {
    EXPECT_NEAR(tape_sigma_m({}, Length::metres(3)), 0.0025, 1e-12);
    EXPECT_NEAR(tape_sigma_m({}, Length::metres(6)), 0.003605551, 1e-9);
}

TEST(Chain, AddsUpVariances) {
    EXPECT_NEAR(chain_sigma_m({}, chain_of({3, 6})), std::sqrt(6.25 + 13.0) / 1000.0, 1e-12);
    EXPECT_EQ(chain_sum(chain_of({3, 6})), Length::metres(9));
}

TEST(Chain, SpreadsWhatIsMissingByVariance) {
    const ChainFit fit = fitted_chain({}, chain_of({3, 6}), Length::metres(9.01));
    EXPECT_TRUE(fit.closes);
    EXPECT_NEAR(fit.misclosure.mm(), 10.0, 1e-9);
    EXPECT_NEAR(fit.tolerance.mm(), 3.2905 * std::sqrt(19.25), 1e-9);
    ASSERT_EQ(fit.stretches.size(), 2U);
    EXPECT_NEAR(fit.stretches[0].width.mm(), 3000 + 10 * 6.25 / 19.25, 1e-9);
    EXPECT_NEAR(fit.stretches[1].start.mm(), fit.stretches[0].width.mm(), 1e-9);
    EXPECT_NEAR((fit.stretches[1].start + fit.stretches[1].width).m(), 9.01, 1e-12);
}

TEST(Chain, BeyondItsToleranceIsLeftAsRead) {
    const ChainFit fit = fitted_chain({}, chain_of({3, 6}), Length::metres(9.1));
    EXPECT_FALSE(fit.closes);
    EXPECT_NEAR(fit.misclosure.mm(), 100, 1e-9);
    EXPECT_EQ(fit.stretches[0].width, Length::metres(3));
    EXPECT_EQ(fit.stretches[1].width, Length::metres(6));
    EXPECT_FALSE(fitted_chain({}, chain_of({3, 6}), Length::metres(8.9)).closes);
}

TEST(Chain, MayStopShortButNotRunPastTheEnd) {
    Chain chain = chain_of({3, 1});
    chain.to_the_end = false;
    const ChainFit fit = fitted_chain({}, chain, Length::metres(9));
    EXPECT_TRUE(fit.closes);
    EXPECT_NEAR(fit.misclosure.m(), 5, 1e-12);
    EXPECT_EQ(fit.stretches[1].start, Length::metres(3));
    EXPECT_FALSE(fitted_chain({}, chain, Length::metres(3.9)).closes);
    EXPECT_TRUE(fitted_chain({}, chain, Length::metres(3.995)).closes);
}

TEST(Chain, ShowsItsWorking) {
    const Chain chain = chain_of({3, 6});
    const Working working = chain_working({}, chain, fitted_chain({}, chain, Length::metres(9.01)));
    EXPECT_EQ(working.result, "misclosure 10.0 mm, tolerance 14.4 mm");
    EXPECT_EQ(working.inputs.size(), 5U);
}

} // namespace
} // namespace throwline::survey
