#include "ui/findings/findings_panel.h"

#include "ui/desk_case.h"
#include "ui/findings/findings_model.h"

#include <QAbstractItemModelTester>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QScrollBar>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

using support::came_to;
using support::demo_plan;

struct Shown {
    std::unique_ptr<Desk> desk;
    std::unique_ptr<FindingsPanel> panel;

    explicit Shown(plan::Plan plan = demo_plan("cookery.json")) {
        desk = support::desk_with(std::move(plan));
        panel = std::make_unique<FindingsPanel>(*desk);
        panel->resize(280, 560);
        panel->show();
        EXPECT_TRUE(came_to([&] { return !panel->model().is_stale(); }));
    }
    QListView& list() const { return *panel->findChild<QListView*>(); }
    QLabel& label(const char* name) const {
        for (QLabel* one : panel->findChildren<QLabel*>()) {
            if (one->accessibleName() == QLatin1String{name}) {
                return *one;
            }
        }
        ADD_FAILURE() << "no label " << name;
        return *panel->findChild<QLabel*>();
    }
    QPushButton& button(const QString& words) const {
        for (QPushButton* one : panel->findChildren<QPushButton*>()) {
            if (one->text().remove(QLatin1Char{'&'}).startsWith(words)) {
                return *one;
            }
        }
        ADD_FAILURE() << "no button " << words.toStdString();
        return *panel->findChild<QPushButton*>();
    }
    /// The first line with an open finding that is about a shot.
    int first_of_shot() const {
        const FindingsModel& model = panel->model();
        for (int row = 0; row < model.rowCount(); ++row) {
            if (!model.row(row).is_heading() && !finding(row).shot.empty()
                && model.row(row).reason.empty()) {
                return row;
            }
        }
        ADD_FAILURE() << "no finding about a shot";
        return 0;
    }
    const checks::Finding& finding(int row) const {
        const FindingsModel& model = panel->model();
        const auto index = static_cast<std::size_t>(model.row(row).findings.front());
        return model.analysis()->findings[index];
    }
    void choose(int row) const { list().setCurrentIndex(list().model()->index(row, 0)); }
    bool settled() const {
        return came_to([&] { return !panel->model().is_stale(); });
    }
};

TEST(FindingsPanel, ChoosingALineGoesThere) {
    const Shown shown;
    const int row = shown.first_of_shot();
    const checks::Finding finding = shown.finding(row);
    shown.choose(row);
    EXPECT_EQ(shown.desk->now().shot, finding.shot);
    EXPECT_EQ(shown.desk->finding_pointed_at(), shown.panel->model().row(row).findings.front());
    EXPECT_FALSE(shown.desk->chosen().empty());
}

TEST(FindingsPanel, IsPointedToFromElsewhere) {
    const Shown shown;
    const int row = shown.first_of_shot();
    shown.desk->point_at_finding(shown.panel->model().row(row).findings.front());
    EXPECT_EQ(shown.list().currentIndex().row(), row);
}

TEST(FindingsPanel, AcceptsWithAReasonAndTakesItBack) {
    const Shown shown;
    shown.choose(shown.first_of_shot());
    const checks::Finding finding = shown.finding(shown.list().currentIndex().row());
    shown.button(QStringLiteral("Accept")).click();
    QLineEdit& reason = *shown.panel->findChild<QLineEdit*>();
    QTest::keyClick(&reason, Qt::Key_Return);
    EXPECT_TRUE(shown.desk->plan()->accepted.empty()) << "without a reason nothing is accepted";
    QTest::keyClicks(&reason, QStringLiteral("It is a joke"));
    QTest::keyClick(&reason, Qt::Key_Return);
    ASSERT_EQ(shown.desk->plan()->accepted.size(), 1U);
    EXPECT_EQ(shown.desk->plan()->accepted.front().check, finding.check);
    EXPECT_EQ(shown.desk->history().undo_name().rfind("Accept finding", 0), 0U);
    ASSERT_TRUE(shown.settled());
    const auto current = shown.list().currentIndex();
    ASSERT_TRUE(current.isValid());
    EXPECT_EQ(shown.panel->model().row(current.row()).reason, "It is a joke");
    shown.button(QStringLiteral("Take back")).click();
    EXPECT_TRUE(shown.desk->plan()->accepted.empty());
}

TEST(FindingsPanel, AcceptedOnesStandLast) {
    const Shown shown;
    shown.choose(shown.first_of_shot());
    shown.button(QStringLiteral("Accept")).click();
    QLineEdit& reason = *shown.panel->findChild<QLineEdit*>();
    QTest::keyClicks(&reason, QStringLiteral("Rehearsed so"));
    QTest::keyClick(&reason, Qt::Key_Return);
    ASSERT_TRUE(shown.settled());
    const FindingsModel& model = shown.panel->model();
    bool is_past = false;
    for (int row = 0; row < model.rowCount(); ++row) {
        is_past = is_past || model.row(row).heading == "Accepted";
        if (!model.row(row).is_heading()) {
            EXPECT_EQ(!model.row(row).reason.empty(), is_past) << row;
        }
    }
    EXPECT_TRUE(is_past);
}

TEST(FindingsPanel, StaysWhereItWasScrolledTo) {
    const Shown shown;
    QScrollBar& bar = *shown.list().verticalScrollBar();
    shown.choose(shown.first_of_shot());
    ASSERT_GT(bar.maximum(), 200) << "more findings than the panel has room for";
    bar.setValue(200);
    shown.button(QStringLiteral("Accept")).click();
    QLineEdit& reason = *shown.panel->findChild<QLineEdit*>();
    QTest::keyClicks(&reason, QStringLiteral("Rehearsed so"));
    QTest::keyClick(&reason, Qt::Key_Return);
    ASSERT_TRUE(shown.settled());
    QCoreApplication::processEvents();
    EXPECT_EQ(bar.value(), 200);
}

TEST(FindingsPanel, NeverShowsAnOldResultAsCurrent) {
    const Shown shown;
    shown.choose(shown.first_of_shot());
    shown.desk->toggle_units();
    EXPECT_TRUE(shown.panel->model().is_stale());
    for (int row = 0; row < shown.panel->model().rowCount(); ++row) {
        EXPECT_EQ(shown.panel->model().flags(shown.panel->model().index(row)), Qt::NoItemFlags);
    }
    EXPECT_EQ(shown.label("State of the findings").text(),
              QStringLiteral("Checking the change\u2026"));
    EXPECT_FALSE(shown.button(QStringLiteral("Accept")).isEnabled());
    EXPECT_TRUE(shown.settled());
}

TEST(FindingsPanel, StoppingIsSaidAndCanBeMadeGood) {
    const Shown shown;
    shown.desk->toggle_units();
    shown.desk->stop_checking();
    EXPECT_TRUE(shown.panel->model().is_stale());
    EXPECT_TRUE(shown.button(QStringLiteral("Check again")).isVisible());
    shown.button(QStringLiteral("Check again")).click();
    EXPECT_TRUE(shown.settled());
}

TEST(FindingsPanel, F2ShowsTheWorking) {
    const Shown shown;
    shown.choose(shown.first_of_shot());
    QTest::keyClick(&shown.list(), Qt::Key_F2);
    QLabel& working = shown.label("Working of the chosen finding");
    EXPECT_TRUE(working.isVisible());
    const int row = shown.list().currentIndex().row();
    EXPECT_TRUE(working.text().contains(
        QString::fromStdString(shown.finding(row).working.result).toHtmlEscaped()));
    QTest::keyClick(&shown.list(), Qt::Key_F2);
    EXPECT_FALSE(working.isVisible());
}

TEST(FindingsPanel, NumbersStayWhicheverWayTheyAreGrouped) {
    const Shown shown;
    const auto numbers = [&] {
        std::map<int, int> number_of;
        const FindingsModel& model = shown.panel->model();
        for (int row = 0; row < model.rowCount(); ++row) {
            for (const int finding : model.row(row).findings) {
                number_of[finding] = model.row(row).number;
            }
        }
        return number_of;
    };
    const auto by_shot = numbers();
    shown.panel->set_order(sheet::FindingOrder::by_thing);
    EXPECT_EQ(numbers(), by_shot);
    EXPECT_EQ(by_shot.size(), shown.panel->model().analysis()->findings.size());
}

TEST(FindingsPanel, AnEmptyListSaysWhatWasLookedAtAndPromisesNothing) {
    plan::Plan bare;
    const Shown shown{bare};
    ASSERT_EQ(shown.panel->model().rowCount(), 0);
    const QString words = shown.label("What was looked at").text();
    EXPECT_TRUE(words.startsWith(QStringLiteral("Looked at 0 shots"))) << words.toStdString();
    EXPECT_FALSE(words.contains(QStringLiteral("safe"), Qt::CaseInsensitive));
}

TEST(FindingsPanel, CautionsStandAtTheFoot) {
    const Shown shown;
    EXPECT_FALSE(shown.label("Cautions").text().isEmpty());
}

TEST(FindingsModel, IsAModelOfItsKind) {
    const AnalysisPtr analysis = std::make_shared<const checks::Analysis>(
        support::analysis_of(demo_plan("workshop_interview.json")));
    FindingsModel model;
    const QAbstractItemModelTester tester{&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal};
    model.show(analysis, sheet::FindingOrder::by_shot);
    EXPECT_GT(model.rowCount(), 0);
    model.set_stale();
    EXPECT_TRUE(model.is_stale());
    model.show(nullptr, sheet::FindingOrder::by_thing);
    EXPECT_EQ(model.rowCount(), 0);
}

} // namespace
} // namespace throwline::ui
