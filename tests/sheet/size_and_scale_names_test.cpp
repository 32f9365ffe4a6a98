#include "sheet/paper_size.h"
#include "sheet/scale_choice.h"
#include "sheet/scale_name.h"
#include "sheet/sheet_support.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::sheet_catalogue;

TEST(PaperNamed, KnowsEveryPaperOfTheCatalogue) {
    for (const char* name :
         {"A4", "A3", "A2", "A1", "A0", "letter", "legal", "tabloid", "arch A", "arch B", "arch C",
          "arch D", "arch E", "ansi A", "ansi B", "ansi C", "ansi D", "ansi E"}) {
        EXPECT_TRUE(paper_named(name, sheet_catalogue())) << name;
    }
}

TEST(PaperNamed, ReadsAnySizeInAnyUnit) {
    struct Case {
        const char* typed;
        double shorter_mm;
        double longer_mm;
    };
    for (const Case& asked : {Case{"500x700mm", 500.0, 700.0}, Case{"700 x 500 mm", 500.0, 700.0},
                              Case{"24in x 36in", 609.6, 914.4}, Case{"24x36in", 609.6, 914.4},
                              Case{"50cm×0.7m", 500.0, 700.0}, Case{"2ft x 36in", 609.6, 914.4},
                              Case{"8 1/2\" x 11\"", 215.9, 279.4}}) {
        const auto paper = paper_named(asked.typed, sheet_catalogue());
        ASSERT_TRUE(paper) << paper.error().message;
        EXPECT_NEAR(paper->width.mm(), asked.shorter_mm, 1e-9) << asked.typed;
        EXPECT_NEAR(paper->height.mm(), asked.longer_mm, 1e-9) << asked.typed;
    }
}

TEST(PaperNamed, RefusesWhatIsNoPaper) {
    EXPECT_NE(paper_named("tabliod", sheet_catalogue()).error().message.find("\"tabloid\""),
              std::string::npos);
    for (const char* typed : {"500x700", "0x700mm", "-3x5mm", "500x700furlongs", "x", "5x",
                              "9m x 9m", "1e400 x 3mm", "5x5x5mm", ""}) {
        const auto paper = paper_named(typed, sheet_catalogue());
        ASSERT_FALSE(paper) << typed;
        EXPECT_FALSE(paper.error().message.empty());
    }
}

TEST(PaperNamed, SheetTooSmallForATitleBlockIsSaid) {
    const checks::Analysis analysis = test::analysed(test::small_plan());
    SheetOptions options;
    options.paper = "60x90mm";
    const auto drawing = test::floor_plan_of(analysis, options, test::EvenMeasure{});
    ASSERT_FALSE(drawing);
    EXPECT_NE(drawing.error().message.find("too small to hold a title block"), std::string::npos)
        << drawing.error().message;
    options.paper = "500x700mm";
    EXPECT_TRUE(test::floor_plan_of(analysis, options, test::EvenMeasure{}));
}

TEST(ScaleNamed, TakesOwnRatios) {
    struct Case {
        const char* typed;
        double ratio;
        const char* name;
    };
    for (const Case& asked :
         {Case{"1:37", 37.0, "1:37"}, Case{" 1 : 37.5 ", 37.5, "1:37.5"},
          Case{"2:75", 37.5, "2:75"}, Case{"5/8 in = 1 ft", 19.2, "5/8 in = 1 ft"},
          Case{"5/8\" = 1'", 19.2, "5/8\" = 1'"}, Case{"3 cm = 1 m", 100.0 / 3.0, "3 cm = 1 m"}}) {
        const auto scale = scale_named(asked.typed, sheet_catalogue());
        ASSERT_TRUE(scale) << scale.error().message;
        EXPECT_NEAR(scale->ratio, asked.ratio, 1e-12 * asked.ratio) << asked.typed;
        EXPECT_EQ(scale->name, asked.name);
        EXPECT_FALSE(scale->standard) << asked.typed;
    }
}

TEST(ScaleNamed, KnowsAStandardScaleHoweverItIsWritten) {
    for (const auto& [typed, name] :
         {std::pair{"1:50", "1:50"}, std::pair{"2:100", "1:50"}, std::pair{"1 : 20", "1:20"},
          std::pair{"1/4in=1ft", "1/4 in = 1 ft"}, std::pair{"0.25\" = 1'", "1/4 in = 1 ft"},
          std::pair{"2 cm = 1 m", "1:50"}}) {
        const auto scale = scale_named(typed, sheet_catalogue());
        ASSERT_TRUE(scale) << typed;
        EXPECT_EQ(scale->name, name);
        EXPECT_TRUE(scale->standard) << typed;
    }
}

TEST(ScaleNamed, RefusesWhatIsNoScale) {
    for (const char* typed : {"", "1:0", "0:5", "1:-3", "50", "1:fifty", "1/4 inch", "= 1 ft",
                              "1 in =", "1:1e9", "1000:1", "1:nan", "1:inf"}) {
        const auto scale = scale_named(typed, sheet_catalogue());
        ASSERT_FALSE(scale) << typed;
        EXPECT_NE(scale.error().message.find("scale"), std::string::npos);
    }
}

ScaleQuestion room_on(const std::string& paper) {
    ScaleQuestion question;
    question.width = Length::metres(6);
    question.depth = Length::metres(4);
    question.paper = *sheet_catalogue().paper(paper);
    return question;
}

TEST(ScaleChoice, OwnScaleIsCheckedLikeAStandardOne) {
    const auto choice = check_scale(room_on("A4"), "1:37", sheet_catalogue());
    ASSERT_TRUE(choice) << choice.error().message;
    EXPECT_NEAR(choice->drawn_width_mm, 6000.0 / 37.0, 1e-9);
    EXPECT_FALSE(choice->scale.standard);
    ASSERT_FALSE(choice->larger.empty());
    EXPECT_EQ(choice->larger.front().scale.name, "1:20");
    ASSERT_TRUE(choice->smaller);
    EXPECT_EQ(choice->smaller->scale.name, "1:50");
}

TEST(ScaleChoice, OwnScaleThatDoesNotFitNamesTheStandardOneThatDoes) {
    const auto choice = check_scale(room_on("A4"), "1:17", sheet_catalogue());
    ASSERT_FALSE(choice);
    EXPECT_NE(choice.error().message.find("1:50"), std::string::npos) << choice.error().message;
}

bool says(const Drawing& drawing, const std::string& words) {
    return as_text(drawing).find(words) != std::string::npos;
}

TEST(TitleBlock, FlagsAScaleThatIsNotStandard) {
    const checks::Analysis analysis = test::analysed(test::small_plan());
    SheetOptions options;
    options.scale = "1:37";
    const auto own = test::floor_plan_of(analysis, options, test::EvenMeasure{});
    ASSERT_TRUE(own) << own.error().message;
    EXPECT_TRUE(says(*own, "Scale 1:37\n"));
    EXPECT_TRUE(says(*own, "Not a standard scale"));
    EXPECT_TRUE(says(*own, "2026-05-04, Room 4"));
    options.scale = "1:50";
    const auto standard = test::floor_plan_of(analysis, options, test::EvenMeasure{});
    ASSERT_TRUE(standard);
    EXPECT_FALSE(says(*standard, "Not a standard scale"));
}

TEST(LargerScales, TellThePaperAndTheTilesTheyTake) {
    const checks::Analysis analysis = test::analysed(test::small_plan());
    SheetOptions options;
    options.paper = "A4";
    const auto drawing = test::floor_plan_of(analysis, options, test::EvenMeasure{});
    ASSERT_TRUE(drawing);
    ASSERT_FALSE(drawing->larger.empty());
    const LargerScale& next = drawing->larger.front();
    // What is told must be so.
    options.scale = next.scale;
    EXPECT_FALSE(test::floor_plan_of(analysis, options, test::EvenMeasure{}));
    options.tile_overlap = Length::millimetres(10);
    const auto tiled = test::floor_plan_of(analysis, options, test::EvenMeasure{});
    ASSERT_TRUE(tiled && tiled->tiles);
    EXPECT_EQ(tiled->tiles->columns * tiled->tiles->rows, next.tiles);
    options.tile_overlap.reset();
    options.paper = next.paper.substr(0, 2);
    const auto on_paper = test::floor_plan_of(analysis, options, test::EvenMeasure{});
    ASSERT_TRUE(on_paper) << next.paper;
    EXPECT_EQ(on_paper->paper, next.paper);
}

} // namespace
} // namespace throwline::sheet
