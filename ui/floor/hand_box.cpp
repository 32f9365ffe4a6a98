#include "ui/floor/hand_box.h"

#include "base/length_text.h"
#include "edit/make.h"
#include "ui/floor/floor_marks.h"

#include <QPainter>
#include <cmath>

namespace throwline::ui {

namespace {

constexpr double kDragged_px = 6.0;
constexpr double kSame_m = 0.001;

LengthReading reading_of(const plan::Plan& plan) {
    return {plan.units, true};
}

/// "2 m x 1.2 m": the two lengths; the same twice where only one is typed.
Result<Vec2> two_lengths(const std::string& text, const LengthReading& reading) {
    const std::size_t cross = text.find_first_of("xX*");
    const Result<Length> first = parse_length(text.substr(0, cross), reading);
    if (!first) {
        return tl::unexpected{first.error()};
    }
    if (cross == std::string::npos) {
        return Vec2{first->m(), first->m()};
    }
    const Result<Length> second = parse_length(text.substr(cross + 1), reading);
    if (!second) {
        return tl::unexpected{second.error()};
    }
    return Vec2{first->m(), second->m()};
}

double with_sign_of(double size, double sign) {
    return std::copysign(size, sign);
}

} // namespace

Result<edit::Step> BoxHand::step_to(const Vec2& to) const {
    switch (drawn_) {
    case Drawn::box:
        return edit::box_drawn(desk().context(), *from_, to, false);
    case Drawn::platform:
        return edit::box_drawn(desk().context(), *from_, to, true);
    case Drawn::column:
        return edit::cylinder_drawn(desk().context(), *from_, Length::metres((to - *from_).norm()));
    }
    return failure("nothing is drawn");
}

void BoxHand::press(const Pointer& pointer) {
    pressed_px_ = pointer.px;
    const Vec2 at = bench().snapped(pointer, from_);
    if (from_) {
        finish(at);
    } else {
        from_ = at;
        go_to(at);
    }
}

void BoxHand::move(const Pointer& pointer) {
    go_to(bench().snapped(pointer, from_));
}

void BoxHand::go_to(const Vec2& to) {
    to_ = to;
    QStringList words;
    if (from_) {
        const Vec2 size = (to_ - *from_).cwiseAbs();
        words << (drawn_ == Drawn::column
                      ? QStringLiteral("%1 across").arg(bench().shown(2.0 * size.norm()))
                      : QStringLiteral("%1 × %2").arg(bench().shown(size.x()),
                                                      bench().shown(size.y())));
    }
    if (bench().snap()) {
        words << QString::fromStdString(bench().snap()->words);
    }
    bench().say_at_pointer(words);
    if (from_ && (to_ - *from_).norm() > kSame_m) {
        bench().show_ghost(step_to(to_));
    } else {
        bench().hide_ghost();
    }
}

void BoxHand::release(const Pointer& pointer) {
    if (from_ && (pointer.px - pressed_px_).manhattanLength() > kDragged_px) {
        finish(bench().snapped(pointer, from_));
    }
}

void BoxHand::finish(const Vec2& to) {
    const Result<edit::Step> step = step_to(to);
    from_.reset();
    bench().take(step);
}

Result<Vec2> BoxHand::point_typed(const std::string& text) const {
    const LengthReading reading = reading_of(*desk().plan());
    if (drawn_ == Drawn::column) {
        const Result<Length> across = parse_length(text, reading);
        return across ? Result<Vec2>{*from_ + Vec2{across->m() / 2.0, 0.0}}
                      : tl::unexpected{across.error()};
    }
    const Result<Vec2> size = two_lengths(text, reading);
    if (!size) {
        return size;
    }
    const Vec2 towards = to_ - *from_;
    return *from_
           + Vec2{with_sign_of(size->x(), towards.x()), with_sign_of(size->y(), towards.y())};
}

QString BoxHand::typed(const QString& text, bool final) {
    if (!from_) {
        return {};
    }
    const Result<Vec2> to = point_typed(text.toStdString());
    if (!to) {
        return QString::fromStdString(to.error().message);
    }
    if (final) {
        finish(*to);
    } else {
        bench().show_ghost(step_to(*to));
    }
    return {};
}

bool BoxHand::end() {
    const bool was_busy = from_.has_value();
    from_.reset();
    bench().hide_ghost();
    bench().clear_marks();
    return was_busy;
}

void BoxHand::paint(QPainter& painter) const {
    const MarkInk ink{bench().view, bench().theme};
    if (from_ && drawn_ != Drawn::column) {
        const Vec2 a = *from_;
        paint_being_drawn(painter, ink, {a, {to_.x(), a.y()}, to_, {a.x(), to_.y()}}, true);
    } else if (from_) {
        paint_being_drawn(painter, ink, circle(*from_, (to_ - *from_).norm(), 48), true);
    }
    if (bench().snap()) {
        paint_snap(painter, ink, *bench().snap(), true);
    }
}

QString BoxHand::hint() const {
    if (drawn_ == Drawn::column) {
        return from_ ? QStringLiteral("Drag outwards, or type how wide it is")
                     : QStringLiteral("Press where the middle of the column is");
    }
    return from_ ? QStringLiteral("Drag to the other corner, or type its size: 2 m x 1 m")
                 : QStringLiteral("Press at one corner");
}

} // namespace throwline::ui
