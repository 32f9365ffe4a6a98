#include "ui/said_line/said_line.h"

#include "edit/pick.h"
#include "ui/desk_case.h"

#include <QLineEdit>
#include <gtest/gtest.h>

namespace throwline::ui {
namespace {

using support::demo_plan;

struct Spoken {
    std::unique_ptr<Desk> desk = support::desk_with(demo_plan("cookery.json"));
    std::unique_ptr<SaidLine> line = std::make_unique<SaidLine>(*desk);
    QStringList actions;

    Spoken() {
        line->set_actions({{"edit.undo", "undo"}, {"show.fit", "whole floor"}});
        QObject::connect(line.get(), &SaidLine::action_wanted, line.get(),
                         [this](const QString& id) { actions.append(id); });
        line->resize(700, 60);
        line->show();
    }
    QLineEdit& edit() const { return line->edit(); }
    void type(const QString& words) const { QTest::keyClicks(&edit(), words); }
    void say(const QString& sentence) const {
        edit().clear();
        type(sentence);
        QTest::keyClick(&edit(), Qt::Key_Escape); // the list of words
        QTest::keyClick(&edit(), Qt::Key_Return);
    }
    Vec2 place(const std::string& name) const {
        return *edit::place_of(desk->context(), {edit::Kind::scenery, name, 0});
    }
};

TEST(SaidLine, DoesWhatIsSaid) {
    const Spoken spoken;
    const Vec2 before = spoken.place("island");
    spoken.say(QStringLiteral("move island left 2 ft"));
    EXPECT_NEAR(spoken.place("island").x(), before.x() - 0.6096, 1e-9);
    EXPECT_TRUE(spoken.edit().text().isEmpty());
    EXPECT_EQ(spoken.line->answer(), QString::fromStdString(spoken.desk->history().undo_name()));
}

TEST(SaidLine, ChoosesAndGoesElsewhere) {
    const Spoken spoken;
    spoken.say(QStringLiteral("choose all cameras"));
    EXPECT_EQ(spoken.desk->chosen().size(), 3U);
    spoken.say(QStringLiteral("go to shot 3B"));
    EXPECT_EQ(spoken.desk->now().shot.name, "3B");
    spoken.say(QStringLiteral("new beat after 2"));
    EXPECT_EQ(spoken.desk->plan()->beats.size(), 5U);
    EXPECT_EQ(spoken.desk->now().beat, spoken.desk->plan()->beats[2].id);
}

TEST(SaidLine, AsksForActionsOfTheWindow) {
    const Spoken spoken;
    spoken.say(QStringLiteral("Whole floor"));
    EXPECT_EQ(spoken.actions, QStringList{QStringLiteral("show.fit")});
}

TEST(SaidLine, MarksTheWordThatIsNotUnderstood) {
    const Spoken spoken;
    spoken.say(QStringLiteral("move iland left 2 ft"));
    EXPECT_EQ(spoken.line->marked(), 5);
    EXPECT_EQ(spoken.edit().selectedText(), QStringLiteral("iland"));
    EXPECT_TRUE(spoken.line->answer().contains(QStringLiteral("\"island\"")))
        << spoken.line->answer().toStdString();
    EXPECT_FALSE(spoken.desk->history().can_undo());
}

TEST(SaidLine, ColumnsCountCharactersBeyondTheBasicPlane) {
    const Spoken spoken;
    spoken.edit().setText(QStringLiteral("move island lfet \U0001F3A5"));
    QTest::keyClick(&spoken.edit(), Qt::Key_Return);
    EXPECT_EQ(spoken.line->marked(), 12);
    spoken.edit().setText(QStringLiteral("\U0001F3A5 island"));
    QTest::keyClick(&spoken.edit(), Qt::Key_Return);
    EXPECT_EQ(spoken.line->marked(), 0);
}

TEST(SaidLine, UpAndDownBringBackWhatWasSaid) {
    const Spoken spoken;
    spoken.say(QStringLiteral("choose all cameras"));
    spoken.say(QStringLiteral("choose island"));
    spoken.edit().setText(QStringLiteral("half a sen"));
    QTest::keyClick(&spoken.edit(), Qt::Key_Up);
    EXPECT_EQ(spoken.edit().text(), QStringLiteral("choose island"));
    QTest::keyClick(&spoken.edit(), Qt::Key_Up);
    QTest::keyClick(&spoken.edit(), Qt::Key_Up);
    EXPECT_EQ(spoken.edit().text(), QStringLiteral("choose all cameras"));
    QTest::keyClick(&spoken.edit(), Qt::Key_Down);
    QTest::keyClick(&spoken.edit(), Qt::Key_Down);
    EXPECT_EQ(spoken.edit().text(), QStringLiteral("half a sen"));
}

TEST(SaidLine, TabCompletesAWord) {
    const Spoken spoken;
    spoken.type(QStringLiteral("move fli"));
    ASSERT_FALSE(spoken.line->offers().isEmpty());
    QTest::keyClick(&spoken.edit(), Qt::Key_Tab);
    EXPECT_EQ(spoken.edit().text(), QStringLiteral("move flight case "));
    EXPECT_TRUE(spoken.line->offers().contains(QStringLiteral("left")));
}

TEST(SaidLine, EnterSaysTheSentenceWhateverIsOffered) {
    const Spoken spoken;
    spoken.type(QStringLiteral("choose boom"));
    ASSERT_FALSE(spoken.line->offers().isEmpty());
    QTest::keyClick(&spoken.edit(), Qt::Key_Return);
    ASSERT_EQ(spoken.desk->chosen().size(), 1U);
    EXPECT_EQ(spoken.desk->chosen().front().name, "boom");
}

TEST(SaidLine, EscapeLeaves) {
    const Spoken spoken;
    bool was_left = false;
    QObject::connect(spoken.line.get(), &SaidLine::left, spoken.line.get(),
                     [&] { was_left = true; });
    QTest::keyClick(&spoken.edit(), Qt::Key_Escape);
    EXPECT_TRUE(was_left);
}

} // namespace
} // namespace throwline::ui
