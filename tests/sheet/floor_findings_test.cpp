/// Numbers of findings on the floor of the screen.

#include "sheet/floor_drawing.h"
#include "sheet/furniture.h"
#include "sheet/sheet_support.h"

#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::EvenMeasure;

/// Findings of a full plan that are about no beat and no shot, so that all of them are shown.
checks::Analysis always_shown() {
    checks::Analysis analysis = test::analysed(test::full_plan());
    for (checks::Finding& finding : analysis.findings) {
        finding.beat = {};
        finding.shot = {};
    }
    return analysis;
}

std::size_t groups_in(const checks::Analysis& analysis) {
    std::vector<const checks::Finding*> all;
    for (const checks::Finding& finding : analysis.findings) {
        all.push_back(&finding);
    }
    return grouped(all).size();
}

/// Texts of the layer of findings on a floor of 400 x 300 mm.
std::vector<Text> numbers_on(const checks::Analysis& analysis, const std::optional<Box>& in_sight) {
    FloorQuestion question{*analysis.plan, test::sheet_catalogue(), {}, {}, 20.0};
    question.window = {-100.0, -250.0, 400.0, 300.0};
    question.in_sight = in_sight;
    question.analysis = &analysis;
    const auto drawing = floor_drawing(question, EvenMeasure{});
    std::vector<Text> texts;
    for (const Layer& layer : drawing->layers) {
        if (layer.name != "findings") {
            continue;
        }
        for (const Mark& mark : layer.marks) {
            if (const auto* text = std::get_if<Text>(&mark)) {
                texts.push_back(*text);
            }
        }
    }
    return texts;
}

TEST(FloorFindings, ManyAtOnePlaceAreTheWorstAndACount) {
    checks::Analysis analysis = always_shown();
    for (checks::Finding& finding : analysis.findings) {
        finding.at = {4.0, 3.0};
    }
    const std::size_t groups = groups_in(analysis);
    ASSERT_GT(groups, 4U);
    const std::vector<Text> texts = numbers_on(analysis, {});
    ASSERT_EQ(texts.size(), 2U);
    EXPECT_EQ(texts[0].text, "1");
    EXPECT_EQ(texts[1].text, "+" + std::to_string(groups - 1));
    EXPECT_GT(texts[1].at.x(), texts[0].at.x());
}

TEST(FloorFindings, AFewAtOnePlaceAreAllNumbered) {
    checks::Analysis analysis = always_shown();
    analysis.findings.resize(3);
    for (checks::Finding& finding : analysis.findings) {
        finding.at = {4.0, 3.0};
    }
    EXPECT_EQ(numbers_on(analysis, {}).size(), groups_in(analysis));
}

/// More is drawn than what is in sight, so that the floor can be moved a little without drawing it
/// anew; a number must not hang out of it.
TEST(FloorFindings, OfPlacesInSightStandInSight) {
    checks::Analysis analysis = always_shown();
    const Box sight{60.0, -110.0, 90.0, 90.0};
    // Beside the right edge of what is in sight.
    for (std::size_t i = 0; i < analysis.findings.size(); ++i) {
        analysis.findings[i].at = {7.4, 1.2 + 0.4 * static_cast<double>(i % 10)};
    }
    const std::vector<Text> texts = numbers_on(analysis, sight);
    EXPECT_GT(texts.size(), 4U);
    for (const Text& text : texts) {
        EXPECT_TRUE(sight.contains(text.at)) << text.text;
    }
}

} // namespace
} // namespace throwline::sheet
