#include "ui/recce/recce_window.h"

#include "ui/desk_case.h"
#include "ui/recce/recce_model.h"

#include <QApplication>
#include <QClipboard>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTableView>
#include <fstream>
#include <gtest/gtest.h>
#include <sstream>

namespace throwline::ui {
namespace {

using support::came_to;
using support::demo_plan;

const QString kRoom = QStringLiteral("corners A B C D\n"
                                     "A-B 4m\n"
                                     "B-C 3m\n"
                                     "C-D 13ft 1 1/2in\n"
                                     "D-A 3m\n"
                                     "A-C 5m\n"
                                     "B-D 5m\n"
                                     "height 8ft 2in\n");

QString kitchen() {
    std::ifstream file{THROWLINE_SOURCE_DIR "/demo/harbour_kitchen.recce.txt"};
    std::ostringstream text;
    text << file.rdbuf();
    return QString::fromStdString(text.str());
}

struct Shown {
    std::unique_ptr<Desk> desk;
    std::unique_ptr<RecceWindow> recce;

    explicit Shown(plan::Plan plan = plan::Plan{}) {
        desk = support::desk_with(std::move(plan));
        recce = std::make_unique<RecceWindow>(*desk);
        recce->show();
    }
    RecceModel& model() const { return recce->model(); }
    void type(const QString& text) const {
        recce->set_text(text);
        EXPECT_TRUE(came_to([&] { return recce->is_settled(); }));
    }
    QModelIndex cell(int row, RecceModel::Column column) const {
        return model().index(row, column);
    }
    QString words(int row, RecceModel::Column column) const {
        return model().data(cell(row, column), Qt::DisplayRole).toString();
    }
    bool set(int row, RecceModel::Column column, const QString& text) const {
        return model().setData(cell(row, column), text, Qt::EditRole);
    }
    QPushButton& use_button() const {
        for (QPushButton* button : recce->findChildren<QPushButton*>()) {
            if (button->text().contains(QStringLiteral("Use as the room"))) {
                return *button;
            }
        }
        throw std::logic_error{"no such button"};
    }
};

TEST(RecceWindow, ShowsTheLinesAsATable) {
    Shown shown;
    shown.type(kRoom);
    EXPECT_EQ(shown.model().rowCount(), 9);
    EXPECT_EQ(shown.words(0, RecceModel::kind_column).toStdString(), "corners");
    EXPECT_EQ(shown.words(1, RecceModel::from_column).toStdString(), "A");
    EXPECT_EQ(shown.words(3, RecceModel::reading_column).toStdString(), "13ft 1 1/2in");
    ASSERT_NE(shown.recce->seen()->drawing, nullptr);
    EXPECT_TRUE(shown.use_button().isEnabled());
}

TEST(RecceWindow, TypingInTheTableChangesItsLine) {
    Shown shown;
    shown.type(kRoom);
    ASSERT_TRUE(shown.set(1, RecceModel::reading_column, QStringLiteral("4,10 m")));
    EXPECT_NE(shown.recce->text().find("A-B 4,10 m\n"), std::string::npos);
    shown.recce->page().undo();
    EXPECT_EQ(shown.recce->text(), kRoom.toStdString());
    EXPECT_EQ(shown.words(1, RecceModel::reading_column).toStdString(), "4m");
}

TEST(RecceWindow, TheLastRowTakesTheNextReading) {
    Shown shown;
    shown.type(kRoom);
    const int last = shown.model().rowCount() - 1;
    EXPECT_TRUE(shown.set(last, RecceModel::from_column, QStringLiteral("C")));
    EXPECT_TRUE(shown.set(last, RecceModel::to_column, QStringLiteral("A")));
    EXPECT_EQ(shown.recce->text(), kRoom.toStdString());
    EXPECT_TRUE(shown.set(last, RecceModel::reading_column, QStringLiteral("5.004m")));
    EXPECT_EQ(shown.recce->text(), kRoom.toStdString() + "C-A 5.004m\n");
    EXPECT_EQ(shown.model().rowCount(), last + 2);
    EXPECT_TRUE(shown.words(last + 1, RecceModel::from_column).isEmpty());
}

TEST(RecceWindow, FieldsThatAKindDoesNotHaveAreClosed) {
    Shown shown;
    shown.type(kRoom);
    EXPECT_FALSE(shown.model().flags(shown.cell(0, RecceModel::from_column)) & Qt::ItemIsEditable);
    EXPECT_TRUE(shown.model().flags(shown.cell(1, RecceModel::from_column)) & Qt::ItemIsEditable);
    EXPECT_FALSE(shown.model().flags(shown.cell(1, RecceModel::verdict_column))
                 & Qt::ItemIsEditable);
}

TEST(RecceWindow, AWrongReadingIsMarkedWithItsSentence) {
    Shown shown;
    shown.type(kitchen());
    int marked = 0;
    for (int row = 0; row < shown.model().rowCount(); ++row) {
        const QModelIndex cell = shown.cell(row, RecceModel::verdict_column);
        if (cell.data(RecceModel::number_role).toInt() > 0) {
            ++marked;
            EXPECT_EQ(shown.words(row, RecceModel::from_column).toStdString(), "B");
            EXPECT_EQ(shown.words(row, RecceModel::to_column).toStdString(), "G");
            EXPECT_TRUE(cell.data().toString().endsWith(QStringLiteral("measure again")));
        }
    }
    EXPECT_EQ(marked, 1);
}

TEST(RecceWindow, ErrorsStandAtTheirField) {
    Shown shown;
    shown.type(kRoom + QStringLiteral("A-B 12 apples\n"));
    EXPECT_TRUE(shown.cell(8, RecceModel::reading_column).data(RecceModel::error_role).toBool());
    EXPECT_FALSE(shown.cell(8, RecceModel::from_column).data(RecceModel::error_role).toBool());
    EXPECT_FALSE(shown.words(8, RecceModel::verdict_column).isEmpty());
    EXPECT_FALSE(shown.recce->page().extraSelections().isEmpty());
    EXPECT_FALSE(shown.use_button().isEnabled());
    EXPECT_FALSE(shown.recce->use_as_room());
}

TEST(RecceWindow, WhatIsMissingIsAskedFor) {
    Shown shown;
    shown.type(QStringLiteral("corners A B C D\nA-B 4m\nB-C 3m\nC-D 4m\nD-A 3m\n"));
    EXPECT_EQ(shown.recce->seen()->drawing, nullptr);
    ASSERT_FALSE(shown.recce->seen()->told.wanted.empty());
    EXPECT_FALSE(shown.use_button().isEnabled());
}

TEST(RecceWindow, UsesTheRoomInOneStep) {
    Shown shown;
    shown.type(kRoom);
    shown.use_button().click();
    EXPECT_EQ(shown.desk->plan()->room.outline.size(), 4U);
    EXPECT_EQ(shown.desk->history().undo_name(), "Room from recce");
    EXPECT_EQ(shown.recce->text(), kRoom.toStdString());
    const auto labels = shown.recce->findChildren<QLabel*>();
    EXPECT_TRUE(std::any_of(labels.begin(), labels.end(), [](const QLabel* label) {
        return label->text().startsWith(QStringLiteral("The room is in the plan."));
    }));
    shown.desk->undo();
    EXPECT_TRUE(shown.desk->plan()->room.outline.empty());
    EXPECT_EQ(shown.recce->text(), kRoom.toStdString());
}

TEST(RecceWindow, OpensWithThePlansSurvey) {
    Shown first;
    first.type(kRoom);
    ASSERT_TRUE(first.recce->use_as_room());
    Shown again{*first.desk->plan()};
    ASSERT_TRUE(came_to([&] { return again.recce->is_settled(); }));
    const auto read = survey::read_recce(again.recce->text());
    ASSERT_TRUE(read);
    EXPECT_EQ(read->survey, *first.desk->plan()->survey);
}

TEST(RecceWindow, WhatWasTypedOutlivesChangesOfThePlan) {
    Shown shown{demo_plan("cookery.json")};
    shown.type(kRoom);
    plan::Plan other = *shown.desk->plan();
    other.title = "Another title";
    ASSERT_TRUE(shown.desk->take(edit::Step{"Title", std::move(other), {}}));
    EXPECT_EQ(shown.recce->text(), kRoom.toStdString());
}

TEST(RecceWindow, TellsWhatIsTypedAndNotInThePlan) {
    Shown shown;
    EXPECT_EQ(shown.recce->readings(), "");
    std::string told = "nothing was told";
    QObject::connect(shown.recce.get(), &RecceWindow::readings_changed,
                     [&] { told = shown.recce->readings(); });
    shown.type(QStringLiteral("corners A B"));
    EXPECT_EQ(told, "corners A B");
    shown.type(kRoom);
    ASSERT_TRUE(shown.recce->use_as_room());
    EXPECT_EQ(told, "");
    shown.desk->undo();
    EXPECT_EQ(told, kRoom.toStdString());
    shown.desk->redo();
    EXPECT_EQ(told, "");
}

TEST(RecceWindow, ThePlansOwnSurveyIsNothingTyped) {
    const Shown first;
    first.type(kRoom);
    ASSERT_TRUE(first.recce->use_as_room());
    const Shown again{*first.desk->plan()};
    ASSERT_FALSE(again.recce->text().empty());
    EXPECT_EQ(again.recce->readings(), "");
}

TEST(RecceWindow, DeleteTakesALineOut) {
    Shown shown;
    shown.type(kRoom);
    shown.recce->table().setCurrentIndex(shown.cell(6, RecceModel::kind_column));
    QTest::keyClick(&shown.recce->table(), Qt::Key_Delete);
    EXPECT_EQ(shown.recce->text().find("B-D"), std::string::npos);
    QTest::keyClick(&shown.recce->table(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(shown.recce->text(), kRoom.toStdString());
}

TEST(RecceWindow, LinesArePastedBehindTheTable) {
    Shown shown;
    shown.type(kRoom);
    QApplication::clipboard()->setText(QStringLiteral("note sun: none\n"));
    QTest::keyClick(&shown.recce->table(), Qt::Key_V, Qt::ControlModifier);
    EXPECT_EQ(shown.recce->text(), kRoom.toStdString() + "note sun: none\n");
}

TEST(RecceWindow, EveryControlHasAName) {
    Shown shown;
    for (const QPushButton* button : shown.recce->findChildren<QPushButton*>()) {
        EXPECT_FALSE(button->text().isEmpty());
    }
    EXPECT_FALSE(shown.recce->table().accessibleName().isEmpty());
    EXPECT_FALSE(shown.recce->page().accessibleName().isEmpty());
    for (int column = 0; column < RecceModel::kColumns; ++column) {
        EXPECT_FALSE(shown.model()
                         .data(shown.cell(0, static_cast<RecceModel::Column>(column)),
                               Qt::AccessibleTextRole)
                         .toString()
                         .isEmpty());
    }
}

} // namespace
} // namespace throwline::ui
