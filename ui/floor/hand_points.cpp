#include "ui/floor/hand_points.h"

#include "base/length_text.h"
#include "edit/typed_place.h"
#include "ui/floor/floor_marks.h"

#include <QPainter>
#include <cmath>

namespace throwline::ui {

namespace {

/// Further than this between press and release the line was dragged, not clicked.
constexpr double kDragged_px = 6.0;
/// Points nearer than this are one.
constexpr double kSame_m = 0.001;

} // namespace

PointsHand::PointsHand(Bench& bench, const PointsDrawn& drawn) : Hand{bench}, drawn_{drawn} {}

void PointsHand::press(const Pointer& pointer) {
    pressed_px_ = pointer.px;
    move(pointer);
    add(pointer_at_);
}

void PointsHand::move(const Pointer& pointer) {
    const std::optional<Vec2> from = points_.empty() ? std::nullopt : std::optional{points_.back()};
    Vec2 at = bench().snapped(pointer, from);
    if (drawn_.closes && points_.size() >= drawn_.least
        && (bench().view.at(points_.front()) - pointer.px).manhattanLength() < kSnapReach_px) {
        at = points_.front();
    }
    go_to(at);
}

void PointsHand::go_to(const Vec2& point) {
    pointer_at_ = point;
    QStringList words;
    if (!points_.empty()) {
        const Vec2 edge = pointer_at_ - points_.back();
        words << bench().shown(edge.norm()) + QStringLiteral("   ")
                     + QString::fromStdString(degrees_text(Angle::radians(angle_of(edge))));
    }
    if (closes_at(point)) {
        words << QStringLiteral("closes the room");
    } else if (bench().snap()) {
        words << QString::fromStdString(bench().snap()->words);
    }
    bench().say_at_pointer(words);
    const std::vector<Vec2> points = with_pointer();
    if (!drawn_.closes && points.size() >= drawn_.least
        && (points.back() - points[points.size() - 2]).norm() > kSame_m) {
        bench().show_ghost(drawn_.make(desk().context(), points));
    } else {
        bench().hide_ghost();
    }
}

std::vector<Vec2> PointsHand::with_pointer() const {
    std::vector<Vec2> points = points_;
    if (!points.empty()) {
        points.push_back(pointer_at_);
    }
    return points;
}

bool PointsHand::closes_at(const Vec2& point) const {
    return drawn_.closes && points_.size() >= drawn_.least
           && (point - points_.front()).norm() < kSame_m;
}

void PointsHand::add(const Vec2& point) {
    if (closes_at(point)) {
        finish();
        return;
    }
    if (points_.empty() || (points_.back() - point).norm() > kSame_m) {
        points_.push_back(point);
    }
    if (drawn_.count > 0 && points_.size() >= drawn_.count) {
        finish();
    }
    Q_EMIT bench().changed();
}

void PointsHand::release(const Pointer& pointer) {
    if (!points_.empty() && (pointer.px - pressed_px_).manhattanLength() > kDragged_px) {
        move(pointer);
        add(pointer_at_);
    }
}

bool PointsHand::double_press(const Pointer&) {
    if (points_.size() >= drawn_.least) {
        finish();
    }
    return true;
}

bool PointsHand::wants(const QKeyEvent& event) const {
    return !points_.empty()
           && (event.key() == Qt::Key_Backspace || event.key() == Qt::Key_Return
               || event.key() == Qt::Key_Enter);
}

bool PointsHand::key(const QKeyEvent& event) {
    if (!wants(event)) {
        return false;
    }
    if (event.key() == Qt::Key_Backspace) {
        points_.pop_back();
        go_to(pointer_at_);
    } else {
        finish();
    }
    return true;
}

QString PointsHand::typed(const QString& text, bool final) {
    if (points_.empty()) {
        return {};
    }
    const Result<Vec2> to =
        edit::typed_place(text.toStdString(), points_.back(), pointer_at_, desk().plan()->units);
    if (!to) {
        return QString::fromStdString(to.error().message);
    }
    go_to(*to);
    if (final) {
        add(*to);
    }
    return {};
}

/// Takes what is drawn; what cannot be is kept, so that a point can be put right.
void PointsHand::finish() {
    if (points_.size() < drawn_.least) {
        desk().say(QStringLiteral("Draw at least %1 points first").arg(drawn_.least));
        return;
    }
    if (bench().take(drawn_.make(desk().context(), points_))) {
        forget();
    } else if (drawn_.count > 0) {
        forget();
    }
}

void PointsHand::forget() {
    points_.clear();
    bench().hide_ghost();
    bench().clear_marks();
}

bool PointsHand::end() {
    const bool was_busy = !points_.empty();
    forget();
    return was_busy;
}

void PointsHand::paint(QPainter& painter) const {
    const MarkInk ink{bench().view, bench().theme};
    const std::vector<Vec2> points = with_pointer();
    if (!points.empty()) {
        paint_being_drawn(painter, ink, points, drawn_.closes && points.size() > 2);
    }
    if (bench().snap()) {
        paint_snap(painter, ink, *bench().snap(), true);
    }
}

QString PointsHand::hint() const {
    if (points_.empty()) {
        return QString::fromUtf8(drawn_.first_hint);
    }
    if (drawn_.closes) {
        return QStringLiteral("Click corners or type %1; Enter closes the room")
            .arg(desk().plan()->units == UnitSystem::metric ? QStringLiteral("4 m 90°")
                                                            : QStringLiteral("12' 90°"));
    }
    return drawn_.count > 0 ? QStringLiteral("Click where it ends, or type how long it is")
                            : QStringLiteral("Click the next point, or type a length; Enter ends");
}

} // namespace throwline::ui
