/// Sets of sheets for somebody who may lose interest, or asks for what is not there.

#include "sheet/sheet_kinds.h"

#include "sheet/sheet_support.h"

#include <gtest/gtest.h>

namespace throwline::sheet {
namespace {

using test::analysed;
using test::session;
using test::sheet_catalogue;
using test::small_plan;

class SheetSetCase : public testing::Test {
  protected:
    SheetInput input() const { return {analysis, sheet_catalogue(), session().measure()}; }

    checks::Analysis analysis = analysed(small_plan());
    SheetOptions options;
};

TEST_F(SheetSetCase, TellsOfEveryPageAndGivesTheSameAsWithoutTelling) {
    const std::vector<std::string> names{"floor-plan", "set-plan"};
    std::vector<double> shares;
    const auto told =
        sheet_set(input(), options, names, {}, [&](double share) { shares.push_back(share); });
    ASSERT_TRUE(told);
    const auto untold = sheet_set(input(), options, names);
    ASSERT_TRUE(*told);
    ASSERT_TRUE(untold);
    EXPECT_EQ((*told)->size(), untold->size());
    EXPECT_EQ(shares, (std::vector<double>{0.5, 1.0}));
}

TEST_F(SheetSetCase, StopsAfterThePageThatIsBegun) {
    std::stop_source stop;
    int pages = 0;
    const auto drawn =
        sheet_set(input(), options, std::vector<std::string>{"all"}, stop.get_token(), [&](double) {
            ++pages;
            stop.request_stop();
        });
    EXPECT_FALSE(drawn);
    EXPECT_EQ(pages, 1);
}

TEST_F(SheetSetCase, LeavesOutWhatHasNothingToShowOnlyWhenAsked) {
    ASSERT_FALSE(analysis.plan->survey);
    const std::vector<std::string> names{"floor-plan", "recce"};
    EXPECT_FALSE(sheet_set(input(), options, names));
    options.leaves_out_empty = true;
    const auto drawn = sheet_set(input(), options, names);
    ASSERT_TRUE(drawn);
    EXPECT_EQ(drawn->size(), 1U);
}

} // namespace
} // namespace throwline::sheet
