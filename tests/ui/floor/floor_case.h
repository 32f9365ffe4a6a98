#pragma once

#include "edit/pick.h"
#include "support/small_plan.h"
#include "ui/desk_case.h"
#include "ui/floor/floor.h"
#include "ui/floor/typed_line.h"

#include <QApplication>
#include <QMouseEvent>
#include <QSignalSpy>
#include <QWheelEvent>
#include <gtest/gtest.h>

/// A floor on a desk, shown, with ways to point at plan places.
namespace throwline::ui {

using edit::Kind;
using edit::Thing;

/// A room of 10 m by 8 m with a table in it, another on top of which a small box stands, a person
/// and a camera that looks at them. The names of the things are theirs in the tests.
inline plan::Plan small_production() {
    using namespace testing_support;
    plan::Plan plan = bare_room();
    add_scenery(plan, "table", box_piece({3.0, 4.0}, 1.0, 1.0, 0.7));
    add_scenery(plan, "bench", box_piece({7.0, 4.0}, 2.0, 1.0, 0.5));
    add_scenery(plan, "crate", box_piece({7.0, 4.0}, 0.4, 0.4, 0.4), 0.5);
    add_person(plan, "Ana", {5.0, 6.0}, Angle::degrees(-90));
    add_camera(plan, "camera 1");
    add_shot(plan, "1A", "camera 1", {5.0, 2.0}, {"Ana"});
    return plan;
}

struct OnFloor {
    std::unique_ptr<Desk> desk;
    std::unique_ptr<Floor> floor;
    QStringList said;

    explicit OnFloor(plan::Plan plan = small_production(), QSize size = {900, 700}) {
        desk = support::desk_with(std::move(plan));
        floor = std::make_unique<Floor>(*desk);
        QObject::connect(desk.get(), &Desk::said, floor.get(),
                         [this](const QString& sentence) { said.append(sentence); });
        floor->resize(size);
        floor->show();
        floor->setFocus();
        QApplication::processEvents();
    }

    QPointF px(const Vec2& at) const { return floor->px_of(at); }
    void mouse(QEvent::Type type, const QPointF& at, Qt::MouseButton button,
               Qt::MouseButtons buttons, Qt::KeyboardModifiers keys = {}) const {
        QMouseEvent event{type, at, floor->mapToGlobal(at), button, buttons, keys};
        QApplication::sendEvent(floor.get(), &event);
    }
    void press(const Vec2& at, Qt::KeyboardModifiers keys = {}) const {
        mouse(QEvent::MouseButtonPress, px(at), Qt::LeftButton, Qt::LeftButton, keys);
    }
    void move(const Vec2& at, Qt::KeyboardModifiers keys = {}, bool held = true) const {
        mouse(QEvent::MouseMove, px(at), Qt::NoButton,
              held ? Qt::MouseButtons{Qt::LeftButton} : Qt::MouseButtons{}, keys);
    }
    void release(const Vec2& at, Qt::KeyboardModifiers keys = {}) const {
        mouse(QEvent::MouseButtonRelease, px(at), Qt::LeftButton, {}, keys);
    }
    void click(const Vec2& at, Qt::KeyboardModifiers keys = {}) const {
        move(at, keys, false);
        press(at, keys);
        release(at, keys);
    }
    void drag(const Vec2& from, const Vec2& to, Qt::KeyboardModifiers keys = {}) const {
        press(from, keys);
        move((from + to) / 2.0, keys);
        move(to, keys);
        release(to, keys);
    }
    void wheel(const QPointF& at, int notches) const {
        QWheelEvent event{at,
                          floor->mapToGlobal(at),
                          {},
                          {0, notches * 120},
                          Qt::NoButton,
                          Qt::NoModifier,
                          Qt::NoScrollPhase,
                          false};
        QApplication::sendEvent(floor.get(), &event);
    }
    void key(Qt::Key key, Qt::KeyboardModifiers keys = {}) const {
        QTest::keyClick(floor.get(), key, keys);
    }
    /// Types into whatever has the keyboard.
    void type(const char* text) const {
        for (const char* letter = text; *letter != '\0'; ++letter) {
            QTest::keyClick(QApplication::focusWidget(), *letter);
        }
    }
    void enter() const { QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return); }

    const plan::Plan& plan() const { return *desk->plan(); }
    bool came_to_rest() const {
        return support::came_to([&] { return floor->is_up_to_date(); });
    }
    Vec2 place(const Thing& thing) const {
        return edit::place_of(desk->context(), thing).value_or(Vec2{-1000.0, -1000.0});
    }
};

inline Thing scenery(const char* name) {
    return {Kind::scenery, name, 0};
}

} // namespace throwline::ui
