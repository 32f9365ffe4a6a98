#include "ui/floor/floor_marks.h"

#include <QFontMetricsF>
#include <QLineF>
#include <QPainter>
#include <QPainterPath>
#include <QPolygonF>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::ui {

namespace {

constexpr double kLine_px = 1.4;
constexpr double kHalo_px = 5.0;
/// How far the barbs of a box that takes what it touches reach to each side.
constexpr double kBarb_px = 4.0;
/// Between two ticks along a way.
constexpr double kTickPitch_px = 34.0;

QColor faint(QColor colour, double strength) {
    colour.setAlphaF(static_cast<float>(strength));
    return colour;
}

QPolygonF on_screen(const FloorView& view, const std::vector<Vec2>& points) {
    QPolygonF made;
    for (const Vec2& point : points) {
        made << view.at(point);
    }
    return made;
}

QPen pen_of(const QColor& hue, double width_px, Qt::PenStyle style = Qt::SolidLine) {
    return {hue, width_px, style, Qt::FlatCap, Qt::RoundJoin};
}

QPointF unit(const QPointF& from, const QPointF& to) {
    const QPointF along = to - from;
    const double length_px = std::hypot(along.x(), along.y());
    return length_px > 0.0 ? along / length_px : QPointF{1.0, 0.0};
}

QPointF left_of(const QPointF& direction) {
    return {direction.y(), -direction.x()};
}

/// An open arrow head with its tip ahead, as on the sheets.
void paint_head(QPainter& painter, const QPointF& tip, const QPointF& ahead) {
    const QPointF back = tip - ahead * 7.0;
    const QPointF aside = left_of(ahead) * 3.0;
    painter.drawPolygon(QPolygonF{{tip, back + aside, back - aside}});
}

void paint_square(QPainter& painter, const QPointF& at, double half_px) {
    painter.drawRect(QRectF{at - QPointF{half_px, half_px}, QSizeF{2 * half_px, 2 * half_px}});
}

void paint_diamond(QPainter& painter, const QPointF& at, double half_px) {
    painter.drawPolygon(QPolygonF{{at + QPointF{-half_px, 0}, at + QPointF{0, -half_px},
                                   at + QPointF{half_px, 0}, at + QPointF{0, half_px}}});
}

/// A ring with a cross through it: where something points.
void paint_aim(QPainter& painter, const QPointF& at) {
    painter.drawEllipse(at, 5.5, 5.5);
    painter.drawLine(QLineF{at - QPointF{8.5, 0}, at + QPointF{8.5, 0}});
    painter.drawLine(QLineF{at - QPointF{0, 8.5}, at + QPointF{0, 8.5}});
}

/// A wedge that opens to the side that it widens.
void paint_wedge(QPainter& painter, const QPointF& at, const QPointF& from, bool left) {
    const QPointF ahead = unit(from, at);
    const QPointF aside = left_of(ahead) * (left ? 1.0 : -1.0);
    painter.drawPolygon(QPolygonF{{at - ahead * 6.0, at + ahead * 6.0, at + aside * 8.0}});
}

/// Two strokes across a wall: an edge of an opening.
void paint_edge(QPainter& painter, const QPointF& at) {
    painter.drawRoundedRect(QRectF{at - QPointF{3.5, 6.5}, QSizeF{7, 13}}, 2, 2);
}

/// A bar with a foot: a microphone on its pole.
void paint_microphone(QPainter& painter, const QPointF& at) {
    painter.drawRoundedRect(QRectF{at - QPointF{7.5, 3.5}, QSizeF{15, 7}}, 3.5, 3.5);
}

void paint_form(QPainter& painter, const QPointF& at, const QPointF& from, edit::HandleKind kind) {
    switch (kind) {
    case edit::HandleKind::corner:
        paint_square(painter, at, 4.5);
        return;
    case edit::HandleKind::aim:
        paint_aim(painter, at);
        return;
    case edit::HandleKind::coverage_left:
        paint_wedge(painter, at, from, true);
        return;
    case edit::HandleKind::coverage_right:
        paint_wedge(painter, at, from, false);
        return;
    case edit::HandleKind::pool:
        painter.drawEllipse(at, 5.5, 5.5);
        painter.drawEllipse(at, 2.0, 2.0);
        return;
    case edit::HandleKind::turn:
        painter.drawEllipse(at, 5.0, 5.0);
        return;
    case edit::HandleKind::microphone:
        paint_microphone(painter, at);
        return;
    case edit::HandleKind::path:
        paint_diamond(painter, at, 6.0);
        return;
    case edit::HandleKind::edge:
        paint_edge(painter, at);
        return;
    }
}

QColor reading_ink(Theme theme) {
    return paint::hue(sheet::Ink::lettering, theme);
}

/// A text in the middle of a line, along it, never upside down, on bare ground.
void paint_along(QPainter& painter, Theme theme, const QPointF& a, const QPointF& b,
                 const QString& text) {
    const QFontMetricsF metrics{painter.font()};
    const QRectF slip{0, 0, metrics.horizontalAdvance(text) + 10.0, metrics.height() + 2.0};
    painter.save();
    painter.translate((a + b) / 2.0);
    double turn_deg = std::atan2(b.y() - a.y(), b.x() - a.x()) * 180.0 / std::numbers::pi;
    if (turn_deg > 90.0 || turn_deg <= -90.0) {
        turn_deg += 180.0;
    }
    // Upright texts read from the right, as on the sheets.
    if (turn_deg == 90.0) {
        turn_deg = -90.0;
    }
    painter.rotate(turn_deg);
    painter.translate(-slip.width() / 2.0, -slip.height() / 2.0);
    painter.setPen(Qt::NoPen);
    painter.setBrush(floor_ground(theme));
    painter.drawRoundedRect(slip, 3.0, 3.0);
    painter.setPen(reading_ink(theme));
    painter.drawText(slip, Qt::AlignCenter, text);
    painter.restore();
}

} // namespace

void paint_choice(QPainter& painter, const MarkInk& ink, const Polygon& outline, bool is_locked) {
    const QPolygonF polygon = on_screen(ink.view, outline);
    const QColor hue = choice_hue(ink.theme);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen_of(faint(hue, 0.22), kHalo_px));
    painter.drawPolygon(polygon);
    painter.setPen(pen_of(hue, kLine_px, is_locked ? Qt::DashLine : Qt::SolidLine));
    painter.drawPolygon(polygon);
}

void paint_under_pointer(QPainter& painter, const MarkInk& ink, const Polygon& outline) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen_of(faint(choice_hue(ink.theme), 0.55), 1.0));
    painter.drawPolygon(on_screen(ink.view, outline));
}

bool has_stem(edit::HandleKind kind) {
    switch (kind) {
    case edit::HandleKind::aim:
    case edit::HandleKind::turn:
        return true;
    case edit::HandleKind::corner:
    case edit::HandleKind::coverage_left:
    case edit::HandleKind::coverage_right:
    case edit::HandleKind::pool:
    case edit::HandleKind::microphone:
    case edit::HandleKind::path:
    case edit::HandleKind::edge:
        return false;
    }
    return false;
}

void paint_handle(QPainter& painter, const MarkInk& ink, const edit::Handle& handle,
                  const std::optional<Vec2>& stem_from, bool is_pointed_at) {
    const QColor hue = choice_hue(ink.theme);
    const QPointF at = ink.view.at(handle.at);
    const QPointF from = stem_from ? ink.view.at(*stem_from) : at - QPointF{0.0, 1.0};
    painter.setPen(pen_of(faint(hue, 0.7), 1.0, Qt::DotLine));
    if (stem_from && has_stem(handle.kind)) {
        painter.drawLine(QLineF{from, at});
    }
    painter.setPen(pen_of(hue, kLine_px));
    painter.setBrush(is_pointed_at ? hue : floor_ground(ink.theme));
    paint_form(painter, at, from, handle.kind);
    painter.setBrush(Qt::NoBrush);
}

void paint_snap(QPainter& painter, const MarkInk& ink, const edit::Snap& snap, bool with_mark) {
    const QColor hue = choice_hue(ink.theme);
    painter.setPen(pen_of(hue, 1.0, Qt::DashLine));
    for (const edit::SnapLine& line : snap.lines) {
        painter.drawLine(QLineF{ink.view.at(line.from), ink.view.at(line.to)});
    }
    if (with_mark) {
        const QPointF at = ink.view.at(snap.at);
        painter.setPen(pen_of(hue, kLine_px));
        painter.setBrush(Qt::NoBrush);
        painter.drawLine(QLineF{at - QPointF{5, 5}, at + QPointF{5, 5}});
        painter.drawLine(QLineF{at - QPointF{5, -5}, at + QPointF{5, -5}});
    }
}

void paint_marquee(QPainter& painter, const MarkInk& ink, const Vec2& from, const Vec2& to,
                   bool touched) {
    const QColor hue = choice_hue(ink.theme);
    const QRectF box = QRectF{ink.view.at(from), ink.view.at(to)}.normalized();
    painter.setPen(pen_of(hue, 1.0));
    painter.setBrush(faint(hue, 0.08));
    painter.drawRect(box);
    painter.setBrush(Qt::NoBrush);
    if (touched) {
        const QPointF across{kBarb_px, 0.0};
        const QPointF up{0.0, kBarb_px};
        for (const double share : {0.25, 0.5, 0.75}) {
            const QPointF on_top{box.left() + share * box.width(), box.top()};
            const QPointF on_left{box.left(), box.top() + share * box.height()};
            const QPointF down{0.0, box.height()};
            const QPointF right{box.width(), 0.0};
            painter.drawLine(on_top - up, on_top + up);
            painter.drawLine(on_top + down - up, on_top + down + up);
            painter.drawLine(on_left - across, on_left + across);
            painter.drawLine(on_left + right - across, on_left + right + across);
        }
    }
}

void paint_being_drawn(QPainter& painter, const MarkInk& ink, const std::vector<Vec2>& points,
                       bool closed) {
    const QPolygonF polygon = on_screen(ink.view, points);
    const QColor hue = choice_hue(ink.theme);
    painter.setPen(pen_of(hue, 2.0));
    painter.setBrush(closed ? QBrush{faint(hue, 0.07)} : QBrush{Qt::NoBrush});
    if (closed) {
        painter.drawPolygon(polygon);
    } else {
        painter.drawPolyline(polygon);
    }
    painter.setBrush(floor_ground(ink.theme));
    painter.setPen(pen_of(hue, kLine_px));
    for (const QPointF& point : polygon) {
        paint_square(painter, point, 3.0);
    }
    painter.setBrush(Qt::NoBrush);
}

void paint_measure(QPainter& painter, const MarkInk& ink, const Vec2& from, const Vec2& to,
                   const QString& text) {
    const QPointF a = ink.view.at(from);
    const QPointF b = ink.view.at(to);
    const QColor hue = choice_hue(ink.theme);
    const QPointF aside = left_of(unit(a, b)) * 6.0;
    painter.setPen(pen_of(faint(floor_ground(ink.theme), 0.8), 6.0));
    painter.drawLine(QLineF{a, b});
    painter.setPen(pen_of(hue, 2.0));
    painter.drawLine(QLineF{a, b});
    painter.drawLine(QLineF{a - aside, a + aside});
    painter.drawLine(QLineF{b - aside, b + aside});
    paint_along(painter, ink.theme, a, b, text);
}

void paint_leg(QPainter& painter, const MarkInk& ink, const Vec2& from, const Vec2& to,
               const QString& text) {
    const QPointF a = ink.view.at(from);
    const QPointF b = ink.view.at(to);
    painter.setPen(pen_of(faint(choice_hue(ink.theme), 0.7), 1.0, Qt::DotLine));
    painter.drawLine(QLineF{a, b});
    const double room_px = QFontMetricsF{painter.font()}.horizontalAdvance(text) + 24.0;
    if (QLineF{a, b}.length() > room_px) {
        paint_along(painter, ink.theme, a, b, text);
    }
}

void paint_slip(QPainter& painter, Theme theme, const QPointF& near_px, const QStringList& lines,
                const QRectF& inside, bool is_refusal) {
    const QFontMetricsF metrics{painter.font()};
    const QString text = lines.join(QLatin1Char{'\n'});
    const double most_px = std::max(inside.width() * 0.45, 160.0);
    QRectF words =
        metrics.boundingRect(QRectF{0, 0, most_px, 1000}, Qt::AlignLeft | Qt::TextWordWrap, text);
    QRectF slip{0, 0, words.width() + 14.0, words.height() + 8.0};
    slip.moveTopLeft(near_px + QPointF{16.0, 18.0});
    if (slip.right() > inside.right() - 4.0) {
        slip.moveRight(near_px.x() - 12.0);
    }
    if (slip.bottom() > inside.bottom() - 4.0) {
        slip.moveBottom(near_px.y() - 12.0);
    }
    const QColor edge = is_refusal ? paint::line_hue(sheet::Ink::error, theme) : seam_hue(theme);
    painter.setPen(pen_of(edge, is_refusal ? 1.6 : 1.0));
    painter.setBrush(faint(panel_ground(theme), 0.96));
    painter.drawRoundedRect(slip, 4.0, 4.0);
    painter.setPen(reading_ink(theme));
    painter.drawText(slip.adjusted(7, 4, -5, -4), Qt::AlignLeft | Qt::TextWordWrap, text);
    painter.setBrush(Qt::NoBrush);
}

void paint_pointed_at(QPainter& painter, const MarkInk& ink, const Vec2& at, const QColor& hue) {
    const QPointF centre = ink.view.at(at);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen_of(faint(hue, 0.25), 9.0));
    painter.drawEllipse(centre, 20.0, 20.0);
    painter.setPen(pen_of(hue, 1.6));
    painter.drawEllipse(centre, 15.0, 15.0);
    painter.drawEllipse(centre, 25.0, 25.0);
}

void paint_walk(QPainter& painter, const MarkInk& ink, const std::vector<Vec2>& points) {
    const QPolygonF way = on_screen(ink.view, points);
    const QColor hue = paint::line_hue(sheet::Ink::people, ink.theme);
    painter.setBrush(Qt::NoBrush);
    QPen dotted{hue, 1.8, Qt::CustomDashLine, Qt::RoundCap};
    dotted.setDashPattern({0.1, 2.6});
    painter.setPen(dotted);
    painter.drawPolyline(way);
    painter.setPen(pen_of(hue, 1.1));
    painter.setBrush(floor_ground(ink.theme));
    double until_tick_px = kTickPitch_px / 2.0;
    for (qsizetype i = 0; i + 1 < way.size(); ++i) {
        const QPointF ahead = unit(way[i], way[i + 1]);
        const double length_px = QLineF{way[i], way[i + 1]}.length();
        for (; until_tick_px < length_px; until_tick_px += kTickPitch_px) {
            paint_head(painter, way[i] + ahead * until_tick_px, ahead);
        }
        until_tick_px -= length_px;
    }
    painter.setBrush(Qt::NoBrush);
}

} // namespace throwline::ui
