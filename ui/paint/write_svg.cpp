#include "ui/paint/paint.h"
#include "ui/paint/painter.h"

#include <QBuffer>
#include <QPainter>
#include <QSvgGenerator>
#include <cmath>

namespace throwline::paint {

namespace {

/// Makes the size of the picture, which Qt keeps in whole dots, exact to a hundredth of a
/// millimetre.
constexpr int kDotsPerInch = 2540;
constexpr double kDotsPerMillimetre = 100.0;

} // namespace

Result<std::string> rendered_svg(const PaintSession& /*session*/, const sheet::Drawing& drawing) {
    QByteArray bytes;
    QBuffer buffer{&bytes};
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setResolution(kDotsPerInch);
    generator.setSize(QSize{static_cast<int>(std::lround(drawing.width_mm * kDotsPerMillimetre)),
                            static_cast<int>(std::lround(drawing.height_mm * kDotsPerMillimetre))});
    generator.setViewBox(QRectF{0.0, 0.0, drawing.width_mm, drawing.height_mm});
    generator.setTitle(QString::fromStdString(drawing.title));
    generator.setDescription(QString::fromStdString(drawing.subject));
    QPainter painter;
    if (!painter.begin(&generator)) {
        return failure("the SVG cannot be painted");
    }
    painter.fillRect(QRectF{0.0, 0.0, drawing.width_mm, drawing.height_mm},
                     ground_of_sheet(Theme::light));
    paint_drawing(painter, drawing);
    painter.end();
    return bytes.toStdString();
}

} // namespace throwline::paint
