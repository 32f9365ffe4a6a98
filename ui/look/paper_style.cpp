#include "ui/look/paper_style.h"

#include "ui/look/look.h"

#include <QFontMetrics>
#include <QPainter>
#include <QPolygonF>
#include <QStyleFactory>
#include <QStyleOption>
#include <algorithm>

namespace throwline::ui {

namespace {

constexpr int kSmallestTick_px = 14;
constexpr double kRing_px = 2.0;

/// A square around the middle of a rectangle, so that its one pixel wide edge falls on pixels.
QRectF square_in(const QRect& rect) {
    const int side = std::min(rect.width(), rect.height()) - 1;
    return QRectF{rect.x() + (rect.width() - side) / 2 + 0.5,
                  rect.y() + (rect.height() - side) / 2 + 0.5, side - 1.0, side - 1.0};
}

void set_up_edge(QPainter& painter, const QStyleOption& option) {
    const Theme theme = theme_of(option.palette);
    const bool is_pointed_at =
        (option.state & QStyle::State_Enabled) && (option.state & QStyle::State_MouseOver);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen{is_pointed_at ? choice_hue(theme) : edge_hue(theme), 1.0});
    painter.setBrush(option.palette.base());
}

void draw_tick(QPainter& painter, const QStyleOption& option) {
    painter.save();
    set_up_edge(painter, option);
    const QRectF box = square_in(option.rect);
    painter.drawRect(box);
    const double s = box.width();
    painter.setPen(QPen{option.palette.color(QPalette::Text), std::max(1.6, s / 7.0), Qt::SolidLine,
                        Qt::FlatCap, Qt::MiterJoin});
    if (option.state & QStyle::State_On) {
        painter.setBrush(Qt::NoBrush);
        painter.drawPolyline(QPolygonF{{box.topLeft() + QPointF{0.18, 0.52} * s,
                                        box.topLeft() + QPointF{0.42, 0.76} * s,
                                        box.topLeft() + QPointF{0.84, 0.22} * s}});
    } else if (option.state & QStyle::State_NoChange) {
        painter.drawLine(box.center() - QPointF{0.28 * s, 0.0},
                         box.center() + QPointF{0.28 * s, 0.0});
    }
    painter.restore();
}

void draw_one_of_many(QPainter& painter, const QStyleOption& option) {
    painter.save();
    set_up_edge(painter, option);
    const QRectF box = square_in(option.rect);
    painter.drawEllipse(box);
    if (option.state & QStyle::State_On) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(option.palette.text());
        painter.drawEllipse(box.center(), box.width() * 0.27, box.width() * 0.27);
    }
    painter.restore();
}

void draw_ring(QPainter& painter, const QStyleOption& option) {
    painter.save();
    painter.setPen(QPen{choice_hue(theme_of(option.palette)), kRing_px, Qt::SolidLine, Qt::FlatCap,
                        Qt::MiterJoin});
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF{option.rect}.adjusted(1.0, 1.0, -1.0, -1.0));
    painter.restore();
}

} // namespace

PaperStyle::PaperStyle() : QProxyStyle{QStringLiteral("Fusion")} {}

void PaperStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                               QPainter* painter, const QWidget* widget) const {
    if (element == PE_IndicatorCheckBox || element == PE_IndicatorItemViewItemCheck) {
        draw_tick(*painter, *option);
    } else if (element == PE_IndicatorRadioButton) {
        draw_one_of_many(*painter, *option);
    } else if (element == PE_FrameFocusRect) {
        draw_ring(*painter, *option);
    } else {
        QProxyStyle::drawPrimitive(element, option, painter, widget);
    }
}

int PaperStyle::pixelMetric(PixelMetric metric, const QStyleOption* option,
                            const QWidget* widget) const {
    const bool is_tick = metric == PM_IndicatorWidth || metric == PM_IndicatorHeight
                         || metric == PM_ExclusiveIndicatorWidth
                         || metric == PM_ExclusiveIndicatorHeight;
    if (is_tick && option != nullptr) {
        return std::max(kSmallestTick_px, option->fontMetrics.height() * 7 / 8);
    }
    return QProxyStyle::pixelMetric(metric, option, widget);
}

} // namespace throwline::ui
