#include "ui/paint/paint.h"
#include "ui/paint/painter.h"

#include <QBuffer>
#include <QImage>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace throwline::paint {

namespace {

constexpr double kMillimetresPerInch = 25.4;

Result<QImage> blank(const sheet::Drawing& drawing, double dots_per_inch) {
    const double width_px = std::round(drawing.width_mm / kMillimetresPerInch * dots_per_inch);
    const double height_px = std::round(drawing.height_mm / kMillimetresPerInch * dots_per_inch);
    if (!(std::min(width_px, height_px) >= 1.0
          && std::max(width_px, height_px) <= kLargestSide_px)) {
        return failure(fmt::format("a picture of {:.0f} by {:.0f} dots cannot be made; each side "
                                   "must be 1 to {} dots, so take another resolution",
                                   width_px, height_px, kLargestSide_px));
    }
    if (width_px * height_px > kMostPicturePixels) {
        const double most_dpi =
            std::sqrt(kMostPicturePixels / (drawing.width_mm * drawing.height_mm))
            * kMillimetresPerInch;
        return failure(fmt::format("a picture of {:.0f} by {:.0f} dots takes too much memory; at "
                                   "most {:.0f} dots per inch can be had of this sheet, or take "
                                   "PDF, which is sharp at any size",
                                   width_px, height_px, std::floor(most_dpi)));
    }
    QImage image{static_cast<int>(width_px), static_cast<int>(height_px), QImage::Format_RGB32};
    if (image.isNull()) {
        return failure("there is not enough memory for the picture; take a lower resolution");
    }
    const int dots_per_metre = static_cast<int>(std::lround(dots_per_inch / 0.0254));
    image.setDotsPerMeterX(dots_per_metre);
    image.setDotsPerMeterY(dots_per_metre);
    image.fill(ground_of_sheet(Theme::light));
    return image;
}

} // namespace

Result<std::string> rendered_png(const PaintSession& /*session*/, const sheet::Drawing& drawing,
                                 double dots_per_inch) {
    Result<QImage> image = blank(drawing, dots_per_inch);
    if (!image) {
        return tl::unexpected{image.error()};
    }
    image->setText(QStringLiteral("Title"), QString::fromStdString(drawing.title));
    QPainter painter{&*image};
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(dots_per_inch / kMillimetresPerInch, dots_per_inch / kMillimetresPerInch);
    paint_drawing(painter, drawing);
    painter.end();
    QByteArray bytes;
    QBuffer buffer{&bytes};
    buffer.open(QIODevice::WriteOnly);
    if (!image->save(&buffer, "PNG")) {
        return failure("the PNG cannot be written");
    }
    return bytes.toStdString();
}

} // namespace throwline::paint
