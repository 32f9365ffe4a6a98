#include "ui/look/picture_image.h"

namespace throwline::ui {

QImage image_of(const sheet::Pixels& pixels) {
    // The copy is what makes it safe to hand over: the first one only borrows the bytes.
    return QImage{pixels.rgb.data(), pixels.width, pixels.height, 3 * pixels.width,
                  QImage::Format_RGB888}
        .convertToFormat(QImage::Format_RGB32);
}

} // namespace throwline::ui
