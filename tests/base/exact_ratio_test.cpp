#include "base/exact_ratio.h"

#include <cmath>
#include <cstdint>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <string>

namespace throwline {
namespace {

TEST(ExactRatio, RefusesZeroBelowTheLine) {
    EXPECT_FALSE(ExactRatio::of(1, 0));
    EXPECT_FALSE(ExactRatio{}.inverse());
}

TEST(ExactRatio, ReadsOnlyDecimals) {
    EXPECT_EQ(ExactRatio::of_decimal("3.50")->nearest_double(), 3.5);
    EXPECT_EQ(ExactRatio::of_decimal(".5")->nearest_double(), 0.5);
    for (const char* text : {"", ".", "1.2.3", "-1", "1e3", "x"}) {
        EXPECT_FALSE(ExactRatio::of_decimal(text)) << text;
    }
}

TEST(ExactRatio, AnswersNothingRatherThanOverflow) {
    const ExactRatio::Whole large = ~ExactRatio::Whole{0};
    const ExactRatio most = *ExactRatio::of(large, 1);
    EXPECT_FALSE(most.times(most));
    EXPECT_FALSE(most.plus(most));
    EXPECT_FALSE(most.inverse()->times(*most.inverse()));
    EXPECT_FALSE(ExactRatio::of_decimal(std::string(40, '9')));
    EXPECT_FALSE(ExactRatio::of_decimal("0." + std::string(40, '1')));
}

TEST(ExactRatio, RoundsAtTheEdgesOf128Bits) {
    const ExactRatio::Whole large = ~ExactRatio::Whole{0};
    EXPECT_EQ(ExactRatio::of(large, 1)->nearest_double(), std::ldexp(1.0, 128));
    EXPECT_EQ(ExactRatio::of(1, large)->nearest_double(), std::ldexp(1.0, -128));
    EXPECT_EQ(ExactRatio::of(large - 1, large)->nearest_double(), 1.0);
}

TEST(ExactRatio, RoundsTiesToEven) {
    const ExactRatio::Whole two_53 = ExactRatio::Whole{1} << 53U;
    EXPECT_EQ(ExactRatio::of(two_53 + 1, 1)->nearest_double(), 0x1p53);
    EXPECT_EQ(ExactRatio::of(two_53 + 3, 1)->nearest_double(), 0x1p53 + 4.0);
    // A hair above the tie must go up.
    EXPECT_EQ(ExactRatio::of((two_53 + 1) * 1000 + 1, 1000)->nearest_double(), 0x1p53 + 2.0);
}

RC_GTEST_PROP(ExactRatio, AgreesWithDivisionWhereBothPartsAreDoubles, ()) {
    // IEEE 754 division of two exact doubles is rounded once, too.
    const auto above = *rc::gen::inRange<std::uint64_t>(0, 1ULL << 53U);
    const auto below = *rc::gen::inRange<std::uint64_t>(1, 1ULL << 53U);
    RC_ASSERT(ExactRatio::of(above, below)->nearest_double()
              == static_cast<double>(above) / static_cast<double>(below));
}

RC_GTEST_PROP(ExactRatio, AddsLikeFractions, ()) {
    const auto small = [] { return *rc::gen::inRange<std::uint64_t>(1, 1'000'000); };
    const auto a = small();
    const auto b = small();
    const auto c = small();
    const auto d = small();
    const auto sum = ExactRatio::of(a, b)->plus(*ExactRatio::of(c, d));
    RC_ASSERT(sum->nearest_double()
              == static_cast<double>(a * d + c * b) / static_cast<double>(b * d));
}

} // namespace
} // namespace throwline
