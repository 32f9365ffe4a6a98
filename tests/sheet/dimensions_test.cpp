#include "sheet/dimensions.h"

#include "sheet/sheet_support.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>
#include <numeric>
#include <rapidcheck/gtest.h>

namespace throwline::sheet {
namespace {

std::int64_t sum_of(const std::vector<std::int64_t>& steps) {
    return std::accumulate(steps.begin(), steps.end(), std::int64_t{0});
}

RC_GTEST_PROP(SpreadSteps, AddUpToTheRoundedWhole, ()) {
    const auto micrometres = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 20'000'000));
    const auto units = *rc::gen::element(UnitSystem::metric, UnitSystem::imperial);
    std::vector<Length> parts;
    Length whole;
    for (const int part : micrometres) {
        parts.push_back(Length::metres(part * 1e-6));
        whole += parts.back();
    }
    const std::vector<std::int64_t> steps = spread_steps(parts, units);
    RC_ASSERT(sum_of(steps) == steps_of(whole, units));
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const double exact = parts[i] / tape_step(units).step;
        RC_ASSERT(std::abs(static_cast<double>(steps[i]) - exact) < 1.0 + 1e-6);
    }
}

TEST(SpreadSteps, GiveTheMissingStepToThePartNearestIt) {
    // 1.002 + 1.004 + 1.0035 m: 3.0095 m is 602 steps of 5 mm, three parts rounded down are 600.
    const std::vector<Length> parts{Length::metres(1.002), Length::metres(1.004),
                                    Length::metres(1.0035)};
    EXPECT_EQ(spread_steps(parts, UnitSystem::metric), (std::vector<std::int64_t>{200, 201, 201}));
}

TEST(SpreadSteps, LeaveWholeStepsAlone) {
    const std::vector<Length> flats(7, Length::feet(4));
    EXPECT_EQ(spread_steps(flats, UnitSystem::imperial), std::vector<std::int64_t>(7, 192));
}

TEST(TapeText, ReadsAsTheTapeDoes) {
    EXPECT_EQ(tape_text(Length::metres(1.2), UnitSystem::metric), "1.20");
    EXPECT_EQ(tape_text(Length::metres(1.2049), UnitSystem::metric), "1.205");
    EXPECT_EQ(tape_text(Length::metres(2.44), UnitSystem::imperial), "8'-0\"");
    EXPECT_EQ(tape_text(Length::inches(74.3), UnitSystem::imperial), "6'-2 1/4\"");
    EXPECT_EQ(tape_text(Length::inches(11.97), UnitSystem::imperial), "1'-0\"");
}

/// A board at 1:50 on a sheet of 300 by 200 mm.
class DimensionRowsOnPaper : public testing::Test {
  protected:
    DimensionRowsOnPaper() {
        frame_.origin_mm = {40.0, 150.0};
        frame_.mm_per_m = 20.0;
    }

    DimensionRow chain(std::vector<double> stops_m, double turn_rad) const {
        DimensionRow row;
        row.along = unit_at(turn_rad);
        row.aside = -turned_left(row.along);
        row.stops_m = std::move(stops_m);
        row.feet_m.assign(row.stops_m.size(), 0.0);
        row.aside_mm = kFirstRow_mm;
        row.words = chain_words(row.stops_m, UnitSystem::metric);
        return row;
    }

    void lay_down(const DimensionRow& row) {
        DimensionRows rows{board_};
        rows.add_with_overall(row, UnitSystem::metric);
        rows.lay_down();
    }

    template <class Kind>
    std::vector<Kind> marks() const {
        std::vector<Kind> found;
        for (const Mark& mark : board_.layers[static_cast<std::size_t>(PlanLayer::lettering)]) {
            if (const auto* kind = std::get_if<Kind>(&mark)) {
                found.push_back(*kind);
            }
        }
        return found;
    }

    PlanFrame frame_;
    test::EvenMeasure measure_;
    LabelField field_{Box{0.0, 0.0, 300.0, 200.0}, measure_};
    Board board_{frame_, field_};
};

TEST_F(DimensionRowsOnPaper, StandOutsideWithTheOverallBeyond) {
    lay_down(chain({0.0, 2.0, 3.2, 6.0}, 0.0));
    std::vector<double> rows_mm;
    for (const Path& path : marks<Path>()) {
        const Vec2 way = path.points.back() - path.points.front();
        if (path.points.size() == 2 && way.y() == 0.0) {
            EXPECT_NEAR(way.x(), 120.0, 1e-9);
            rows_mm.push_back(path.points.front().y());
        }
    }
    EXPECT_EQ(rows_mm, (std::vector<double>{157.0, 164.5}));
}

TEST_F(DimensionRowsOnPaper, TellEachStretchAndTheWhole) {
    lay_down(chain({0.0, 2.0, 3.2, 6.0}, 0.0));
    std::vector<std::string> words;
    for (const Text& text : marks<Text>()) {
        words.push_back(text.text);
    }
    EXPECT_EQ(words, (std::vector<std::string>{"2.00", "1.20", "2.80", "6.00"}));
}

TEST_F(DimensionRowsOnPaper, WordsStandAboveTheirLine) {
    lay_down(chain({0.0, 3.0}, 0.0));
    const auto texts = marks<Text>();
    ASSERT_EQ(texts.size(), 1U);
    EXPECT_NEAR(texts[0].at.x(), 70.0, 1e-9);
    EXPECT_LT(texts[0].at.y(), 157.0);
    EXPECT_GT(texts[0].at.y(), 157.0 - kLetter_mm);
}

class TurnedRows : public DimensionRowsOnPaper, public testing::WithParamInterface<int> {};

TEST_P(TurnedRows, AreReadFromTheFootOrTheRight) {
    frame_.origin_mm = {150.0, 100.0};
    const double turn_rad = GetParam() * std::numbers::pi / 180.0;
    lay_down(chain({0.0, 3.0}, turn_rad));
    const auto texts = marks<Text>();
    ASSERT_EQ(texts.size(), 1U);
    EXPECT_GT(texts[0].turn_rad, -std::numbers::pi / 2.0);
    EXPECT_LE(texts[0].turn_rad, std::numbers::pi / 2.0 + 1e-5);
    EXPECT_NEAR(std::sin(texts[0].turn_rad - turn_rad), 0.0, 1e-9);
}

INSTANTIATE_TEST_SUITE_P(EveryFifteenDegrees, TurnedRows, testing::Range(0, 360, 15));

TEST_F(DimensionRowsOnPaper, ShortStretchesKeepTheirWordsApart) {
    lay_down(chain({0.0, 0.1, 0.2, 0.3, 0.4, 0.5, 4.0}, 0.0));
    const auto texts = marks<Text>();
    ASSERT_EQ(texts.size(), 7U);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        for (std::size_t k = i + 1; k < texts.size(); ++k) {
            const double width_mm = (measure_.width_mm(texts[i].text, kLetter_mm, false)
                                     + measure_.width_mm(texts[k].text, kLetter_mm, false))
                                    / 2.0;
            const Vec2 apart = (texts[i].at - texts[k].at).cwiseAbs();
            EXPECT_TRUE(apart.x() >= width_mm || apart.y() >= kLetter_mm)
                << texts[i].text << " and " << texts[k].text;
        }
    }
}

TEST_F(DimensionRowsOnPaper, WordsKeepOffWhatMustNotBeHidden) {
    const Path block = outline({{60.0, 150.0}, {80.0, 150.0}, {80.0, 156.5}, {60.0, 156.5}},
                               no_pen(), solid(Ink::built));
    board_.add(PlanLayer::built, block, Crowd::never);
    lay_down(chain({0.0, 3.0}, 0.0));
    const auto texts = marks<Text>();
    ASSERT_EQ(texts.size(), 1U);
    const Box words{texts[0].at.x() - 4.0, texts[0].at.y() - kLetter_mm, 8.0, kLetter_mm};
    EXPECT_FALSE(words.overlaps({60.0, 150.0, 20.0, 6.5}));
}

} // namespace
} // namespace throwline::sheet
