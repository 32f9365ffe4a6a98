#include "sheet/index_sheet.h"

#include "sheet/drawn_words.h"
#include "sheet/golden.h"
#include "sheet/sheet_support.h"

#include <algorithm>
#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::all_words;
using test::analysed;
using test::count_of;
using test::EvenMeasure;
using test::full_plan;
using test::session;
using test::sheet_catalogue;
using test::small_plan;

std::vector<Drawing> set_of(const checks::Analysis& analysis, const TextMeasure& measure,
                            const std::vector<std::string>& names,
                            const SheetOptions& options = {}) {
    SheetOptions unnamed = options;
    unnamed.sheet_name.clear();
    auto drawn = sheet_set({analysis, sheet_catalogue(), measure}, unnamed, names);
    if (!drawn) {
        ADD_FAILURE() << drawn.error().message;
        return {};
    }
    return *std::move(drawn);
}

TEST(IndexSheet, ComesFirstAndListsEverySheetWithItsScale) {
    const checks::Analysis analysis = analysed(small_plan());
    const std::vector<Drawing> set = set_of(analysis, session().measure(), {"all"});
    ASSERT_GT(set.size(), 5U);
    const Drawing& index = set.front();
    EXPECT_EQ(index.title, "Letter scene: Index");
    EXPECT_EQ(index.scale, "");
    EXPECT_EQ(count_of(index, "Floor plan"), 1U);
    EXPECT_EQ(count_of(index, "Lighting plan"), 1U);
    EXPECT_EQ(count_of(index, "Shot 1A"), 1U);
    EXPECT_EQ(count_of(index, "Card of camera 1"), 1U);
    std::size_t to_scale = 0;
    for (const Drawing& sheet : set) {
        to_scale += sheet.scale == set[1].scale ? 1U : 0U;
    }
    EXPECT_EQ(count_of(index, set[1].scale), to_scale);
}

TEST(IndexSheet, SheetsAreNumberedThroughAndTheIndexCountsItself) {
    const checks::Analysis analysis = analysed(full_plan());
    const std::vector<Drawing> set = set_of(analysis, session().measure(), {"all"});
    for (std::size_t i = 0; i < set.size(); ++i) {
        const std::string words =
            "Sheet " + std::to_string(i + 1) + " of " + std::to_string(set.size());
        EXPECT_NE(all_words(set[i]).find(words), std::string::npos) << words;
    }
}

TEST(IndexSheet, NumbersAgreeWithTheSheets) {
    const checks::Analysis analysis = analysed(small_plan());
    const std::vector<Drawing> set =
        set_of(analysis, session().measure(), {"floor-plan", "index", "shots"});
    ASSERT_EQ(set.size(), 3U);
    EXPECT_EQ(set[1].title, "Letter scene: Index");
    EXPECT_EQ(count_of(set[1], "1"), 1U);
    EXPECT_EQ(count_of(set[1], "3"), 1U);
    EXPECT_EQ(count_of(set[1], "2"), 0U);
}

TEST(IndexSheet, PagesOfOneListAreOneEntry) {
    const checks::Analysis analysis = analysed(small_plan());
    const EvenMeasure measure;
    std::vector<IndexEntry> entries{{2, 5, "Lamp schedule", {}, "A4 portrait"},
                                    {6, 6, "Kit", {}, "A4 portrait"}};
    const auto jobs = index_jobs({analysis, sheet_catalogue(), measure}, {}, entries);
    ASSERT_TRUE(jobs);
    const auto page = jobs->front().draw({});
    ASSERT_TRUE(page);
    EXPECT_EQ(count_of(*page, "2 to 5"), 1U);
    EXPECT_EQ(count_of(*page, "6"), 1U);
    EXPECT_EQ(count_of(*page, "not to scale"), 2U);
}

TEST(IndexSheet, ErrorsAreWrittenOutAndOthersCounted) {
    checks::Analysis analysis = analysed(small_plan());
    checks::Finding error;
    error.check = "made-up";
    error.severity = checks::Severity::error;
    error.message = "This must be put right.";
    checks::Finding note = error;
    note.severity = checks::Severity::note;
    note.message = "This is worth knowing.";
    checks::Finding accepted = error;
    accepted.things = {"boom"};
    accepted.message = "This is lived with.";
    accepted.accepted = "painted out";
    analysis.findings = {error, note, accepted};
    const std::string words =
        all_words(set_of(analysis, session().measure(), {"index", "floor-plan"}).front());
    EXPECT_NE(words.find("2 errors, 0 cautions and 1 note; 1 of them accepted."), std::string::npos)
        << words;
    EXPECT_NE(words.find("Error: This must be put right."), std::string::npos) << words;
    EXPECT_EQ(words.find("This is worth knowing."), std::string::npos);
    EXPECT_EQ(words.find("Error: This is lived with."), std::string::npos);
}

TEST(IndexSheet, ManySheetsTakeMorePagesAndNoneIsLost) {
    const checks::Analysis analysis = analysed(small_plan());
    const EvenMeasure measure;
    std::vector<IndexEntry> entries;
    for (int i = 1; i <= 150; ++i) {
        entries.push_back({i, i, "Sheet named " + std::to_string(i), "1:50", "A3 landscape"});
    }
    SheetOptions options;
    options.paper = "A4";
    const auto jobs = index_jobs({analysis, sheet_catalogue(), measure}, options, entries);
    ASSERT_TRUE(jobs);
    EXPECT_GT(jobs->size(), 2U);
    std::vector<Drawing> pages;
    for (const SheetJob& job : *jobs) {
        pages.push_back(job.draw(options).value());
    }
    for (const IndexEntry& entry : entries) {
        std::size_t count = 0;
        for (const Drawing& page : pages) {
            count += count_of(page, entry.name);
        }
        EXPECT_EQ(count, 1U) << entry.name;
    }
}

TEST(IndexSheet, AskedForAloneItSaysWhatIsMissing) {
    const checks::Analysis analysis = analysed(small_plan());
    const std::vector<std::string> names{"index"};
    const auto drawn = sheet_set({analysis, sheet_catalogue(), session().measure()}, {}, names);
    ASSERT_FALSE(drawn);
    EXPECT_NE(drawn.error().message.find("an index lists other sheets"), std::string::npos);
}

TEST(IndexSheet, SmallPlanIsAsItWas) {
    const checks::Analysis analysis = analysed(small_plan());
    const EvenMeasure measure;
    SheetOptions options;
    options.paper = "A4";
    options.file_hash = "0123abcd";
    options.findings = false;
    test::expect_golden(
        set_of(analysis, measure, {"index", "floor-plan", "shots"}, options).front(),
        "index_small");
}

} // namespace
} // namespace throwline::sheet
