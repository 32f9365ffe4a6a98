#include "ui/look/picture_image.h"

#include <QPainter>
#include <cmath>

namespace throwline::ui {

namespace {

/// Of its size, in device pixels, a picture may be off the box it was made for.
constexpr double kRounding_px = 1.0;

} // namespace

QImage image_of(const sheet::Pixels& pixels) {
    // The copy is what makes it safe to hand over: the first one only borrows the bytes.
    return QImage{pixels.rgb.data(), pixels.width, pixels.height, 3 * pixels.width,
                  QImage::Format_RGB888}
        .convertToFormat(QImage::Format_RGB32);
}

void paint_in_box(QPainter& painter, const QRectF& box, const QImage& image) {
    const QTransform to_device = painter.deviceTransform();
    const QRectF on_device = to_device.mapRect(box);
    const bool fits = std::abs(on_device.width() - image.width()) <= kRounding_px
                      && std::abs(on_device.height() - image.height()) <= kRounding_px;
    if (!fits) {
        painter.drawImage(box, image);
        return;
    }
    const QRectF whole{QPointF{std::round(on_device.left()), std::round(on_device.top())},
                       QSizeF{image.size()}};
    painter.drawImage(to_device.inverted().mapRect(whole), image);
}

} // namespace throwline::ui
