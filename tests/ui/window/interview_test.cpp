/// A whole production, the interview of the demos, made from nothing with the pointer and the
/// keyboard of the real window.

#include "plan/read_plan.h"
#include "ui/stores/stores_model.h"
#include "ui/stores/stores_panel.h"
#include "ui/window/start_page.h"
#include "ui/window/window_case.h"

#include <QApplication>
#include <QDrag>
#include <QDropEvent>
#include <QMimeData>
#include <QPushButton>
#include <QTreeView>

namespace throwline::ui {
namespace {

using edit::Kind;

class InterviewCase : public WindowCase {
  protected:
    QPoint px(const Vec2& at) { return window->floor().px_of(at).toPoint(); }

    void click(const Vec2& at, Qt::KeyboardModifiers keys = {}) {
        QTest::mouseMove(&window->floor(), px(at));
        QTest::mouseClick(&window->floor(), Qt::LeftButton, keys, px(at));
    }

    /// Moves the pointer to a place of a widget with the left button held.
    static void pull(QWidget* widget, const QPoint& to, Qt::KeyboardModifiers keys = {}) {
        QMouseEvent move{QEvent::MouseMove, QPointF{to},    widget->mapToGlobal(QPointF{to}),
                         Qt::NoButton,      Qt::LeftButton, keys};
        QApplication::sendEvent(widget, &move);
    }

    /// Pulls what is at a place, and types how far it goes while it is being pulled.
    void press_and_type(const Vec2& from, const Vec2& towards, const char* length) {
        QTest::mousePress(&window->floor(), Qt::LeftButton, Qt::AltModifier, px(from));
        pull(&window->floor(), px(towards), Qt::AltModifier);
        type(length);
        QTest::mouseRelease(&window->floor(), Qt::LeftButton, Qt::AltModifier, px(towards));
    }

    /// Into whatever has the keyboard.
    void type(const char* text) {
        for (const char* letter = text; *letter != '\0'; ++letter) {
            QTest::keyClick(window->focusWidget(), *letter);
        }
        QTest::keyClick(window->focusWidget(), Qt::Key_Return);
    }

    void press(Qt::Key key, Qt::KeyboardModifiers keys = {}) {
        window->floor().setFocus();
        QTest::keyClick(&window->floor(), key, keys);
    }

    /// A key with Ctrl, as the window hears it wherever the keyboard is.
    void shortcut(Qt::Key key, Qt::KeyboardModifiers more = {}) {
        // A list that closed leaves no window of the test's platform with the keyboard.
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window));
        QTest::keyClick(window->focusWidget(), key, Qt::ControlModifier | more);
    }

    /// Pulls something out of the Stores with the mouse and lets go of it over the floor. The
    /// platform of tests carries nothing, so what it would do between is done here.
    void pull_out(const char* item, const Vec2& at) {
        window->stores().search(QString::fromUtf8(item));
        QTreeView& shelves = window->stores().shelves();
        const QModelIndex index = window->stores().model().index_of(item);
        ASSERT_TRUE(index.isValid()) << item;
        shelves.scrollTo(index);
        const QPoint from = shelves.visualRect(index).center();
        QTest::mousePress(shelves.viewport(), Qt::LeftButton, {}, from);
        for (const int by_px : {8, 24, 60}) {
            pull(shelves.viewport(), from + QPoint{by_px, 0});
        }
        auto* carried = shelves.findChild<QDrag*>();
        ASSERT_NE(carried, nullptr) << item;
        drop(*carried->mimeData(), px(at));
        delete carried;
        QTest::mouseRelease(shelves.viewport(), Qt::LeftButton, {}, from);
        window->stores().search({});
    }

    void drop(const QMimeData& things, const QPoint& at) {
        QDragEnterEvent enters{at, Qt::CopyAction, &things, Qt::LeftButton, Qt::AltModifier};
        QApplication::sendEvent(&window->floor(), &enters);
        EXPECT_TRUE(enters.isAccepted());
        QDragMoveEvent moves{at, Qt::CopyAction, &things, Qt::LeftButton, Qt::AltModifier};
        QApplication::sendEvent(&window->floor(), &moves);
        QDropEvent drops{QPointF{at}, Qt::CopyAction, &things, Qt::LeftButton, Qt::AltModifier};
        QApplication::sendEvent(&window->floor(), &drops);
    }

    void card(std::initializer_list<std::pair<const char*, const char*>> values) {
        for (const auto& [key, text] : values) {
            if (HasFatalFailure()) {
                return;
            }
            type_into_card(key, text);
        }
    }

    void begin();
    void make_room();
    void hang_and_plug();
    void furnish();
    void block();
    void shoot();
    void light();
    void tell_site();
};

void InterviewCase::begin() {
    for (QPushButton* button : window->start_page().findChildren<QPushButton*>()) {
        if (button->text().contains(QStringLiteral("empty floor"))) {
            QTest::mouseClick(button, Qt::LeftButton);
        }
    }
    ASSERT_TRUE(window->has_plan());
}

void InterviewCase::make_room() {
    window->do_action(QStringLiteral("draw.room"));
    press(Qt::Key_Home);
    click({0, 0});
    for (const char* edge : {"6.4 m 0deg", "5 m 90deg", "6.4 m 180deg"}) {
        type(edge);
    }
    press(Qt::Key_Return);
    press(Qt::Key_Home);
    ASSERT_EQ(plan().room.outline.size(), 4U);

    press(Qt::Key_Escape);
    click({3.2, 0});
    window->do_action(QStringLiteral("edit.choose_kind"));
    card({{"thickness", "20 cm"}, {"dressed", "yes"}});

    window->do_action(QStringLiteral("draw.door"));
    click({0.75, 0});
    press(Qt::Key_Escape);
    card({{"name", "hall door"},
          {"width", "90 cm"},
          {"from_start", "0.3"},
          {"head", "2 m"},
          {"swing", "opens out, hinged at the start"},
          {"way_out", "yes"}});
    window->do_action(QStringLiteral("draw.window"));
    click({0, 1.7});
    press(Qt::Key_Escape);
    card({{"name", "yard window"},
          {"width", "1.4 m"},
          {"from_start", "2,6"},
          {"sill", "95cm"},
          {"head", "2.1"},
          {"transmission", "80 %"}});
}

void InterviewCase::tell_site() {
    press(Qt::Key_Escape);
    window->desk().choose({});
    card({{"title", "The Chair Mender, interview"},
          {"place", "Back workshop, Tanner's Yard"},
          {"north", "-35"},
          {"date", "2026-05-12"},
          {"hours", "10:00 to 12:30"},
          {"utc_offset", "+01:00"},
          {"latitude", "53.2"},
          {"longitude", "-1.6"},
          {"site_notes", "Band saw next door until 10:30\n"
                         "Window cannot be blacked out from outside; blind inside\n"
                         "Both sockets on one 16 A breaker in the hall\n"
                         "Roof beam carries the mender's own hoist; load given by the owner"},
          {"room_height", "2.8 m"},
          {"room_finish", "off-white paint"},
          {"floor_finish", "concrete"},
          {"ceiling_finish", "white paint"},
          {"ceiling_dressed", "yes"},
          {"ratio", "4"},
          {"way_out_width", "80cm"},
          {"kit", "1 compact zoom 15-40\n1 prime 50 T1.5\n2 tripod\n3 medium light stand"}});
}

void InterviewCase::hang_and_plug() {
    window->do_action(QStringLiteral("draw.pipe"));
    click({0, 4.4}, Qt::AltModifier);
    type("6.4 m 0deg");
    press(Qt::Key_Escape);
    card({{"name", "roof beam"},
          {"from", "0, 4.4"},
          {"to", "6.4, 4.4"},
          {"height", "2.6 m"},
          {"load", "15 kg"}});
    window->do_action(QStringLiteral("put.outlet"));
    card({{"name", "sockets"}, {"volts", "230 V"}, {"breaker", "16 A"}});
    card({{"x", "6.3"}, {"y", "2.2"}});
    say("copy it left 2 m");
    card({{"x", "0.1"}, {"y", "0.4"}});
}

void InterviewCase::furnish() {
    pull_out("workbench", {4.4, 4.5});
    card({{"x", "4.4"}, {"y", "4.6"}, {"turn", "0"}});
    pull_out("open shelf rack", {2.2, 4.6});
    card({{"name", "tool rack"}, {"x", "2.2"}, {"y", "4.72 m"}, {"turn", "0"}});
    say("put dining chair at 5.9 m, 4.2 m");
    card({{"name", "mended chair"}, {"turn", "-60"}});
    say("put dining chair at 3 m, 3.2 m");
    card({{"name", "guest chair"}, {"turn", "160"}});
    // Pulled to its place, by as much as is typed on the way.
    press_and_type({3, 3.2}, {3.4, 3.2}, "60 cm");
    say("put stool at 2.5 m, 1.2 m");
    card({{"turn", "0"}});
    pull_out("side table", {2.6, 3.4});
    card({{"x", "2.6"}, {"y", "3.6"}, {"turn", "0"}});
}

void InterviewCase::block() {
    pull_out("cast", {3.6, 3.1});
    card({{"name", "Noor"}, {"stature", "1,64 m"}, {"x", "3.6"}, {"y", "3.2"}});
    pull_out("crew", {2.5, 1.1});
    card({{"name", "Sam"}, {"stature", "178cm"}, {"pose", "sit"}, {"x", "2.5"}, {"y", "1.2"}});
    say("let Sam face Noor");
    say("let Noor face Sam");
    say("let Noor sit");
    press(Qt::Key_Escape);
    card({{"beat_name", "How she began"}});
    shortcut(Qt::Key_B);
    card({{"beat_name", "Showing the joint"}});
    say("walk Noor to 4.3 m, 3.9 m by 4.3 m, 3.4 m");
    say("let Noor stand");
    say("go to beat 1");
}

void InterviewCase::shoot() {
    pull_out("prime 50 T1.5", {3.5, 1.3});
    card({{"name", "camera A"},
          {"sensor", "Super 35 16:9"},
          {"eye_height", "1.2"},
          {"shutter", "1/50"},
          {"iso", "800"},
          {"home", "off the floor"}});
    shortcut(Qt::Key_T);
    card({{"x", "3.5"}, {"y", "1.25"}, {"size", "MCU"}, {"stop", "2.8"}});
    card({{"composition", "Noor looks just past the lens, bench behind"}});
    pull_out("compact zoom 15-40", {5.4, 1.6});
    card({{"name", "camera B"}, {"eye_height", "135cm"}, {"shutter", "1/50"}, {"iso", "800"}});
    card({{"home", "off the floor"}});
    shortcut(Qt::Key_T);
    card({{"x", "5.5"}, {"y", "1.7"}, {"size", "medium long"}, {"stop", "2.8"}});
    card({{"composition", "Wide three-quarter, tool rack behind"}});
    say("new shot on camera B in beat 2");
    card({{"size", "medium long"}, {"stop", "2.8"}});
    card({{"composition", "At the bench, the mended joint in hand"}});
    say("let Noor face camera B");
    say("go to beat 1");
    pull_out("boom", {1.5, 1.1});
    card({{"operator", "1.5, 1"},
          {"pole", "2.5 m"},
          {"microphone", "3.3, 2.7"},
          {"height", "2 m"},
          {"beats", "1"}});
}

void InterviewCase::light() {
    pull_out("soft box 60x90 LED 150 W", {1.8, 1.9});
    card({{"name", "key"}, {"x", "1.9"}, {"y", "1.9"}, {"height", "1.95"}, {"role", "key"}});
    card({{"level", "60"}, {"aim_beat", "1"}, {"circuit", "sockets"}, {"channel", "1"}});
    pull_out("LED panel 60x30 soft", {4.7, 0.8});
    card({{"name", "fill"}, {"x", "4.7"}, {"y", "0.7"}, {"height", "1.9"}, {"role", "fill"}});
    card({{"level", "50"}, {"aim_beat", "1"}, {"circuit", "sockets"}, {"channel", "2"}});
    pull_out("LED Fresnel 60 W", {5.2, 4.3});
    card({{"name", "rim"}, {"along", "5.3"}, {"drop", "25cm"}, {"role", "back"}, {"flood", "60"}});
    card({{"level", "40"}, {"aim_beat", "1"}, {"circuit", "sockets"}, {"channel", "3"}});
    pull_out("desk lamp", {4.9, 4.5});
    card({{"name", "bench lamp"}, {"x", "4.9"}, {"y", "4.6"}, {"height", "1.3"}});
    card({{"aim", "4.6, 4.5, 0.9"}, {"role", "practical"}, {"circuit", "sockets"}});
    card({{"channel", "4"}});
}

/// Everything that the demo has, made by hand, saved, undone to the empty floor and done again.
TEST_F(InterviewCase, IsMadeFromNothing) {
    ASSERT_NO_FATAL_FAILURE(begin());
    const std::string empty = window->desk().plan_text();
    ASSERT_NO_FATAL_FAILURE(make_room());
    ASSERT_NO_FATAL_FAILURE(hang_and_plug());
    ASSERT_NO_FATAL_FAILURE(furnish());
    ASSERT_NO_FATAL_FAILURE(block());
    ASSERT_NO_FATAL_FAILURE(shoot());
    ASSERT_NO_FATAL_FAILURE(light());
    ASSERT_NO_FATAL_FAILURE(tell_site());
    const plan::Plan wanted = support::demo_plan("workshop_interview.json");
    const std::string made = window->desk().plan_text();
    EXPECT_EQ(made, plan::written(wanted));

    shortcut(Qt::Key_S);
    const Checked<plan::Plan> saved =
        plan::read_plan_file(folder / "plan.json", support::shipped_catalogue());
    ASSERT_TRUE(saved);
    EXPECT_TRUE(*saved == wanted);

    int steps = 0;
    while (window->desk().history().can_undo()) {
        shortcut(Qt::Key_Z);
        ++steps;
    }
    EXPECT_GT(steps, 100);
    EXPECT_EQ(window->desk().plan_text(), empty);
    while (window->desk().history().can_redo()) {
        shortcut(Qt::Key_Z, Qt::ShiftModifier);
    }
    EXPECT_EQ(window->desk().plan_text(), made);
}

} // namespace
} // namespace throwline::ui
