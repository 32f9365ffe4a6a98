#include "ui/running_order/order_painter.h"

#include "ui/look/lozenge.h"
#include "ui/look/picture_image.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>

namespace throwline::ui {

namespace {

using sheet::Ink;

/// Between two ticks of a walk, and how long one is.
constexpr double kTick_px = 13.0;
constexpr double kBarb_px = 3.2;
/// A picture of a plan that is no longer there.
constexpr double kDimmed = 0.45;
constexpr double kGrip_px = 5.0;

QColor ink(const OrderPainting& what, Ink meaning) {
    return paint::line_hue(meaning, what.theme);
}

QColor faint(QColor colour, double share) {
    colour.setAlphaF(static_cast<float>(share));
    return colour;
}

/// The beat as a span: its name over a line that ends in small uprights.
void paint_head(QPainter& painter, const OrderPainting& what, std::size_t index) {
    const BeatBox& beat = what.view.layout.beats[index];
    const bool is_now = what.now && what.now->place.beat == static_cast<int>(index);
    QFont font = what.font;
    font.setBold(is_now);
    painter.setFont(font);
    painter.setPen(ink(what, Ink::lettering));
    const QRectF words = beat.head.adjusted(0, 0, 0, -4);
    painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine,
                     what.view.names[index]);
    const double y = beat.head.bottom() - 2.0;
    painter.setPen(QPen{ink(what, Ink::built), is_now ? 2.2 : 1.4, Qt::SolidLine, Qt::FlatCap});
    painter.drawLine(QPointF{beat.head.left(), y}, QPointF{beat.head.right(), y});
    painter.drawLine(QPointF{beat.head.left(), y - 3.0}, QPointF{beat.head.left(), y + 3.0});
    painter.drawLine(QPointF{beat.head.right(), y - 3.0}, QPointF{beat.head.right(), y + 3.0});
}

void paint_walk(QPainter& painter, const OrderPainting& what, std::size_t index) {
    const QRectF& walk = what.view.layout.beats[index].walk;
    const double y = walk.bottom() - 2.0;
    const bool somebody = !what.view.walks[index].isEmpty();
    const QColor hue = ink(what, somebody ? Ink::people : Ink::ground);
    painter.setPen(QPen{hue, 1.6, Qt::DotLine, Qt::RoundCap});
    const QPointF from{walk.left() + 9.0, y};
    const QPointF to{walk.right() - 3.0, y};
    painter.drawLine(from, to);
    if (!somebody) {
        return;
    }
    painter.setPen(QPen{hue, 1.4, Qt::SolidLine, Qt::RoundCap});
    for (double x = from.x() + kTick_px; x < to.x() - 2.0; x += 2.0 * kTick_px) {
        painter.drawLine(QPointF{x - kBarb_px, y - kBarb_px}, QPointF{x, y});
        painter.drawLine(QPointF{x - kBarb_px, y + kBarb_px}, QPointF{x, y});
    }
    painter.setFont(lettering_font(what.font));
    painter.setPen(ink(what, Ink::people));
    painter.drawText(walk.adjusted(2, 0, 2, -4), Qt::AlignHCenter | Qt::AlignVCenter,
                     what.view.walks[index]);
}

void paint_no_picture(QPainter& painter, const OrderPainting& what, const QRectF& box,
                      bool is_waiting) {
    painter.fillRect(box, faint(ink(what, Ink::ground), 0.14));
    if (!is_waiting) {
        painter.setPen(QPen{ink(what, Ink::note), 1.0, Qt::DashLine});
        painter.drawLine(box.topLeft(), box.bottomRight());
        painter.drawLine(box.bottomLeft(), box.topRight());
    }
}

void paint_picture(QPainter& painter, const OrderPainting& what, const QRectF& box,
                   const plan::Id<plan::Shot>& shot) {
    const FramePicture* picture = what.pictures.of(shot);
    if (picture == nullptr || picture->image.isNull()) {
        paint_no_picture(painter, what, box, picture == nullptr || picture->plan != what.plan);
        return;
    }
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    const double opacity = painter.opacity();
    if (picture->plan != what.plan) {
        painter.setOpacity(opacity * kDimmed);
    }
    paint_in_box(painter, box, picture->image);
    painter.setOpacity(opacity);
}

void paint_lettering(QPainter& painter, const OrderPainting& what, const QRectF& box,
                     const ShotWords& words) {
    QFont font = lettering_font(what.font);
    const double step = QFontMetricsF{font}.height();
    font.setBold(true);
    painter.setFont(font);
    painter.setPen(ink(what, Ink::lettering));
    double y = box.top() - 1.0;
    painter.drawText(QRectF{box.left(), y, box.width() + 2.0, step}, Qt::AlignLeft, words.id);
    font.setBold(false);
    painter.setFont(font);
    painter.setPen(ink(what, Ink::dimension));
    for (const QString& line : words.lines) {
        y += step;
        if (y + step > box.bottom() + 4.0) {
            return;
        }
        painter.drawText(QRectF{box.left(), y, box.width() + 2.0, step}, Qt::AlignLeft, line);
    }
}

/// A picture hung on its beat by two threads.
void paint_shot(QPainter& painter, const OrderPainting& what, const OrderPlace& place) {
    const BeatBox& beat = what.view.layout.beats[static_cast<std::size_t>(place.beat)];
    const auto s = static_cast<std::size_t>(place.shot);
    const ShotBox& box = beat.shots[s];
    const bool is_now = what.now && what.now->place == place;
    const double rail = beat.head.bottom() - 2.0;
    painter.setPen(QPen{ink(what, Ink::ground), 1.0});
    for (const double share : {0.12, 0.88}) {
        const double x = box.picture.left() + share * box.picture.width();
        painter.drawLine(QPointF{x, rail + 1.0}, QPointF{x, box.picture.top()});
    }
    if (what.dragged == place) {
        painter.setOpacity(0.35);
    }
    paint_picture(painter, what, box.picture,
                  what.view.order[static_cast<std::size_t>(place.beat)].shots[s].shot);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen{is_now ? choice_hue(what.theme) : ink(what, Ink::standing),
                        is_now ? 2.5 : 1.0, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin});
    painter.drawRect(box.picture);
    paint_lettering(painter, what, box.lettering,
                    what.view.words[static_cast<std::size_t>(place.beat)][s]);
    painter.setOpacity(1.0);
}

void paint_spot(QPainter& painter, const OrderPainting& what, const FindingSpot& spot) {
    painter.setFont(lettering_font(what.font));
    if (spot.finding == what.finding_pointed_at) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(faint(choice_hue(what.theme), 0.35));
        painter.drawRoundedRect(spot.box.adjusted(-3, -3, 3, 3), 5, 5);
    }
    paint_lozenge(painter, spot.centre, spot.number, spot.severity, what.theme);
    if (spot.more == 0 || !spot.place.is_shot()) {
        return;
    }
    const QString more = QStringLiteral("+%1").arg(spot.more);
    const QFontMetricsF metrics{painter.font()};
    const QRectF box{spot.box.left() - metrics.horizontalAdvance(more) - 5.0, spot.box.top() + 1.0,
                     metrics.horizontalAdvance(more) + 4.0, spot.box.height() - 2.0};
    painter.setPen(Qt::NoPen);
    painter.setBrush(floor_ground(what.theme));
    painter.drawRoundedRect(box, 3, 3);
    painter.setPen(severity_hue(spot.severity, what.theme));
    painter.drawText(box, Qt::AlignCenter, more);
}

void paint_now(QPainter& painter, const OrderPainting& what) {
    if (!what.now) {
        return;
    }
    const double x = what.view.layout.x_of(*what.now);
    const QColor hue = choice_hue(what.theme);
    painter.setPen(QPen{hue, 2.0, Qt::SolidLine, Qt::FlatCap});
    painter.drawLine(QPointF{x, 0.0}, QPointF{x, what.view.layout.height});
    painter.setPen(Qt::NoPen);
    painter.setBrush(hue);
    QPainterPath grip;
    grip.moveTo(x - kGrip_px, 0.0);
    grip.lineTo(x + kGrip_px, 0.0);
    grip.lineTo(x + kGrip_px, kGrip_px);
    grip.lineTo(x, 2.0 * kGrip_px);
    grip.lineTo(x - kGrip_px, kGrip_px);
    grip.closeSubpath();
    painter.drawPath(grip);
}

void paint_focus(QPainter& painter, const OrderPainting& what) {
    if (!what.focus) {
        return;
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen{choice_hue(what.theme), 1.4, Qt::DashLine});
    const double out = what.focus.is_shot() ? 4.0 : 1.0;
    painter.drawRoundedRect(what.view.layout.box(what.focus).adjusted(-4, -out, 4, out), 3, 3);
}

} // namespace

void paint_order(QPainter& painter, const OrderPainting& what, const QRectF& window) {
    painter.setRenderHint(QPainter::Antialiasing);
    const OrderLayout& layout = what.view.layout;
    for (std::size_t b = 0; b < layout.beats.size(); ++b) {
        const BeatBox& beat = layout.beats[b];
        if (b > 0 && beat.walk.intersects(window)) {
            paint_walk(painter, what, b);
        }
        if (!beat.whole.intersects(window)) {
            continue;
        }
        paint_head(painter, what, b);
        for (std::size_t s = 0; s < beat.shots.size(); ++s) {
            if (beat.shots[s].whole.adjusted(-4, -4, 4, 4).intersects(window)) {
                paint_shot(painter, what, {static_cast<int>(b), static_cast<int>(s)});
            }
        }
    }
    paint_focus(painter, what);
    paint_now(painter, what);
    for (const FindingSpot& spot : what.view.spots) {
        paint_spot(painter, what, spot);
    }
    if (what.drop) {
        painter.fillRect(what.drop->line, choice_hue(what.theme));
    }
}

} // namespace throwline::ui
