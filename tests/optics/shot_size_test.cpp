#include "optics/shot_size.h"

#include <array>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::optics {
namespace {

TEST(ShotSize, EveryWantedFrameIsCalledByItsOwnName) {
    for (const ShotSize size : kShotSizes) {
        const WantedFrame wanted = wanted_frame(size);
        EXPECT_EQ(classify_shot_size({wanted.bottom_cut_share, wanted.frame_height_share}), size)
            << name_of(size);
    }
}

// Worked from S (1 - b) / (1 - headroom) with S = 1.70 m.
TEST(ShotSize, WantedFrameHeightsOfAPersonOfUsualStature) {
    const std::array<std::pair<ShotSize, double>, 7> rows{{{ShotSize::big_close_up, 0.222},
                                                           {ShotSize::close_up, 0.397},
                                                           {ShotSize::medium_close_up, 0.553},
                                                           {ShotSize::medium, 0.773},
                                                           {ShotSize::medium_long, 1.135},
                                                           {ShotSize::medium_long_knee, 1.356},
                                                           {ShotSize::full, 1.889}}};
    for (const auto& [size, height_m] : rows) {
        EXPECT_NEAR(wanted_frame_height(size, Length::metres(1.70)).m(), height_m, 0.001)
            << name_of(size);
    }
}

TEST(ShotSize, WiderSizesWantTallerFrames) {
    for (std::size_t i = 1; i < kShotSizes.size(); ++i) {
        EXPECT_GT(wanted_frame(kShotSizes[i]).frame_height_share,
                  wanted_frame(kShotSizes[i - 1]).frame_height_share);
        EXPECT_EQ(steps_between(kShotSizes[i], kShotSizes[i - 1]), 1);
    }
}

TEST(ShotSize, TheLowerEdgeDecidesFromTheBustToTheKnee) {
    const auto size_at = [](double bottom_share) {
        return classify_shot_size({bottom_share, 1.1 * (1.0 - bottom_share)});
    };
    EXPECT_EQ(size_at(0.83), ShotSize::big_close_up);
    EXPECT_EQ(size_at(0.829), ShotSize::close_up);
    EXPECT_EQ(size_at(0.76), ShotSize::close_up);
    EXPECT_EQ(size_at(0.66), ShotSize::medium_close_up);
    EXPECT_EQ(size_at(0.52), ShotSize::medium);
    EXPECT_EQ(size_at(0.33), ShotSize::medium_long);
    EXPECT_EQ(size_at(0.12), ShotSize::medium_long_knee);
    EXPECT_EQ(size_at(0.119), ShotSize::full);
}

TEST(ShotSize, ThePersonsShareDecidesForWideSizes) {
    EXPECT_EQ(classify_shot_size({-0.1, 1.0 / 0.67}), ShotSize::full);
    EXPECT_EQ(classify_shot_size({-0.1, 1.0 / 0.66}), ShotSize::wide);
    EXPECT_EQ(classify_shot_size({-0.1, 1.0 / 0.33}), ShotSize::wide);
    EXPECT_EQ(classify_shot_size({-0.1, 1.0 / 0.32}), ShotSize::very_wide);
}

TEST(ShotSize, AFrameOfTheFeetIsNamedByItsHeight) {
    EXPECT_EQ(classify_shot_size({0.0, 0.21}), ShotSize::close_up);
    EXPECT_EQ(classify_shot_size({0.5, 0.1}), ShotSize::extreme_close_up);
}

RC_GTEST_PROP(ShotSize, ATallerFrameOnTheSameCrownIsNeverTighter, ()) {
    const double headroom = *rc::gen::inRange(0, 20) / 100.0;
    const double small = *rc::gen::inRange(5, 600) / 100.0;
    const double tall = small + *rc::gen::inRange(1, 300) / 100.0;
    const auto size_of = [headroom](double height) {
        return classify_shot_size({1.0 - height * (1.0 - headroom), height});
    };
    RC_ASSERT(order_of(size_of(tall)) >= order_of(size_of(small)));
}

TEST(ShotSize, ASittingPersonIsCutAtTheSamePartOfTheBody) {
    const Length stature = Length::metres(1.70);
    const double standing = bottom_cut_share(stature, Length::metres(1.20), stature);
    const double sitting = bottom_cut_share(Length::metres(1.30), Length::metres(0.80), stature);
    EXPECT_NEAR(standing, sitting, 1e-12);
    EXPECT_NEAR(standing, 1.20 / 1.70, 1e-12);
}

TEST(ShotSizeNames, NamesAndAbbreviationsReadBack) {
    for (const ShotSize size : kShotSizes) {
        EXPECT_EQ(parse_shot_size(name_of(size)).value(), size);
        EXPECT_EQ(parse_shot_size(abbreviation_of(size)).value(), size);
    }
}

TEST(ShotSizeNames, TheCrewsOwnWordsAreRead) {
    EXPECT_EQ(parse_shot_size("MCU").value(), ShotSize::medium_close_up);
    EXPECT_EQ(parse_shot_size("Close Up").value(), ShotSize::close_up);
    EXPECT_EQ(parse_shot_size("mid shot").value(), ShotSize::medium);
    EXPECT_EQ(parse_shot_size("medium_close_up").value(), ShotSize::medium_close_up);
    EXPECT_EQ(parse_shot_size("LS").value(), ShotSize::full);
    EXPECT_EQ(parse_shot_size("long shot").value(), ShotSize::full);
    EXPECT_EQ(parse_shot_size("cowboy").value(), ShotSize::medium_long);
}

TEST(ShotSizeNames, AMistypedNameIsAnsweredWithTheNearest) {
    const auto wrong = parse_shot_size("medum close-up");
    ASSERT_FALSE(wrong);
    EXPECT_NE(wrong.error().message.find("medium close-up"), std::string::npos);
    EXPECT_FALSE(parse_shot_size(""));
    EXPECT_FALSE(parse_shot_size("shot"));
}

TEST(ShotSizeNames, WorkingsNameTheSize) {
    EXPECT_EQ(shot_size_working({0.707, 0.3256}).result, "medium close-up (MCU)");
    EXPECT_EQ(wanted_frame_height_working(ShotSize::close_up, Length::metres(1.7)).result,
              "0.397 m");
}

} // namespace
} // namespace throwline::optics
