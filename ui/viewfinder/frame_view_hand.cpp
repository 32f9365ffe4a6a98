/// The pointer and the keyboard in the picture of a shot.

#include "ui/viewfinder/frame_view.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

namespace throwline::ui {

namespace {

/// An arrow key turns by this much, with Shift by five times as much.
constexpr double kTurn_deg = 1.0;
/// A notch of the wheel.
constexpr double kZoom = 1.06;
constexpr double kNotch = 120.0;

/// Arrows and signs also with Shift, letters alone: with Shift they are the window's.
bool is_view_key(int key, Qt::KeyboardModifiers modifiers) {
    const Qt::KeyboardModifiers held = modifiers & ~Qt::KeyboardModifiers{Qt::KeypadModifier};
    switch (key) {
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
    case Qt::Key_Plus:
    case Qt::Key_Equal:
    case Qt::Key_Minus:
        return held == Qt::NoModifier || held == Qt::ShiftModifier;
    default:
        break;
    }
    const auto guides = guide_choices();
    const bool is_guide = std::any_of(guides.begin(), guides.end(),
                                      [&](const GuideChoice& choice) { return choice.key == key; });
    return held == Qt::NoModifier && (is_guide || key == Qt::Key_L || key == Qt::Key_Escape);
}

} // namespace

std::optional<edit::HeldAim> FrameView::hold() const {
    if (frame_ == nullptr || !frame_->raised->scene.view || frame_->question.plan != desk_.plan()) {
        return std::nullopt;
    }
    return edit::held_aim(*desk_.plan(), *frame_->raised->scene.view);
}

void FrameView::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && picture_box().contains(event->position())) {
        finish();
        is_pressed_ = true;
        pressed_at_ = event->position();
    }
}

void FrameView::mouseMoveEvent(QMouseEvent* event) {
    const QPointF at = event->position();
    if (!is_pressed_) {
        point_at(at);
        return;
    }
    if (!is_aiming_) {
        if ((at - pressed_at_).manhattanLength() < QApplication::startDragDistance()) {
            return;
        }
        held_ = hold();
        if (!held_) {
            is_pressed_ = false;
            return;
        }
        is_aiming_ = true;
        setCursor(Qt::ClosedHandCursor);
    }
    going_on_ = edit::aimed_towards(
        desk_.context(), *held_,
        edit::direction_for_drag(held_->view, frame_point(pressed_at_), frame_point(at)));
    desk_.preview(*going_on_);
}

void FrameView::point_at(const QPointF& at) {
    pointed_at_ = at;
    pointed_ = pointed(at);
    setCursor(pointed_ && pointed_->thing ? Qt::PointingHandCursor : Qt::ArrowCursor);
    update();
}

void FrameView::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || !is_pressed_) {
        return;
    }
    is_pressed_ = false;
    if (is_aiming_) {
        is_aiming_ = false;
        finish();
        return;
    }
    const auto there = pointed(event->position());
    if (there && there->thing) {
        std::vector<edit::Thing> things{*there->thing};
        if (event->modifiers().testFlag(Qt::ShiftModifier)) {
            things.insert(things.begin(), desk_.chosen().begin(), desk_.chosen().end());
        }
        desk_.choose(std::move(things));
    }
}

void FrameView::leaveEvent(QEvent* event) {
    pointed_.reset();
    update();
    QWidget::leaveEvent(event);
}

void FrameView::wheelEvent(QWheelEvent* event) {
    zoom_by(std::pow(kZoom, event->angleDelta().y() / kNotch));
    event->accept();
}

// Runs of small steps: one undo for all of them -------------------------------------------------

void FrameView::turn_by(Angle left, Angle up) {
    if (!held_ || factor_ != 1.0) {
        finish();
        held_ = hold();
    }
    if (held_) {
        left_ = left_ + left;
        up_ = up_ + up;
        going_on_ = edit::aimed_off(desk_.context(), *held_, left_, up_);
        show_going_on();
    }
}

void FrameView::zoom_by(double factor) {
    if (!held_ || left_ != Angle{} || up_ != Angle{}) {
        finish();
        held_ = hold();
    }
    if (held_) {
        factor_ *= factor;
        going_on_ = edit::zoomed(desk_.context(), *held_, factor_);
        show_going_on();
    }
}

void FrameView::show_going_on() {
    desk_.preview(*going_on_);
    run_.start();
}

void FrameView::finish() {
    run_.stop();
    const auto step = std::exchange(going_on_, std::nullopt);
    let_go();
    if (step) {
        desk_.take(*step);
    }
}

void FrameView::let_go() {
    run_.stop();
    held_.reset();
    going_on_.reset();
    left_ = {};
    up_ = {};
    factor_ = 1.0;
    is_aiming_ = false;
    setCursor(Qt::ArrowCursor);
}

void FrameView::focusOutEvent(QFocusEvent* event) {
    finish();
    QWidget::focusOutEvent(event);
}

bool FrameView::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (is_view_key(key->key(), key->modifiers())) {
            event->accept();
            return true;
        }
    }
    return QWidget::event(event);
}

void FrameView::keyPressEvent(QKeyEvent* event) {
    if (!is_view_key(event->key(), event->modifiers())) {
        QWidget::keyPressEvent(event);
        return;
    }
    const bool far = event->modifiers().testFlag(Qt::ShiftModifier);
    const Angle turn = Angle::degrees(kTurn_deg * (far ? 5.0 : 1.0));
    switch (event->key()) {
    case Qt::Key_Left:
        turn_by(turn, {});
        break;
    case Qt::Key_Right:
        turn_by(-turn, {});
        break;
    case Qt::Key_Up:
        turn_by({}, turn);
        break;
    case Qt::Key_Down:
        turn_by({}, -turn);
        break;
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        zoom_by(kZoom);
        break;
    case Qt::Key_Minus:
        zoom_by(1.0 / kZoom);
        break;
    case Qt::Key_Escape:
        let_go();
        desk_.end_preview();
        break;
    default:
        switch_by(event->key());
    }
    event->accept();
}

/// What is laid over the picture, and what its tones stand for.
void FrameView::switch_by(int key) {
    if (key == Qt::Key_L) {
        set_shading(shading_ == Shading::lit ? Shading::plain : Shading::lit);
        return;
    }
    FrameGuides guides = guides_;
    for (const GuideChoice& choice : guide_choices()) {
        if (choice.key == key) {
            guides.*choice.shown = !(guides.*choice.shown);
        }
    }
    set_guides(guides);
}

} // namespace throwline::ui
