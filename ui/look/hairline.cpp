#include "ui/look/hairline.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

namespace throwline::ui {

void paint_hairline(QPainter& painter, const QLineF& line, const QColor& hue) {
    const QTransform to_device = painter.deviceTransform();
    const QLineF on = to_device.map(line);
    const double ratio = on.length() / std::max(line.length(), 1e-9);
    const double wide = std::max(1.0, std::floor(ratio));
    const bool upright = std::abs(on.dx()) < std::abs(on.dy());
    const QPointF first{std::min(on.x1(), on.x2()), std::min(on.y1(), on.y2())};
    const QPointF last{std::max(on.x1(), on.x2()), std::max(on.y1(), on.y2())};
    // A line goes through the middle of its width.
    const QPointF from = upright
                             ? QPointF{std::round(first.x() - wide / 2.0), std::round(first.y())}
                             : QPointF{std::round(first.x()), std::round(first.y() - wide / 2.0)};
    const QSizeF size = upright ? QSizeF{wide, std::round(last.y()) - from.y()}
                                : QSizeF{std::round(last.x()) - from.x(), wide};
    // Only where it must be: with each switch Qt works out anew what is clipped.
    const bool was_smooth = painter.testRenderHint(QPainter::Antialiasing);
    if (was_smooth) {
        painter.setRenderHint(QPainter::Antialiasing, false);
    }
    painter.fillRect(to_device.inverted().mapRect(QRectF{from, size}), hue);
    if (was_smooth) {
        painter.setRenderHint(QPainter::Antialiasing);
    }
}

} // namespace throwline::ui
