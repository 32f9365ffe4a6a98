#include "sheet/findings_sheet.h"

#include "sheet/furniture.h"
#include "sheet/sheet_support.h"
#include "support/demo_plan.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::analysed;
using test::session;
using test::sheet_catalogue;

const checks::Analysis& crowded() {
    static const checks::Analysis made = analysed(support::demo_plan("cookery.json"));
    return made;
}

SheetInput input_of(const checks::Analysis& analysis) {
    return {analysis, sheet_catalogue(), session().measure()};
}

std::vector<const checks::Finding*> all_of(const checks::Analysis& analysis) {
    std::vector<const checks::Finding*> all;
    for (const checks::Finding& finding : analysis.findings) {
        all.push_back(&finding);
    }
    return all;
}

std::string words_on(const std::vector<Drawing>& drawings) {
    std::string words;
    for (const Drawing& drawing : drawings) {
        for (const Layer& layer : drawing.layers) {
            for (const Mark& mark : layer.marks) {
                if (const auto* text = std::get_if<Text>(&mark)) {
                    words += text->text + " ";
                }
            }
        }
    }
    return words;
}

/// Words without spaces, so that it does not matter where lines are broken.
std::string packed(std::string text) {
    std::erase(text, ' ');
    return text;
}

std::vector<Drawing> sheets_of(const checks::Analysis& analysis, const SheetOptions& options,
                               const std::string& name) {
    const std::vector<std::string> names{name};
    SheetOptions unnamed = options;
    unnamed.sheet_name.clear();
    auto drawings = sheet_set(input_of(analysis), unnamed, names);
    EXPECT_TRUE(drawings) << drawings.error().message;
    return drawings.value();
}

TEST(FindingGroups, KeepTheirNumbersOnSheetsThatShowSome) {
    const auto all = grouped(all_of(crowded()));
    SheetOptions options;
    options.shots = {{"4C"}};
    const auto some = grouped(selected_findings(crowded(), options), crowded());
    ASSERT_GT(some.size(), 3U);
    ASSERT_LT(some.size(), all.size());
    for (const FindingGroup& group : some) {
        const FindingGroup& same = all.at(static_cast<std::size_t>(group.number) - 1);
        EXPECT_NE(std::find(same.members.begin(), same.members.end(), group.first),
                  same.members.end())
            << group.number;
    }
}

TEST(FindingsSheet, TellsEveryFindingWithItsFigure) {
    const std::string words = packed(words_on(sheets_of(crowded(), {}, "findings")));
    for (const FindingGroup& group : grouped(all_of(crowded()))) {
        EXPECT_NE(words.find(packed(group.first->message)), std::string::npos)
            << group.first->message;
        EXPECT_NE(words.find(packed(group.first->working.result)), std::string::npos)
            << group.first->working.result;
    }
}

TEST(FindingsSheet, IsNothingWithoutFindings) {
    SheetOptions options;
    options.findings = false;
    const auto jobs = findings_jobs(input_of(crowded()), options);
    ASSERT_TRUE(jobs);
    EXPECT_TRUE(jobs->empty());
}

TEST(FindingsPanel, NumbersOnThePlanAreThoseOfTheList) {
    // On a sheet of one shot the numbers have gaps and still say what the list says.
    SheetOptions options;
    options.shots = {{"4C"}};
    const auto groups = grouped(selected_findings(crowded(), options), crowded());
    const FindingGroup& gap = *std::find_if(groups.begin(), groups.end(), [&](const auto& group) {
        return group.number > static_cast<int>(&group - groups.data()) + 1;
    });
    const auto drawings = sheets_of(crowded(), options, "floor-plan");
    const Layer& marks =
        *std::find_if(drawings.front().layers.begin(), drawings.front().layers.end(),
                      [](const Layer& layer) { return layer.name == "findings"; });
    const bool marked = std::any_of(marks.marks.begin(), marks.marks.end(), [&](const Mark& mark) {
        const auto* text = std::get_if<Text>(&mark);
        return text != nullptr && text->text == std::to_string(gap.number);
    });
    EXPECT_TRUE(marked) << gap.number;
}

TEST(FindingsPanel, TellsHowManyErrorsItHasNoRoomFor) {
    SheetOptions options;
    options.paper = "A4";
    const auto drawings = sheets_of(crowded(), options, "floor-plan");
    ASSERT_EQ(drawings.size(), 1U);
    ASSERT_GT(drawings.front().errors_left_out, 5);
    const std::string words = words_on(drawings);
    EXPECT_NE(words.find(std::to_string(drawings.front().errors_left_out) + " of them are errors"),
              std::string::npos);
}

TEST(SheetSet, GoesOnWithTheErrorsThatFoundNoRoom) {
    SheetOptions options;
    options.paper = "A4";
    options.goes_on = true;
    const auto drawings = sheets_of(crowded(), options, "floor-plan");
    ASSERT_GT(drawings.size(), 1U);
    const std::string words = packed(words_on(drawings));
    for (const FindingGroup& group : grouped(all_of(crowded()))) {
        if (group.first->severity == checks::Severity::error) {
            EXPECT_NE(words.find(packed(group.first->message)), std::string::npos)
                << group.first->message;
        }
    }
    EXPECT_NE(words_on({drawings.back()})
                  .find("Sheet " + std::to_string(drawings.size()) + " of "
                        + std::to_string(drawings.size())),
              std::string::npos);
}

TEST(SheetSet, DoesNotGoOnWhereErrorsHaveRoom) {
    SheetOptions options;
    options.paper = "A1";
    options.goes_on = true;
    EXPECT_EQ(sheets_of(crowded(), options, "floor-plan").size(), 1U);
}

} // namespace
} // namespace throwline::sheet
