#include "ui/sheets/file_worker.h"

#include "ui/desk_case.h"

#include <QStringList>
#include <atomic>
#include <chrono>
#include <gtest/gtest.h>
#include <thread>
#include <vector>

namespace throwline::ui {
namespace {

using support::came_to;

struct Listened {
    FileWorker worker;
    QStringList told;
    std::vector<double> shares;

    Listened() {
        QObject::connect(&worker, &FileWorker::told, &worker,
                         [this](const QString& sentence) { told.append(sentence); });
        QObject::connect(&worker, &FileWorker::went_on, &worker,
                         [this](double share) { shares.push_back(share); });
    }
};

TEST(FileWorker, TellsHowFarItIsAndHowItEnded) {
    Listened listened;
    listened.worker.ask([](const FileWorker::MayGoOn& may_go_on) {
        return may_go_on(0.25) && may_go_on(0.75) ? QStringLiteral("done") : QString{};
    });
    EXPECT_TRUE(listened.worker.is_busy());
    ASSERT_TRUE(came_to([&] { return !listened.worker.is_busy(); }));
    EXPECT_EQ(listened.told, QStringList{QStringLiteral("done")});
    EXPECT_EQ(listened.shares, (std::vector<double>{0.25, 0.75}));
}

TEST(FileWorker, GivesUpWhenStoppedAndTakesOtherWorkAfterwards) {
    Listened listened;
    std::atomic<bool> has_begun = false;
    listened.worker.ask([&](const FileWorker::MayGoOn& may_go_on) {
        while (may_go_on(0.5)) {
            has_begun = true;
            std::this_thread::sleep_for(std::chrono::milliseconds{1});
        }
        return QStringLiteral("given up");
    });
    ASSERT_TRUE(came_to([&] { return has_begun.load(); }));
    listened.worker.ask([](const FileWorker::MayGoOn&) { return QStringLiteral("second"); });
    listened.worker.stop();
    ASSERT_TRUE(came_to([&] { return !listened.worker.is_busy(); }));
    EXPECT_EQ(listened.told, QStringList{QStringLiteral("given up")}) << "one work at a time";
    listened.worker.ask([](const FileWorker::MayGoOn& may_go_on) {
        return may_go_on(0.0) ? QStringLiteral("third") : QStringLiteral("still stopped");
    });
    ASSERT_TRUE(came_to([&] { return !listened.worker.is_busy(); }));
    EXPECT_EQ(listened.told.back(), QStringLiteral("third"));
}

} // namespace
} // namespace throwline::ui
