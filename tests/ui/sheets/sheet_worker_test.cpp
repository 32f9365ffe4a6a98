/// Sheets drawn on a thread of their own: what is asked last wins.

#include "ui/sheets/sheet_worker.h"

#include "ui/desk_case.h"

#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

using support::came_to;

class SheetWorkerCase : public testing::Test {
  protected:
    void SetUp() override {
        desk = support::desk_with(support::demo_plan("workshop_interview.json"));
        ASSERT_TRUE(came_to([&] { return desk->analysis() != nullptr; }));
        QObject::connect(&worker, &SheetWorker::drawn, &worker,
                         [this](auto sheets) { arrived.push_back(sheets); });
        QObject::connect(&worker, &SheetWorker::went_on, &worker,
                         [this](double share) { shares.push_back(share); });
    }
    void ask(std::vector<std::string> kinds) {
        SheetQuestion question{desk->analysis(), desk->catalogue(), {std::move(kinds), {}}};
        question.wish.options.sheet_name.clear();
        worker.ask(std::move(question));
    }

    std::unique_ptr<Desk> desk;
    std::vector<std::shared_ptr<const DrawnSheets>> arrived;
    std::vector<double> shares;
    SheetWorker worker;
};

TEST_F(SheetWorkerCase, AnswersOnlyWhatWasAskedLast) {
    for (int i = 0; i < 20; ++i) {
        ask({"all"});
    }
    ask({"set-plan"});
    ASSERT_TRUE(came_to([&] { return !worker.is_working(); }));
    ASSERT_EQ(arrived.size(), 1U);
    EXPECT_EQ(arrived.front()->question.wish.kinds, std::vector<std::string>{"set-plan"});
    ASSERT_TRUE(arrived.front()->pages);
    EXPECT_EQ(arrived.front()->pages->size(), 1U);
}

TEST_F(SheetWorkerCase, SaysNothingOnceStopped) {
    ask({"all"});
    worker.stop();
    EXPECT_FALSE(worker.is_working());
    // What follows would come after anything that is still on its way.
    ask({"set-plan"});
    ASSERT_TRUE(came_to([&] { return !worker.is_working(); }));
    ASSERT_EQ(arrived.size(), 1U);
    EXPECT_EQ(arrived.front()->question.wish.kinds, std::vector<std::string>{"set-plan"});
}

TEST_F(SheetWorkerCase, TellsHowFarItIs) {
    ask({"floor-plan", "lighting-plan", "set-plan"});
    ASSERT_TRUE(came_to([&] { return !worker.is_working(); }));
    ASSERT_EQ(shares.size(), 3U);
    EXPECT_NEAR(shares[0], 1.0 / 3.0, 1e-12);
    EXPECT_EQ(shares[2], 1.0);
}

TEST_F(SheetWorkerCase, TellsWhyThereAreNoPages) {
    ask({"no-such-sheet"});
    ASSERT_TRUE(came_to([&] { return !worker.is_working(); }));
    ASSERT_EQ(arrived.size(), 1U);
    ASSERT_FALSE(arrived.front()->pages);
    EXPECT_NE(arrived.front()->pages.error().message.find("no-such-sheet"), std::string::npos);
}

TEST_F(SheetWorkerCase, EndsWhileItIsDrawing) {
    auto another = std::make_unique<SheetWorker>();
    another->ask({desk->analysis(), desk->catalogue(), {{"all"}, {}}});
    another.reset();
    EXPECT_TRUE(arrived.empty());
}

} // namespace
} // namespace throwline::ui
