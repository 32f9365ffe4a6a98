/// The Card as a widget: what is typed into it, what is refused, and the working of its figures.

#include "ui/card_panel/card_panel.h"

#include "ui/desk_case.h"

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QToolButton>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

struct Shown {
    std::unique_ptr<Desk> desk = support::desk_with(support::demo_plan("workshop_interview.json"));
    std::unique_ptr<CardPanel> panel = std::make_unique<CardPanel>(*desk);

    Shown() {
        panel->resize(320, 600);
        panel->show();
    }
    void choose(edit::Kind kind, const char* name) const {
        desk->choose({{kind, name, 0}});
        QApplication::processEvents();
    }
    QLineEdit& line(const char* key) const {
        auto* edit = qobject_cast<QLineEdit*>(panel->editor(QString::fromUtf8(key)));
        EXPECT_NE(edit, nullptr) << key << "\n" << panel->text();
        return *edit;
    }
    void type(const char* key, const char* text) const {
        QLineEdit& edit = line(key);
        edit.setFocus();
        edit.selectAll();
        QTest::keyClicks(&edit, QString::fromUtf8(text));
        QTest::keyClick(&edit, Qt::Key_Return);
        QApplication::processEvents();
    }
    const QLabel* working() const { return panel->findChild<QLabel*>(QStringLiteral("working")); }
};

/// Figures are missing while a check goes on, and come back with it: the card is laid anew twice.
TEST(CardPanel, WhatIsBeingTypedOutlivesACheck) {
    const Shown shown;
    shown.choose(edit::Kind::camera, "camera A");
    ASSERT_TRUE(support::came_to([&] { return shown.desk->analysis() != nullptr; }));
    shown.type("eye_height", "1.31 m");
    QLineEdit& edit = shown.line("x");
    edit.setFocus();
    edit.selectAll();
    QTest::keyClicks(&edit, QStringLiteral("2.7"));
    const QPointer<QLineEdit> before = &edit;
    ASSERT_TRUE(support::came_to([&] { return shown.desk->analysis() != nullptr; }));
    QTest::qWait(20);
    EXPECT_EQ(shown.line("x").text(), QStringLiteral("2.7"));
    EXPECT_TRUE(shown.line("x").hasFocus());
    QTest::keyClicks(&shown.line("x"), QStringLiteral("5 m"));
    QTest::keyClick(&shown.line("x"), Qt::Key_Return);
    QApplication::processEvents();
    EXPECT_EQ(shown.line("x").text(), QStringLiteral("2.75 m"));
}

TEST(CardPanel, WhatWasRefusedOutlivesACheck) {
    const Shown shown;
    shown.choose(edit::Kind::camera, "camera A");
    shown.type("x", "12 bananas");
    ASSERT_NE(shown.panel->told(), QString{});
    shown.type("eye_height", "1.31 m");
    ASSERT_TRUE(support::came_to([&] { return shown.desk->analysis() != nullptr; }));
    QTest::qWait(20);
    EXPECT_EQ(shown.line("x").text(), QStringLiteral("12 bananas"));
    shown.choose(edit::Kind::camera, "camera B");
    EXPECT_NE(shown.line("x").text(), QStringLiteral("12 bananas")) << "that is another camera";
}

TEST(CardPanel, ShowsWhatWasTypedAsThePlanWritesIt) {
    const Shown shown;
    shown.choose(edit::Kind::camera, "camera A");
    shown.type("eye_height", "142cm");
    EXPECT_EQ(shown.desk->plan()->cameras.front().eye_height, Length::metres(1.42));
    EXPECT_EQ(shown.line("eye_height").text(), QStringLiteral("1.42 m"));
    EXPECT_TRUE(shown.line("eye_height").hasFocus());
}

TEST(CardPanel, KeepsAndExplainsWhatCannotBeUntilEscape) {
    const Shown shown;
    shown.choose(edit::Kind::camera, "camera A");
    const QString before = shown.line("eye_height").text();
    shown.type("eye_height", "very high");
    EXPECT_EQ(shown.line("eye_height").text(), QStringLiteral("very high"));
    EXPECT_FALSE(shown.panel->told().isEmpty());
    EXPECT_EQ(shown.line("eye_height").accessibleDescription(),
              shown.panel->told().section(QLatin1Char{' '}, 1));
    EXPECT_FALSE(shown.desk->history().can_undo());
    QTest::keyClick(&shown.line("eye_height"), Qt::Key_Escape);
    EXPECT_EQ(shown.line("eye_height").text(), before);
    EXPECT_TRUE(shown.panel->told().isEmpty());
}

TEST(CardPanel, F2ShowsTheWorkingOfAValueAndOfAFigure) {
    const Shown shown;
    shown.choose(edit::Kind::camera, "camera A");
    ASSERT_TRUE(support::came_to([&] { return shown.desk->analysis() != nullptr; }));
    QApplication::processEvents();
    QTest::keyClick(&shown.line("eye_height"), Qt::Key_F2);
    ASSERT_NE(shown.working(), nullptr);
    const QString of_height = shown.working()->text();
    auto* figure = shown.panel->findChild<QToolButton*>();
    ASSERT_NE(figure, nullptr) << shown.panel->text();
    figure->setFocus();
    QTest::keyClick(figure, Qt::Key_F2);
    ASSERT_NE(shown.working(), nullptr);
    EXPECT_NE(shown.working()->text(), of_height);
    QTest::keyClick(figure, Qt::Key_F2);
    EXPECT_EQ(shown.working(), nullptr);
}

/// A note may hold any mark of punctuation, so each has a line.
TEST(CardPanel, NotesStandOnLinesOfTheirOwn) {
    const Shown shown;
    shown.desk->choose({});
    QApplication::processEvents();
    auto* notes = qobject_cast<QPlainTextEdit*>(shown.panel->editor(QStringLiteral("site_notes")));
    ASSERT_NE(notes, nullptr) << shown.panel->text();
    const std::vector<std::string> before = shown.desk->plan()->site.notes;
    EXPECT_EQ(notes->document()->blockCount(), static_cast<int>(before.size()));
    notes->setFocus();
    notes->moveCursor(QTextCursor::End);
    QTest::keyClick(notes, Qt::Key_Return);
    QTest::keyClicks(notes, QStringLiteral("Lift is slow; allow ten minutes"));
    EXPECT_EQ(shown.desk->plan()->site.notes, before);
    QTest::keyClick(notes, Qt::Key_Tab);
    ASSERT_EQ(shown.desk->plan()->site.notes.size(), before.size() + 1);
    EXPECT_EQ(shown.desk->plan()->site.notes.back(), "Lift is slow; allow ten minutes");
    QApplication::processEvents();
    notes->moveCursor(QTextCursor::Start);
    const int top = notes->cursorRect().top();
    notes->moveCursor(QTextCursor::End);
    EXPECT_GE(top, 0);
    EXPECT_LE(notes->cursorRect().bottom(), notes->viewport()->height()) << "all lines are seen";
    EXPECT_GT(notes->cursorRect().bottom() - top, notes->fontMetrics().lineSpacing() * 5)
        << "long ones are broken";
}

} // namespace
} // namespace throwline::ui
