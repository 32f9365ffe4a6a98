#include "optics/composition.h"
#include "optics/hood.h"
#include "optics/safe_areas.h"

#include <cmath>
#include <gtest/gtest.h>

namespace throwline::optics {
namespace {

TEST(Composition, HeadroomIsTheFreeShareAboveTheCrown) {
    EXPECT_NEAR(headroom_share(0.8), 0.1, 1e-12);
    EXPECT_LT(headroom_share(1.1), 0.0);
}

TEST(Composition, WantedFramesKeepTheUsualHeadroom) {
    for (const ShotSize size : kShotSizes) {
        const ShareRange usual = usual_headroom(size);
        const double headroom = wanted_frame(size).headroom_share;
        EXPECT_GE(headroom, usual.least) << name_of(size);
        EXPECT_LE(headroom, usual.most) << name_of(size);
    }
}

TEST(Composition, LeadRoomComparesTheSidesOfTheNose) {
    EXPECT_NEAR(*lead_room(0.0, LookSide::right), 1.0, 1e-12);
    // Nose two fifths from the left edge, looking right: 3 / 2.
    EXPECT_NEAR(*lead_room(-0.2, LookSide::right), kUsualLeadRoom, 1e-12);
    EXPECT_NEAR(*lead_room(0.2, LookSide::left), kUsualLeadRoom, 1e-12);
    EXPECT_FALSE(lead_room(-1.0, LookSide::right));
}

TEST(Composition, ThirdsHaveFourCrossings) {
    EXPECT_NEAR(distance_from_thirds({-kThirdLine, kThirdLine}), 0.0, 1e-15);
    EXPECT_NEAR(distance_from_thirds({kThirdLine, -kThirdLine}), 0.0, 1e-15);
    EXPECT_NEAR(distance_from_thirds({0.0, 0.0}), std::sqrt(2.0) / 3.0, 1e-12);
}

TEST(SafeAreas, TitlesLieInsideTheAction) {
    EXPECT_TRUE(in_safe_area({0.92, 0.0}, kActionSafeShare));
    EXPECT_FALSE(in_safe_area({0.92, 0.0}, kTitleSafeShare));
    EXPECT_FALSE(in_safe_area({0.0, -0.94}, kActionSafeShare));
}

TEST(Hood, ALongerHoodShadesEarlier) {
    const Hood shallow{Length::millimetres(60), Length::millimetres(40), Length::millimetres(40)};
    const Hood deep{Length::millimetres(60), Length::millimetres(120), Length::millimetres(40)};
    EXPECT_LT(hood_shade(deep).begins, hood_shade(shallow).begins);
    EXPECT_LT(hood_shade(deep).complete, hood_shade(shallow).complete);
}

TEST(Hood, WithoutLengthNothingIsShaded) {
    const Hood none{Length::millimetres(40), Length{}, Length::millimetres(40)};
    EXPECT_NEAR(hood_shade(none).begins.deg(), 90, 1e-12);
    EXPECT_NEAR(hood_shade(none).complete.deg(), 90, 1e-12);
    const Hood narrow{Length::millimetres(30), Length::millimetres(50), Length::millimetres(40)};
    EXPECT_EQ(hood_shade(narrow).begins.rad(), 0.0);
}

} // namespace
} // namespace throwline::optics
