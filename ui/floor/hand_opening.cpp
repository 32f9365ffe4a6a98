#include "ui/floor/hand_opening.h"

#include "base/length_text.h"
#include "edit/make.h"
#include "ui/floor/floor_marks.h"

#include <QPainter>

namespace throwline::ui {

namespace {

/// Usual widths; common practice, no source.
Length usual_width(plan::OpeningKind kind, UnitSystem units) {
    const bool metric = units == UnitSystem::metric;
    switch (kind) {
    case plan::OpeningKind::door:
        return metric ? Length::metres(0.9) : Length::feet(3);
    case plan::OpeningKind::window:
        return metric ? Length::metres(1.2) : Length::feet(4);
    case plan::OpeningKind::opening:
        return metric ? Length::metres(1.5) : Length::feet(5);
    }
    return Length::metres(1);
}

} // namespace

OpeningHand::OpeningHand(Bench& bench, plan::OpeningKind kind)
    : Hand{bench}, kind_{kind}, width_{usual_width(kind, bench.desk().plan()->units)} {}

Result<edit::Step> OpeningHand::step() const {
    return edit::opening_added(desk().context(), kind_, at_, width_);
}

void OpeningHand::press(const Pointer& pointer) {
    at_ = pointer.at;
    const Result<edit::Step> made = step();
    outline_.clear();
    bench().take(made);
}

void OpeningHand::move(const Pointer& pointer) {
    at_ = pointer.at;
    show();
}

void OpeningHand::show() {
    const Result<edit::Step> made = step();
    outline_.clear();
    if (made && !made->made.empty()) {
        const edit::Context context{made->plan, *desk().catalogue(), desk().now()};
        outline_ = edit::outline_of(context, made->made.front());
    }
    bench().say_at_pointer({bench().shown(width_.m()) + QStringLiteral(" wide")});
}

QString OpeningHand::typed(const QString& text, bool final) {
    const Result<Length> width = parse_length(text.toStdString(), {desk().plan()->units, true});
    if (!width) {
        return QString::fromStdString(width.error().message);
    }
    if (!(width->m() > 0.0)) {
        return QStringLiteral("An opening is wider than nothing");
    }
    width_ = *width;
    show();
    if (final) {
        Q_EMIT bench().changed();
    }
    return {};
}

bool OpeningHand::end() {
    outline_.clear();
    bench().clear_marks();
    return false;
}

void OpeningHand::paint(QPainter& painter) const {
    if (!outline_.empty()) {
        paint_choice(painter, {bench().view, bench().theme}, outline_, false);
    }
}

QString OpeningHand::hint() const {
    return QStringLiteral("Click on a wall; type how wide it is");
}

} // namespace throwline::ui
