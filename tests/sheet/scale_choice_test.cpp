#include "sheet/scale_choice.h"

#include "sheet/sheet_support.h"

#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::sheet_catalogue;

ScaleQuestion question(Length width, Length depth, const std::string& paper, UnitSystem system) {
    static const catalogue::Catalogue tables = sheet_catalogue();
    ScaleQuestion asked;
    asked.width = width;
    asked.depth = depth;
    asked.paper = *tables.paper(paper);
    asked.system = system;
    return asked;
}

TEST(ScaleChoice, StudioOnA3NeedsOneToFifty) {
    ScaleQuestion asked =
        question(Length::metres(12.2), Length::metres(9.1), "A3", UnitSystem::metric);
    asked.strip = Length::millimetres(45);
    asked.orientation = Orientation::landscape;
    const auto choice = choose_scale(asked, sheet_catalogue());
    ASSERT_TRUE(choice) << choice.error().message;
    EXPECT_EQ(choice->scale.name, "1:50");
    EXPECT_NEAR(choice->needed_ratio, 39.224, 5e-4);
    EXPECT_DOUBLE_EQ(choice->usable_width_mm, 400.0);
    EXPECT_DOUBLE_EQ(choice->usable_height_mm, 232.0);
    EXPECT_DOUBLE_EQ(choice->drawn_width_mm, 244.0);
    EXPECT_DOUBLE_EQ(choice->drawn_height_mm, 182.0);
}

TEST(ScaleChoice, EvenTheExtraScaleDoesNotFitASmallRoomOnA4) {
    ScaleQuestion asked =
        question(Length::metres(6.1), Length::metres(4.3), "A4", UnitSystem::metric);
    asked.strip = Length::millimetres(30);
    asked.with_extras = true;
    asked.orientation = Orientation::landscape;
    const auto choice = choose_scale(asked, sheet_catalogue());
    ASSERT_TRUE(choice);
    EXPECT_NEAR(choice->needed_ratio, 26.875, 1e-9);
    EXPECT_EQ(choice->scale.name, "1:50");
    ASSERT_FALSE(choice->larger.empty());
    EXPECT_EQ(choice->larger.front().scale.name, "1:25");
    EXPECT_EQ(choice->larger.front().paper, "A3");
}

TEST(ScaleChoice, ExtrasAreOfferedOnlyOnRequest) {
    ScaleQuestion asked =
        question(Length::metres(6.0), Length::metres(4.0), "A4", UnitSystem::metric);
    EXPECT_EQ(choose_scale(asked, sheet_catalogue())->scale.name, "1:50");
    asked.with_extras = true;
    EXPECT_EQ(choose_scale(asked, sheet_catalogue())->scale.name, "1:25");
}

TEST(ScaleChoice, InchScalesOnOfficePaper) {
    ScaleQuestion asked =
        question(Length::feet(40), Length::feet(30), "letter", UnitSystem::imperial);
    asked.margin = Length::inches(0.5);
    asked.strip = Length::inches(1.5);
    const auto letter = choose_scale(asked, sheet_catalogue());
    ASSERT_TRUE(letter);
    EXPECT_NEAR(letter->needed_ratio, 60.0, 1e-9);
    EXPECT_EQ(letter->scale.ratio, 64.0);
    EXPECT_EQ(letter->orientation, Orientation::landscape);

    asked.paper = *sheet_catalogue().paper("tabloid");
    asked.strip = Length::inches(1);
    const auto tabloid = choose_scale(asked, sheet_catalogue());
    ASSERT_TRUE(tabloid);
    EXPECT_NEAR(tabloid->needed_ratio, 40.0, 1e-9);
    EXPECT_EQ(tabloid->scale.ratio, 48.0);
}

TEST(ScaleChoice, ExactFitFits) {
    ScaleQuestion asked =
        question(Length::feet(40), Length::feet(30), "letter", UnitSystem::imperial);
    asked.margin = Length{};
    asked.paper = {"own", catalogue::PaperFamily::us_office, Length::inches(10),
                   Length::inches(14.5), "test"};
    asked.orientation = Orientation::portrait;
    const auto choice = choose_scale(asked, sheet_catalogue());
    ASSERT_TRUE(choice);
    EXPECT_NEAR(choice->needed_ratio, 48.0, 1e-9);
    EXPECT_EQ(choice->scale.ratio, 48.0);
}

TEST(ScaleChoice, TurnsTheSheetWhenThatGivesALargerScale) {
    const auto choice =
        choose_scale(question(Length::metres(5.5), Length::metres(8.2), "A4", UnitSystem::metric),
                     sheet_catalogue());
    ASSERT_TRUE(choice);
    EXPECT_EQ(choice->scale.name, "1:50");
    EXPECT_EQ(choice->orientation, Orientation::portrait);
}

TEST(ScaleChoice, LargerScalesNameThePaperTheyNeed) {
    const auto choice =
        choose_scale(question(Length::metres(12), Length::metres(9), "A3", UnitSystem::metric),
                     sheet_catalogue());
    ASSERT_TRUE(choice);
    EXPECT_EQ(choice->scale.name, "1:50");
    ASSERT_EQ(choice->larger.size(), 2U);
    EXPECT_EQ(choice->larger[0].scale.name, "1:20");
    EXPECT_EQ(choice->larger[0].paper, "A1");
    EXPECT_EQ(choice->larger[1].scale.name, "1:10");
    EXPECT_EQ(choice->larger[1].paper, "");
    ASSERT_TRUE(choice->smaller);
    EXPECT_EQ(choice->smaller->scale.name, "1:100");
}

TEST(ScaleChoice, AskedForScaleThatDoesNotFitNamesTheOneThatDoes) {
    const auto choice =
        check_scale(question(Length::metres(12), Length::metres(9), "A3", UnitSystem::metric),
                    "1:20", sheet_catalogue());
    ASSERT_FALSE(choice);
    EXPECT_NE(choice.error().message.find("1:50"), std::string::npos) << choice.error().message;
}

TEST(ScaleChoice, UnknownScaleNamesTheNearest) {
    const auto choice =
        check_scale(question(Length::metres(12), Length::metres(9), "A3", UnitSystem::metric),
                    "1:5O", sheet_catalogue());
    ASSERT_FALSE(choice);
    EXPECT_NE(choice.error().message.find("nearest"), std::string::npos) << choice.error().message;
}

TEST(ScaleChoice, RefusesWhatCannotBeDrawn) {
    EXPECT_FALSE(choose_scale(question(Length{}, Length::metres(9), "A3", UnitSystem::metric),
                              sheet_catalogue()));
    ScaleQuestion asked = question(Length::metres(3), Length::metres(3), "A4", UnitSystem::metric);
    asked.margin = Length::millimetres(150);
    EXPECT_FALSE(choose_scale(asked, sheet_catalogue()));
    EXPECT_FALSE(
        choose_scale(question(Length::metres(3e6), Length::metres(3), "A4", UnitSystem::metric),
                     sheet_catalogue()));
}

} // namespace
} // namespace throwline::sheet
