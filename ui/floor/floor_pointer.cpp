/// What the pointer, the wheel, gestures and drops do on the floor.

#include "edit/moves.h"
#include "ui/floor/carried_item.h"
#include "ui/floor/floor.h"
#include "ui/floor/hand.h"
#include "ui/floor/live_part.h"
#include "ui/floor/typed_line.h"

#include <QApplication>
#include <QContextMenuEvent>
#include <QDropEvent>
#include <QGestureEvent>
#include <QMimeData>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

namespace throwline::ui {

namespace {

/// One notch of a wheel, eighths of a degree, makes the floor a fifth larger.
constexpr double kNotch = 120.0;
constexpr double kWheelStep = 1.2;

} // namespace

Pointer Floor::pointer_at(const QPointF& px, Qt::KeyboardModifiers keys, bool is_held) const {
    return {view().plan_at(px), px, keys, is_held};
}

void Floor::mousePressEvent(QMouseEvent* event) {
    pointer_px_ = event->position();
    pointer_by_keys_ = false;
    const bool is_first = event->button() == Qt::LeftButton;
    if (event->button() == Qt::MiddleButton || (is_first && space_is_held_)) {
        panning_from_ = event->position();
        space_was_used_ = true;
        show_cursor();
        return;
    }
    if (is_first && view().window_px.contains(event->position())) {
        close_typed_line();
        hand_->press(pointer_at(event->position(), event->modifiers(), true));
        show_cursor();
        tell_foot();
    }
}

void Floor::mouseMoveEvent(QMouseEvent* event) {
    pointer_px_ = event->position();
    pointer_is_here_ = true;
    pointer_by_keys_ = false;
    if (panning_from_) {
        const QPointF by = event->position() - *panning_from_;
        panning_from_ = event->position();
        pan(by);
        return;
    }
    if (!typed_->isVisible()) {
        hand_->move(pointer_at(event->position(), event->modifiers(),
                               event->buttons().testFlag(Qt::LeftButton)));
    }
    show_cursor();
    update();
}

void Floor::mouseReleaseEvent(QMouseEvent* event) {
    if (panning_from_) {
        panning_from_.reset();
        show_cursor();
        return;
    }
    if (event->button() == Qt::LeftButton && !typed_->isVisible()) {
        hand_->release(pointer_at(event->position(), event->modifiers(), false));
        show_cursor();
        tell_foot();
        update();
    }
}

void Floor::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) {
        return;
    }
    const Pointer pointer = pointer_at(event->position(), event->modifiers(), true);
    if (hand_->double_press(pointer)) {
        return;
    }
    if (hand_id_ != HandId::choose) {
        hand_->press(pointer);
    } else if (!bench_->under(pointer).empty() && foremost() != nullptr) {
        Q_EMIT card_wanted();
    }
}

void Floor::leaveEvent(QEvent*) {
    pointer_is_here_ = false;
    if (!bench_->is_dragging() && !typed_->isVisible()) {
        bench_->clear_marks();
    }
    update();
}

void Floor::wheelEvent(QWheelEvent* event) {
    const double notches = event->angleDelta().y() / kNotch;
    if (notches != 0.0) {
        zoom_about(event->position(), std::pow(kWheelStep, notches));
    } else if (event->angleDelta().x() != 0) {
        pan({event->angleDelta().x() / 2.0, 0.0});
    }
    event->accept();
}

bool Floor::gesture(QGestureEvent& event) {
    const auto* pinch = static_cast<QPinchGesture*>(event.gesture(Qt::PinchGesture));
    if (pinch == nullptr) {
        return false;
    }
    const QPointF centre = mapFromGlobal(pinch->centerPoint());
    pan(pinch->centerPoint() - pinch->lastCenterPoint());
    if (pinch->scaleFactor() > 0.0) {
        zoom_about(centre, pinch->scaleFactor());
    }
    return true;
}

bool Floor::event(QEvent* event) {
    if (event->type() == QEvent::Gesture && gesture(*static_cast<QGestureEvent*>(event))) {
        return true;
    }
    if (event->type() == QEvent::NativeGesture) {
        const auto* native = static_cast<QNativeGestureEvent*>(event);
        if (native->gestureType() == Qt::ZoomNativeGesture) {
            zoom_about(native->position(), 1.0 + native->value());
            return true;
        }
    }
    if (event->type() == QEvent::ShortcutOverride
        && wants_for_itself(*static_cast<QKeyEvent*>(event))) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void Floor::show_cursor() {
    Qt::CursorShape shape = hand_->cursor();
    if (panning_from_) {
        shape = Qt::ClosedHandCursor;
    } else if (space_is_held_) {
        shape = Qt::OpenHandCursor;
    }
    if (cursor().shape() != shape) {
        setCursor(shape);
    }
}

void Floor::contextMenuEvent(QContextMenuEvent* event) {
    const bool by_key = event->reason() == QContextMenuEvent::Keyboard;
    QPoint global = event->globalPos();
    if (by_key) {
        const QPoint middle = foremost() != nullptr ? shown_rect(*foremost()).center()
                                                    : view().window_px.center().toPoint();
        global = mapToGlobal(middle);
    } else {
        const std::vector<edit::Thing> under =
            bench_->under(pointer_at(event->pos(), event->modifiers(), false));
        const std::vector<edit::Thing>& chosen = desk_.chosen();
        const bool is_chosen = std::any_of(under.begin(), under.end(), [&](const auto& thing) {
            return std::find(chosen.begin(), chosen.end(), thing) != chosen.end();
        });
        if (under.empty()) {
            desk_.choose({});
        } else if (!is_chosen) {
            desk_.choose(edit::whole_groups(desk_.context(), std::span{&under.front(), 1}));
        }
    }
    Q_EMIT context_wanted(global, desk_.chosen());
}

void Floor::carry(const QPointF& px, Qt::KeyboardModifiers keys) {
    pointer_px_ = px;
    pointer_is_here_ = true;
    bench_->leave_out_of_snapping({});
    const Vec2 at = bench_->snapped(pointer_at(px, keys, false));
    bench_->show_ghost(edit::put_down(desk_.context(), *carried_, at));
}

void Floor::dragEnterEvent(QDragEnterEvent* event) {
    carried_ = carried_item(*event->mimeData());
    ghost_->start_anew();
    if (carried_ || !carried_files(*event->mimeData()).isEmpty()) {
        event->acceptProposedAction();
    }
}

void Floor::dragMoveEvent(QDragMoveEvent* event) {
    if (carried_) {
        carry(event->position(), event->modifiers());
    }
    event->acceptProposedAction();
}

void Floor::dragLeaveEvent(QDragLeaveEvent*) {
    carried_.reset();
    bench_->hide_ghost();
    bench_->clear_marks();
}

void Floor::dropEvent(QDropEvent* event) {
    carried_ = carried_item(*event->mimeData());
    if (carried_) {
        bench_->leave_out_of_snapping({});
        const Vec2 at = bench_->snapped(pointer_at(event->position(), event->modifiers(), false));
        bench_->take(edit::put_down(desk_.context(), *carried_, at));
        carried_.reset();
        setFocus(Qt::MouseFocusReason);
    } else {
        for (const QString& path : carried_files(*event->mimeData())) {
            Q_EMIT file_dropped(path);
        }
    }
    event->acceptProposedAction();
}

} // namespace throwline::ui
