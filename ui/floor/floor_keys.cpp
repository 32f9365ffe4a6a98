/// What the keyboard does on the floor.

#include "edit/moves.h"
#include "ui/floor/floor.h"
#include "ui/floor/floor_access.h"
#include "ui/floor/hand.h"
#include "ui/floor/typed_line.h"

#include <QFocusEvent>
#include <QKeyEvent>
#include <algorithm>

namespace throwline::ui {

namespace {

/// An arrow key shifts the sheet by this share of what is looked at.
constexpr double kPanShare = 0.1;

/// Steps right and up the page; nothing for other keys.
std::optional<QPointF> arrow_of(int key) {
    switch (key) {
    case Qt::Key_Left:
        return QPointF{-1.0, 0.0};
    case Qt::Key_Right:
        return QPointF{1.0, 0.0};
    case Qt::Key_Up:
        return QPointF{0.0, 1.0};
    case Qt::Key_Down:
        return QPointF{0.0, -1.0};
    default:
        return std::nullopt;
    }
}

bool is_plain(const QKeyEvent& event) {
    return !(event.modifiers() & (Qt::ControlModifier | Qt::MetaModifier));
}

} // namespace

/// How far an arrow key moves: whole millimetres or inches, as crews say them.
double Floor::nudge_m(bool far) const {
    if (desk_.plan()->units == UnitSystem::metric) {
        return far ? 0.1 : 0.01;
    }
    return far ? Length::inches(6).m() : Length::inches(0.5).m();
}

bool Floor::starts_typing(const QKeyEvent& event) const {
    if (!hand_->takes_typing() || !is_plain(event) || event.modifiers().testFlag(Qt::AltModifier)
        || event.text().isEmpty()) {
        return false;
    }
    const QChar first = event.text().front();
    return first.isDigit() || QStringLiteral("-.,'").contains(first);
}

bool Floor::wants_for_itself(const QKeyEvent& event) const {
    if (hand_->wants(event) || starts_typing(event)) {
        return true;
    }
    // With Shift, Home is the window's.
    const bool is_home =
        event.key() == Qt::Key_Home && !event.modifiers().testFlag(Qt::ShiftModifier);
    const bool is_ours = event.key() == Qt::Key_Escape || event.key() == Qt::Key_Space || is_home
                         || arrow_of(event.key()).has_value();
    return is_ours && is_plain(event) && !event.modifiers().testFlag(Qt::AltModifier);
}

void Floor::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Tab && event->modifiers().testFlag(Qt::ControlModifier)) {
        QWidget::focusNextPrevChild(true);
        return;
    }
    if (event->key() == Qt::Key_Backtab && event->modifiers().testFlag(Qt::ControlModifier)) {
        QWidget::focusNextPrevChild(false);
        return;
    }
    if (hand_->key(*event)) {
        tell_foot();
        return;
    }
    if (starts_typing(*event)) {
        open_typed_line(event->text());
        return;
    }
    if (!key_of_view(*event) && !key_of_arrow(*event)) {
        QWidget::keyPressEvent(event);
    }
}

bool Floor::key_of_view(const QKeyEvent& event) {
    if (!is_plain(event)) {
        return false;
    }
    switch (event.key()) {
    case Qt::Key_Escape:
        escape();
        return true;
    case Qt::Key_Space:
        if (!event.isAutoRepeat()) {
            space_is_held_ = true;
            space_was_used_ = false;
            show_cursor();
        }
        return true;
    case Qt::Key_Home:
        if (event.modifiers().testFlag(Qt::ShiftModifier)) {
            return false;
        }
        fit();
        return true;
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        zoom_in();
        return true;
    case Qt::Key_Minus:
        zoom_out();
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (hand_id_ == HandId::choose && foremost() != nullptr) {
            Q_EMIT card_wanted();
        } else {
            press_by_key();
        }
        return true;
    default:
        return false;
    }
}

bool Floor::key_of_arrow(const QKeyEvent& event) {
    const std::optional<QPointF> steps = arrow_of(event.key());
    if (!steps || event.modifiers().testFlag(Qt::AltModifier)) {
        return false;
    }
    const bool far = event.modifiers().testFlag(Qt::ShiftModifier);
    if (event.modifiers().testFlag(Qt::ControlModifier)) {
        pan({-steps->x() * view().window_px.width() * kPanShare,
             steps->y() * view().window_px.height() * kPanShare});
    } else if (hand_id_ != HandId::choose) {
        move_pointer_by(*steps, far);
    } else if (!desk_.chosen().empty()) {
        nudge(*steps, far);
    } else {
        pan({-steps->x() * view().window_px.width() * kPanShare,
             steps->y() * view().window_px.height() * kPanShare});
    }
    return true;
}

void Floor::nudge(const QPointF& steps, bool far) {
    const Vec2 by_m = Vec2{steps.x(), steps.y()} * nudge_m(far);
    bench_->take(edit::moved(desk_.context(), desk_.chosen(), by_m));
}

/// Moves the pointer of a hand that draws; it begins in the middle.
void Floor::move_pointer_by(const QPointF& steps, bool far) {
    if (!pointer_by_keys_ && !view().window_px.contains(pointer_px_)) {
        pointer_px_ = view().window_px.center();
    }
    pointer_by_keys_ = true;
    pointer_is_here_ = true;
    const double step_px = nudge_m(far) * view().px_per_m();
    pointer_px_ += QPointF{steps.x() * step_px, -steps.y() * step_px};
    bring_into_view(view().plan_at(pointer_px_));
    hand_->move(pointer_at(pointer_px_, Qt::NoModifier, false));
    update();
}

/// A press of the pointer where keys have moved it.
void Floor::press_by_key() {
    if (hand_id_ == HandId::choose) {
        return;
    }
    if (!view().window_px.contains(pointer_px_)) {
        pointer_px_ = view().window_px.center();
    }
    pointer_by_keys_ = true;
    hand_->press(pointer_at(pointer_px_, Qt::NoModifier, true));
    hand_->release(pointer_at(pointer_px_, Qt::NoModifier, false));
    tell_foot();
    update();
}

void Floor::keyReleaseEvent(QKeyEvent* event) {
    if (event->key() != Qt::Key_Space || event->isAutoRepeat()) {
        QWidget::keyReleaseEvent(event);
        return;
    }
    const bool was_tapped = space_is_held_ && !space_was_used_;
    space_is_held_ = false;
    if (was_tapped && pointer_by_keys_) {
        press_by_key();
    }
    show_cursor();
}

void Floor::escape() {
    panning_from_.reset();
    if (hand_->end()) {
        tell_foot();
        update();
    } else if (hand_id_ != HandId::choose) {
        set_hand(HandId::choose);
    } else {
        desk_.choose({});
    }
}

bool Floor::focusNextPrevChild(bool next) {
    if (!hasFocus() || things_.empty()) {
        return QWidget::focusNextPrevChild(next);
    }
    go_to_thing(next);
    return true;
}

void Floor::go_to_thing(bool next) {
    const auto count = static_cast<std::ptrdiff_t>(things_.size());
    const auto at = foremost() == nullptr ? things_.end()
                                          : std::find(things_.begin(), things_.end(), *foremost());
    std::ptrdiff_t index = at == things_.end() ? (next ? -1 : count) : at - things_.begin();
    index = (index + (next ? 1 : -1) + count) % count;
    const edit::Thing thing = things_[static_cast<std::size_t>(index)];
    desk_.choose({thing});
    if (const std::optional<Vec2> place = edit::place_of(desk_.context(), thing)) {
        bring_into_view(*place);
    }
}

void Floor::open_typed_line(const QString& text) {
    typed_->open(pointer_px_.toPoint(), text);
    update();
}

void Floor::close_typed_line() {
    if (typed_->isVisible()) {
        typed_->hide();
        setFocus();
    }
    tell_foot();
    update();
}

void Floor::focusInEvent(QFocusEvent*) {
    tell_focus(*this);
    update();
}

void Floor::focusOutEvent(QFocusEvent*) {
    space_is_held_ = false;
    show_cursor();
    update();
}

} // namespace throwline::ui
