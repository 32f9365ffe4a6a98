#include "ui/look/lozenge.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPolygonF>

namespace throwline::ui {

namespace {

QPolygonF outline(const QPointF& centre, const QSizeF& size, double shrink_px) {
    const double x = size.width() / 2.0 - shrink_px;
    const double y = size.height() / 2.0 - shrink_px;
    const double shoulder = x - y * 0.8;
    return QPolygonF{{centre + QPointF{-x, 0.0}, centre + QPointF{-shoulder, -y},
                      centre + QPointF{shoulder, -y}, centre + QPointF{x, 0.0},
                      centre + QPointF{shoulder, y}, centre + QPointF{-shoulder, y}}};
}

QString digits(int number) {
    return QString::number(number);
}

} // namespace

QColor severity_hue(checks::Severity severity, Theme theme) {
    switch (severity) {
    case checks::Severity::error:
        return paint::line_hue(sheet::Ink::error, theme);
    case checks::Severity::caution:
        return paint::line_hue(sheet::Ink::caution, theme);
    case checks::Severity::note:
        return paint::line_hue(sheet::Ink::note, theme);
    }
    return {};
}

QSizeF lozenge_size(const QFontMetricsF& font, int number) {
    const double height = font.height() * 1.05;
    return {font.horizontalAdvance(digits(number)) + height, height};
}

void paint_lozenge(QPainter& painter, const QPointF& centre, int number, checks::Severity severity,
                   Theme theme) {
    const QFontMetricsF metrics{painter.font()};
    const QSizeF size = lozenge_size(metrics, number);
    const QColor hue = severity_hue(severity, theme);
    const bool is_error = severity == checks::Severity::error;
    const QColor ground = floor_ground(theme);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen{hue, is_error ? 1.5 : 1.2});
    painter.setBrush(is_error ? hue : ground);
    painter.drawPolygon(outline(centre, size, 0.75));
    if (severity == checks::Severity::caution) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen{hue, 1.0});
        painter.drawPolygon(outline(centre, size, 3.0));
    }
    QFont font = painter.font();
    font.setBold(is_error);
    painter.setFont(font);
    painter.setPen(is_error ? ground : paint::hue(sheet::Ink::lettering, theme));
    painter.drawText(QRectF{centre - QPointF{size.width(), size.height()} / 2.0, size},
                     Qt::AlignCenter, digits(number));
    painter.restore();
}

} // namespace throwline::ui
