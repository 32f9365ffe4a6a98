/// The shipped scales and papers against the standards' own tables, and the choice among them
/// against every scale of the table tried in turn.

#include "sheet/scale_choice.h"
#include "support/demo_plan.h"

#include <gtest/gtest.h>
#include <random>
#include <set>

namespace throwline {
namespace {

std::set<double> standard_ratios(UnitSystem system) {
    std::set<double> ratios;
    for (const catalogue::DrawingScale& scale : support::shipped_catalogue().scales) {
        if (scale.system == system && scale.standard) {
            ratios.insert(scale.ratio);
        }
    }
    return ratios;
}

// ISO 5455:1979, clause 5: reductions 1:2 to 1:10000, and full size. 1:25 and 1:250 are not in it.
TEST(ScaleTables, MetricReductionsAreThoseOfIso5455) {
    const std::set<double> ratios = standard_ratios(UnitSystem::metric);
    const std::set<double> iso{2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000};
    for (const double ratio : ratios) {
        EXPECT_TRUE(ratio <= 1.0 || iso.contains(ratio)) << "1:" << ratio;
    }
    for (const double ratio : {10.0, 20.0, 50.0, 100.0, 200.0}) {
        EXPECT_TRUE(ratios.contains(ratio)) << "1:" << ratio;
    }
}

// Architect's scale, as tabled in a drafting text (LibreTexts) and two scale tables: inches on
// paper to the foot, ratio = 12 / inches.
TEST(ScaleTables, InchScalesAreThoseOfTheArchitectsRule) {
    EXPECT_EQ(standard_ratios(UnitSystem::imperial),
              (std::set<double>{4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192}));
}

struct Sheet {
    const char* name;
    double width_mm;
    double height_mm;
};

// ISO 216 trimmed sizes A4 to A0; ASME Y14.1 A to E and architectural A to E in inches x 25.4
// (architectural sizes but D from memory); letter, legal (from memory), tabloid.
TEST(ScaleTables, PapersAreThoseOfTheStandards) {
    constexpr double kInch = 25.4;
    for (const Sheet& sheet :
         {Sheet{"a4", 210, 297}, Sheet{"a3", 297, 420}, Sheet{"a2", 420, 594},
          Sheet{"a1", 594, 841}, Sheet{"a0", 841, 1189}, Sheet{"letter", 8.5 * kInch, 11 * kInch},
          Sheet{"legal", 8.5 * kInch, 14 * kInch}, Sheet{"tabloid", 11 * kInch, 17 * kInch},
          Sheet{"ansi c", 17 * kInch, 22 * kInch}, Sheet{"ansi d", 22 * kInch, 34 * kInch},
          Sheet{"ansi e", 34 * kInch, 44 * kInch}, Sheet{"arch d", 24 * kInch, 36 * kInch},
          Sheet{"arch e", 36 * kInch, 48 * kInch}}) {
        const catalogue::Paper* paper = support::shipped_catalogue().paper(sheet.name);
        ASSERT_NE(paper, nullptr) << sheet.name;
        EXPECT_NEAR(paper->width.mm(), sheet.width_mm, 1e-9) << sheet.name;
        EXPECT_NEAR(paper->height.mm(), sheet.height_mm, 1e-9) << sheet.name;
    }
}

/// Smallest ratio of the table at which a rectangle fits one way or the other, by trying all.
double tried_in_turn(const sheet::ScaleQuestion& question, const std::set<double>& ratios) {
    const double long_mm =
        std::max(question.paper.width.mm(), question.paper.height.mm()) - 2 * question.margin.mm();
    const double short_mm =
        std::min(question.paper.width.mm(), question.paper.height.mm()) - 2 * question.margin.mm();
    for (const double ratio : ratios) {
        const double w_mm = question.width.mm() / ratio;
        const double d_mm = question.depth.mm() / ratio;
        if ((w_mm <= long_mm && d_mm <= short_mm) || (w_mm <= short_mm && d_mm <= long_mm)) {
            return ratio;
        }
    }
    return 0.0;
}

TEST(ScaleTables, TheChoiceIsTheOneFoundByTryingEveryStandardScale) {
    std::mt19937 random{5455};
    std::uniform_real_distribution<double> side_m{1.0, 45.0};
    const catalogue::Catalogue& tables = support::shipped_catalogue();
    for (int i = 0; i < 400; ++i) {
        sheet::ScaleQuestion question;
        question.width = Length::metres(side_m(random));
        question.depth = Length::metres(side_m(random));
        question.paper = tables.papers[static_cast<std::size_t>(i) % tables.papers.size()];
        question.system = i % 2 == 0 ? UnitSystem::metric : UnitSystem::imperial;
        const double expected = tried_in_turn(question, standard_ratios(question.system));
        const auto choice = sheet::choose_scale(question, tables);
        if (expected > 0.0) {
            ASSERT_TRUE(choice) << choice.error().message;
            EXPECT_EQ(choice->scale.ratio, expected);
        } else {
            EXPECT_FALSE(choice);
        }
    }
}

} // namespace
} // namespace throwline
