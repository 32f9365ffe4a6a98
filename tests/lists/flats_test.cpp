#include "lists/cover_length.h"
#include "lists/list_cases.h"
#include "support/small_plan.h"

#include <gtest/gtest.h>

namespace throwline::lists_test {
namespace {

plan::Plan with_run(double length_ft, double height_ft) {
    plan::Plan plan = testing_support::bare_room(20.0, 15.0);
    plan::FlatRun run;
    run.from = {1.0, 1.0};
    run.widths = {Length::feet(length_ft)};
    run.height = Length::feet(height_ft);
    plan::Scenery scenery;
    scenery.id = {"back wall"};
    scenery.shape = run;
    plan.scenery.push_back(scenery);
    return plan;
}

std::map<std::string, double> from_stock(const lists::Table& flats) {
    std::map<std::string, double> pieces;
    for (const lists::Row& row : flats.sections.front().rows) {
        if (cell(flats, row, "made").text == "from stock") {
            pieces[cell(flats, row, "piece").text] += *cell(flats, row, "pieces").number;
        }
    }
    return pieces;
}

TEST(FlatsList, MakesARunFromStock) {
    const lists::Table flats = list(production_of(with_run(11.0, 10.0)), "flats");
    EXPECT_EQ(from_stock(flats),
              (std::map<std::string, double>{{"flat 3x10 ft", 1.0}, {"flat 4x10 ft", 2.0}}));
}

// Three of 4 ft and two of 2 ft make 16 ft; with two of 4 ft there are not enough.
TEST(FlatsList, TakesWhatTheCrewHas) {
    plan::Plan plan = with_run(16.0, 8.0);
    plan.kit = {{"flat 4x8 ft", 3}, {"flat 2x8 ft", 2}};
    EXPECT_EQ(from_stock(list(production_of(plan), "flats")),
              (std::map<std::string, double>{{"flat 2x8 ft", 2.0}, {"flat 4x8 ft", 3.0}}));
    plan.kit = {{"flat 4x8 ft", 2}, {"flat 2x8 ft", 2}};
    const lists::Table flats = list(production_of(plan), "flats");
    EXPECT_EQ(from_stock(flats), (std::map<std::string, double>{{"flat 4x8 ft", 4.0}}));
    EXPECT_EQ(sum(flats, "short"), 2.0);
}

TEST(FlatsList, SharesWhatTheCrewHasAmongRuns) {
    plan::Plan plan = with_run(8.0, 8.0);
    plan.scenery.push_back(plan.scenery.front());
    plan.scenery.back().id = {"other wall"};
    plan.kit = {{"flat 4x8 ft", 3}};
    EXPECT_EQ(sum(list(production_of(plan), "flats"), "short"), 1.0);
}

TEST(FlatsList, SaysWhenNothingIsHighEnough) {
    const lists::Table flats = list(production_of(with_run(8.0, 20.0)), "flats");
    EXPECT_TRUE(from_stock(flats).empty());
    EXPECT_EQ(flats.sections.front().remarks.size(), 1U);
}

TEST(FlatsList, ReachesAlongEveryRun) {
    for (const Production& production : productions()) {
        const lists::Table flats = list(production, "flats");
        std::size_t section = 0;
        for (const plan::Scenery& scenery : production.plan().scenery) {
            const auto* run = std::get_if<plan::FlatRun>(&scenery.shape);
            if (run == nullptr) {
                continue;
            }
            double stock_m = 0.0;
            double drawn_m = 0.0;
            for (const lists::Row& row : flats.sections[section].rows) {
                const double run_m = *cell(flats, row, "run_m").number;
                (cell(flats, row, "made").text == "as drawn" ? drawn_m : stock_m) += run_m;
            }
            EXPECT_NEAR(drawn_m, run->total_width().m(), 1e-9) << scenery.id.name;
            EXPECT_GE(stock_m + lists::kJointPlay.m(), run->total_width().m()) << scenery.id.name;
            ++section;
        }
    }
}

} // namespace
} // namespace throwline::lists_test
