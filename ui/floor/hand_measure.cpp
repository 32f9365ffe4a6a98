#include "ui/floor/hand_measure.h"

#include "ui/floor/floor_marks.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QPainter>
#include <cmath>

namespace throwline::ui {

namespace {

constexpr double kDragged_px = 6.0;

} // namespace

void MeasureHand::press(const Pointer& pointer) {
    pressed_px_ = pointer.px;
    if (!from_ || is_done_) {
        from_.reset();
        is_done_ = false;
        from_ = bench().snapped(pointer);
        go_to(*from_);
    } else {
        go_to(bench().snapped(pointer, from_));
        is_done_ = true;
    }
}

void MeasureHand::move(const Pointer& pointer) {
    if (!is_done_) {
        go_to(bench().snapped(pointer, from_));
    }
}

void MeasureHand::release(const Pointer& pointer) {
    if (from_ && !is_done_ && (pointer.px - pressed_px_).manhattanLength() > kDragged_px) {
        go_to(bench().snapped(pointer, from_));
        is_done_ = true;
    }
    if (is_done_) {
        bench().clear_marks();
        desk().say(result());
    }
}

void MeasureHand::go_to(const Vec2& to) {
    to_ = to;
    QStringList words;
    if (bench().snap()) {
        words << QString::fromStdString(bench().snap()->words);
    }
    bench().say_at_pointer(words);
}

QString MeasureHand::result() const {
    if (!from_) {
        return {};
    }
    const Vec2 away = to_ - *from_;
    return QStringLiteral("%1 (across %2, up %3)")
        .arg(bench().shown(away.norm()), bench().shown(std::abs(away.x())),
             bench().shown(std::abs(away.y())));
}

bool MeasureHand::wants(const QKeyEvent& event) const {
    return from_ && event.matches(QKeySequence::Copy);
}

bool MeasureHand::key(const QKeyEvent& event) {
    if (!wants(event)) {
        return false;
    }
    QGuiApplication::clipboard()->setText(result());
    desk().say(QStringLiteral("Copied: ") + result());
    return true;
}

bool MeasureHand::end() {
    const bool was_busy = from_.has_value();
    from_.reset();
    is_done_ = false;
    bench().clear_marks();
    return was_busy;
}

void MeasureHand::paint(QPainter& painter) const {
    const MarkInk ink{bench().view, bench().theme};
    if (from_) {
        const Vec2 elbow{to_.x(), from_->y()};
        paint_leg(painter, ink, *from_, elbow, bench().shown(std::abs(to_.x() - from_->x())));
        paint_leg(painter, ink, to_, elbow, bench().shown(std::abs(to_.y() - from_->y())));
        paint_measure(painter, ink, *from_, to_, bench().shown((to_ - *from_).norm()));
    }
    if (bench().snap() && !is_done_) {
        paint_snap(painter, ink, *bench().snap(), true);
    }
}

QString MeasureHand::hint() const {
    if (is_done_) {
        return QStringLiteral("Ctrl+C copies it; Esc takes it away");
    }
    return from_ ? QStringLiteral("Click where to measure to")
                 : QStringLiteral("Click where to measure from");
}

} // namespace throwline::ui
