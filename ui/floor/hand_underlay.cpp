#include "ui/floor/hand_underlay.h"

#include "edit/typed_place.h"
#include "edit/underlay.h"
#include "ui/floor/floor_marks.h"

#include <QPainter>

namespace throwline::ui {

namespace {

/// Further than this between press and release the picture was dragged, not a place clicked.
constexpr double kDragged_px = 6.0;

} // namespace

void UnderlayHand::press(const Pointer& pointer) {
    pressed_ = pointer;
    move(pointer);
}

/// Places of the picture are where the pointer is: what stands on the floor does not draw them.
void UnderlayHand::move(const Pointer& pointer) {
    pointer_at_ = pointer.at;
    if (pressed_ && pointer.is_held) {
        if (!bench().is_dragging() && (pointer.px - pressed_->px).manhattanLength() > kDragged_px) {
            forget();
            bench().begin_drag({}, Follow::whole);
        }
        if (bench().is_dragging()) {
            const Vec2 by = pointer.at - pressed_->at;
            bench().say_at_pointer({bench().shown(by.norm())});
            bench().preview(edit::underlay_moved(desk().context(), by));
        }
    }
    Q_EMIT bench().changed();
}

void UnderlayHand::release(const Pointer& pointer) {
    if (!pressed_) {
        return;
    }
    const Vec2 by = pointer.at - pressed_->at;
    pressed_.reset();
    if (bench().is_dragging()) {
        bench().take(edit::underlay_moved(desk().context(), by));
        return;
    }
    if (!from_ || to_) {
        forget();
        from_ = pointer.at;
    } else {
        to_ = pointer.at;
    }
    Q_EMIT bench().changed();
}

QString UnderlayHand::typed(const QString& text, bool final) {
    if (!from_ || !to_) {
        return {};
    }
    const auto place = edit::typed_place(text.toStdString(), *from_, *to_, desk().plan()->units);
    true_to_ = place ? std::optional{*place} : std::nullopt;
    Q_EMIT bench().changed();
    if (!place) {
        return QString::fromStdString(place.error().message);
    }
    if (final) {
        const auto step = edit::underlay_placed(desk().context(), *from_, *to_, *place);
        if (!step) {
            return QString::fromStdString(step.error().message);
        }
        bench().take(step);
        forget();
    }
    return {};
}

void UnderlayHand::forget() {
    from_.reset();
    to_.reset();
    true_to_.reset();
    bench().clear_marks();
}

bool UnderlayHand::end() {
    const bool was_busy = from_ || bench().is_dragging();
    pressed_.reset();
    bench().end_drag();
    forget();
    return was_busy;
}

void UnderlayHand::paint(QPainter& painter) const {
    if (!from_) {
        return;
    }
    const MarkInk ink{bench().view, bench().theme};
    const Vec2 shown = to_.value_or(pointer_at_);
    paint_measure(painter, ink, *from_, shown, bench().shown((shown - *from_).norm()));
    if (true_to_) {
        paint_being_drawn(painter, ink, {*from_, *true_to_}, false);
    }
}

QString UnderlayHand::hint() const {
    if (!desk().plan()->underlay) {
        return QStringLiteral("None yet: Draw, Scanned plan, Choose");
    }
    if (to_) {
        return QStringLiteral("Type their true distance: %1, or %2 if level")
            .arg(desk().plan()->units == UnitSystem::metric ? QStringLiteral("3.2 m")
                                                            : QStringLiteral("10' 6\""),
                 desk().plan()->units == UnitSystem::metric ? QStringLiteral("3.2 m 0\u00B0")
                                                            : QStringLiteral("10' 6\" 0\u00B0"));
    }
    return from_ ? QStringLiteral("Click the other end of what is known")
                 : QStringLiteral("Drag the scan, or click one end of a known length");
}

} // namespace throwline::ui
