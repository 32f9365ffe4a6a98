#include "checks/wording.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace throwline::checks {

TEST(Wording, KindIsSaidOnce) {
    EXPECT_EQ(with_kind("camera", "camera 1"), "camera 1");
    EXPECT_EQ(with_kind("camera", "Camera B"), "Camera B");
    EXPECT_EQ(with_kind("lamp", "4"), "lamp 4");
    EXPECT_EQ(said(plan::Id<plan::Shot>{"1A"}), "shot 1A");
    EXPECT_EQ(said(plan::Id<plan::Circuit>{"C1"}), "circuit C1");
}

TEST(Wording, PartsAreNamedWithTheirOwner) {
    EXPECT_EQ(said_part(stage::Part::stand, {stage::OwnerKind::lamp, "4"}), "the stand of lamp 4");
    EXPECT_EQ(said_part(stage::Part::wall, {stage::OwnerKind::room, "wall 2"}), "wall 2");
}

TEST(Wording, ABeatIsNamedOnlyWhereAShotHasSeveral) {
    plan::Shot shot;
    shot.id = {"2A"};
    shot.beats = {{"1"}};
    EXPECT_EQ(in_shot(shot, {"1"}), "in shot 2A");
    shot.beats.push_back({"2"});
    EXPECT_EQ(in_shot(shot, {"2"}), "in shot 2A at beat 2");
}

TEST(Wording, SharesHaveTheDigitsThatMatter) {
    EXPECT_EQ(share_text(0.0), "0 %");
    EXPECT_EQ(share_text(0.00005), "under 0.01 %");
    EXPECT_EQ(share_text(0.0025), "0.25 %");
    EXPECT_EQ(share_text(0.0344), "3.4 %");
    EXPECT_EQ(share_text(0.0996), "10 %");
    EXPECT_EQ(share_text(0.3749), "37 %");
    EXPECT_EQ(share_text(1.0), "100 %");
}

TEST(Wording, LensFiguresDropAnEmptyDecimal) {
    EXPECT_EQ(focal_text(Length::millimetres(28.0)), "28 mm");
    EXPECT_EQ(focal_text(Length::millimetres(8.46)), "8.5 mm");
    EXPECT_EQ(stop_text(2.8), "T2.8");
    EXPECT_EQ(stop_text(11.0), "T11");
    EXPECT_EQ(stops_text(-1.25), "1.25 stops");
    EXPECT_EQ(stops_text(1.0), "1 stop");
    EXPECT_EQ(angle_text(Angle::degrees(23.575)), "24°");
    EXPECT_EQ(angle_text(Angle::degrees(3.43)), "3.4°");
}

TEST(Wording, ListsEndWithAnd) {
    EXPECT_EQ(listed({}), "");
    const std::vector<std::string> parts{"a", "b", "c"};
    EXPECT_EQ(listed(std::span{parts}.first(1)), "a");
    EXPECT_EQ(listed(std::span{parts}.first(2)), "a and b");
    EXPECT_EQ(listed(parts), "a, b and c");
    EXPECT_EQ(capitalised("lamp 4"), "Lamp 4");
    EXPECT_EQ(counted(1, "lamp"), "1 lamp");
    EXPECT_EQ(counted(3, "lamp"), "3 lamps");
}

TEST(Wording, LengthsFollowThePlansUnits) {
    const Length width = Length::feet(6.0);
    const Length height = Length::metres(1.016);
    EXPECT_EQ(size_text(width, height, UnitSystem::metric), "1.83 m x 1.02 m");
    EXPECT_EQ(size_text(width, height, UnitSystem::imperial), "6'-0\" x 3'-4\"");
}

RC_GTEST_PROP(Wording, EveryPositiveShareShows, ()) {
    const double share = *rc::gen::inRange(1, 1'000'000) / 1e6;
    const std::string text = share_text(share);
    RC_ASSERT(text != "0 %");
    RC_ASSERT(text.ends_with(" %"));
}

} // namespace throwline::checks
