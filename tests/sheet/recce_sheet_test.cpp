#include "sheet/recce_sheet.h"

#include "sheet/golden.h"
#include "sheet/layout_check.h"
#include "sheet/recce_marks.h"
#include "sheet/sheet_support.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::analysed;
using test::EvenMeasure;
using test::sheet_catalogue;

plan::TapeReading tape(const std::string& from, const std::string& to, double length_m) {
    return {from, to, Length::metres(length_m), {}};
}

/// A room of 6.1 by 4.3 m, four walls, both diagonals and a floor mark read from all corners.
plan::Survey four_corners() {
    plan::Survey survey;
    survey.corners = {"A", "B", "C", "D"};
    survey.readings = {tape("A", "B", 6.102), tape("B", "C", 4.279), tape("C", "D", 6.108),
                       tape("D", "A", 4.252), tape("A", "C", 7.477), tape("B", "D", 7.421),
                       tape("M", "A", 3.668), tape("M", "B", 3.756), tape("M", "C", 3.811),
                       tape("M", "D", 3.660)};
    survey.points = {{"M", false}};
    survey.heights = {{"", Length::metres(2.8)}};
    survey.notes = {{plan::SiteNoteKind::noise, "fridge behind A-B"}};
    return survey;
}

plan::Plan surveyed_plan(plan::Survey survey) {
    plan::Plan plan = test::small_plan();
    plan.survey = std::move(survey);
    return plan;
}

Result<Drawing> recce_of(const plan::Plan& plan, const TextMeasure& measure,
                         const std::string& paper = "A3") {
    const checks::Analysis analysis = analysed(plan);
    SheetOptions options;
    options.paper = paper;
    options.file_hash = "0123abcd";
    options.sheet_name = "Recce";
    return recce_sheet({analysis, sheet_catalogue(), measure}, options);
}

std::vector<Text> texts_of(const Drawing& drawing) {
    std::vector<Text> texts;
    for (const Layer& layer : drawing.layers) {
        for (const Mark& mark : layer.marks) {
            if (const auto* text = std::get_if<Text>(&mark)) {
                texts.push_back(*text);
            }
        }
    }
    return texts;
}

bool says(const Drawing& drawing, const std::string& words) {
    const auto texts = texts_of(drawing);
    return std::any_of(texts.begin(), texts.end(), [&](const Text& text) {
        return text.text.find(words) != std::string::npos;
    });
}

TEST(RecceSheet, EveryReadingStandsBesideItsLine) {
    const auto drawing = recce_of(surveyed_plan(four_corners()), EvenMeasure{});
    ASSERT_TRUE(drawing) << drawing.error().message;
    for (const plan::TapeReading& reading : four_corners().readings) {
        EXPECT_TRUE(says(*drawing, read_text(reading.length.m(), UnitSystem::metric) + " ("))
            << reading.from << reading.to;
    }
    for (const char* name : {"A", "B", "C", "D", "M"}) {
        EXPECT_TRUE(says(*drawing, name));
    }
    EXPECT_TRUE(says(*drawing, "fridge behind A-B"));
}

TEST(RecceSheet, AWrongReadingIsVermilionWithWhatItShouldHaveBeen) {
    plan::Survey survey = four_corners();
    survey.readings[4].length = Length::metres(7.577);
    const auto drawing = recce_of(surveyed_plan(survey), EvenMeasure{});
    ASSERT_TRUE(drawing) << drawing.error().message;
    const auto texts = texts_of(*drawing);
    const auto wrong = std::find_if(texts.begin(), texts.end(), [](const Text& text) {
        return text.text.rfind("7.577 wrong? 7.4", 0) == 0;
    });
    ASSERT_NE(wrong, texts.end());
    EXPECT_EQ(wrong->ink, Ink::error);
    EXPECT_TRUE(says(*drawing, "A-C: wrong"));
}

TEST(RecceSheet, BelievedSquaresHaveASign) {
    plan::Survey survey = four_corners();
    const auto signs_on = [](const Drawing& drawing) {
        std::size_t signs = 0;
        for (const Layer& layer : drawing.layers) {
            for (const Mark& mark : layer.marks) {
                const auto* path = std::get_if<Path>(&mark);
                signs += path != nullptr && layer.name == "findings" && !path->closed
                                 && path->points.size() == 3
                             ? 1U
                             : 0U;
            }
        }
        return signs;
    };
    EXPECT_EQ(signs_on(*recce_of(surveyed_plan(survey), EvenMeasure{})), 0U);
    survey.square_corners = {"A", "C"};
    const auto drawing = recce_of(surveyed_plan(survey), EvenMeasure{});
    ASSERT_TRUE(drawing);
    EXPECT_EQ(signs_on(*drawing), 2U);
    EXPECT_TRUE(says(*drawing, "believed square"));
}

TEST(ErrorEllipse, HasItsAxesTimesTheFactor) {
    survey::SurveyedPoint point;
    point.at = {2.0, 1.0};
    point.error.semi_major = 0.004;
    point.error.semi_minor = 0.002;
    point.error.major_angle_rad = 0.5;
    double longest_m = 0.0;
    double shortest_m = 1e9;
    for (const Vec2& corner : error_ellipse(point, SurveyAxes{}, 100.0)) {
        const double away_m = (corner - point.at).norm();
        longest_m = std::max(longest_m, away_m);
        shortest_m = std::min(shortest_m, away_m);
    }
    EXPECT_NEAR(longest_m, 0.4, 1e-9);
    EXPECT_NEAR(shortest_m, 0.2, 1e-9);
}

TEST(EllipseFactor, IsRoundAndKeepsTheLargestSmall) {
    survey::RecceResult result;
    for (const double semi_major : {0.0003, 0.002, 0.011, 0.3}) {
        survey::SurveyedPoint point;
        point.error.semi_major = semi_major;
        result.points = {point};
        const double factor = ellipse_factor(result, 20.0);
        const double drawn_mm = factor * semi_major * 20.0;
        EXPECT_LE(drawn_mm, 7.0 + 1e-9);
        EXPECT_GT(drawn_mm, 2.7);
    }
    result.points.clear();
    EXPECT_EQ(ellipse_factor(result, 20.0), 0.0);
}

TEST(SurveyAxes, LieWithTheRoomTheyWereReadIn) {
    const auto result = survey::surveyed(four_corners());
    ASSERT_TRUE(result);
    plan::Plan plan = test::small_plan();
    EXPECT_FALSE(axes_on(plan.room, *result).fits_plan);
    plan.room.outline.clear();
    for (std::size_t i = 0; i < result->corner_count(); ++i) {
        plan.room.outline.push_back(Vec2{3.0, 1.0} + rotated(result->points[i].at, 0.7));
    }
    const SurveyAxes axes = axes_on(plan.room, *result);
    EXPECT_TRUE(axes.fits_plan);
    EXPECT_NEAR((axes.on_plan(result->points[2].at) - plan.room.outline[2]).norm(), 0.0, 1e-9);
}

TEST(RecceSheet, AnUnfinishedSurveySaysWhatIsMissing) {
    plan::Survey survey = four_corners();
    survey.readings.resize(4);
    survey.points.clear();
    const auto drawing = recce_of(surveyed_plan(survey), EvenMeasure{});
    ASSERT_TRUE(drawing) << drawing.error().message;
    EXPECT_TRUE(says(*drawing, "The survey is not finished"));
}

TEST(RecceSheet, APlanWithoutASurveyHasNone) {
    const checks::Analysis analysis = analysed(test::small_plan());
    const EvenMeasure measure;
    const auto jobs = recce_jobs({analysis, sheet_catalogue(), measure}, {});
    ASSERT_TRUE(jobs);
    EXPECT_TRUE(jobs->empty());
}

TEST(RecceSheet, LetteringIsSound) {
    const TextMeasure& measure = test::session().measure();
    plan::Plan plan = surveyed_plan(four_corners());
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::imperial}) {
        plan.units = units;
        const auto drawing = recce_of(plan, measure);
        ASSERT_TRUE(drawing) << drawing.error().message;
        const LayoutFaults faults = layout_faults(*drawing, measure);
        EXPECT_TRUE(faults.overlapping.empty())
            << faults.overlapping.front().first << " and " << faults.overlapping.front().second;
        EXPECT_TRUE(faults.cut.empty()) << faults.cut.front();
    }
}

TEST(RecceSheet, SmallSurveyIsAsItWas) {
    const auto drawing = recce_of(surveyed_plan(four_corners()), EvenMeasure{}, "A4");
    ASSERT_TRUE(drawing) << drawing.error().message;
    test::expect_golden(*drawing, "recce_small");
}

} // namespace
} // namespace throwline::sheet
