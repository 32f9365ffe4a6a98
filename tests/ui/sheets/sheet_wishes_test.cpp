/// What is wanted on paper, kept from one time to the next.

#include "ui/sheets/sheet_wishes.h"

#include "ui/desk_case.h"

#include <QFile>
#include <QSettings>
#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

class WishesCase : public testing::Test {
  protected:
    QTemporaryDir folder;
    QSettings settings{folder.filePath(QStringLiteral("kept.conf")), QSettings::IniFormat};
};

SheetWishes unusual() {
    SheetWishes wishes;
    wishes.kinds = {"floor-plan", "lighting-plan", "lists"};
    wishes.paper = "A1";
    wishes.way = sheet::Orientation::portrait;
    wishes.scale = "1:20";
    wishes.tiles = true;
    wishes.ground = false;
    wishes.coverage = false;
    wishes.pools = false;
    wishes.findings = false;
    wishes.underlay = false;
    return wishes;
}

TEST_F(WishesCase, AreTheUsualOnesAtFirst) {
    EXPECT_EQ(kept_wishes(settings, UnitSystem::metric), SheetWishes{});
    EXPECT_EQ(kept_wishes(settings, UnitSystem::imperial).paper, "tabloid");
}

TEST_F(WishesCase, ComeBackAsTheyWere) {
    keep_wishes(settings, unusual(), UnitSystem::metric);
    settings.sync();
    const QSettings another{settings.fileName(), QSettings::IniFormat};
    EXPECT_EQ(kept_wishes(another, UnitSystem::metric), unusual());
}

TEST_F(WishesCase, KeepPaperAndScaleApartForPlansInFeet) {
    keep_wishes(settings, unusual(), UnitSystem::metric);
    SheetWishes feet = kept_wishes(settings, UnitSystem::imperial);
    EXPECT_EQ(feet.paper, "tabloid");
    EXPECT_EQ(feet.scale, "");
    EXPECT_EQ(feet.kinds, unusual().kinds);
    feet.scale = "1/4 in = 1 ft";
    keep_wishes(settings, feet, UnitSystem::imperial);
    EXPECT_EQ(kept_wishes(settings, UnitSystem::metric).scale, "1:20");
}

TEST_F(WishesCase, TakeNoKindForNoneTicked) {
    SheetWishes none;
    none.kinds.clear();
    keep_wishes(settings, none, UnitSystem::metric);
    EXPECT_TRUE(kept_wishes(settings, UnitSystem::metric).kinds.empty());
}

TEST_F(WishesCase, PassOverWhatIsNoWayRound) {
    settings.setValue(QStringLiteral("sheets/way"), QStringLiteral("upside down"));
    EXPECT_EQ(kept_wishes(settings, UnitSystem::metric).way, std::nullopt);
}

TEST(OptionsForWishes, CutTilesOnlyAtAScaleOfOnesOwn) {
    SheetWishes wishes;
    wishes.tiles = true;
    EXPECT_FALSE(options_for(wishes).tile_overlap);
    wishes.scale = "1:20";
    EXPECT_TRUE(options_for(wishes).tile_overlap);
}

TEST(OptionsForWishes, NameEachSheetByWhatItIs) {
    EXPECT_EQ(options_for({}).sheet_name, "");
}

} // namespace
} // namespace throwline::ui
