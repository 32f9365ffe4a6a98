#include "ui/sheets/page_painter.h"

#include "ui/paint/painter.h"

#include <QMetaObject>
#include <QPainter>

namespace throwline::ui {

namespace {

QImage image_of(const PagePart& part) {
    const double px_per_mm = part.px_per_mm * part.device_pixel_ratio;
    QImage image{(part.part_mm.size() * px_per_mm).toSize().expandedTo({1, 1}),
                 QImage::Format_RGB32};
    image.fill(Qt::white);
    QPainter painter{&image};
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(px_per_mm, px_per_mm);
    painter.translate(-part.part_mm.topLeft());
    paint::paint_drawing(painter, *part.page);
    painter.end();
    image.setDevicePixelRatio(part.device_pixel_ratio);
    return image;
}

} // namespace

PagePainter::PagePainter(QObject* parent)
    : QObject{parent}, thread_{[this](const std::stop_token& stop) { work(stop); }} {}

PagePainter::~PagePainter() = default;

void PagePainter::ask(PagePart part) {
    waiting_.put(std::move(part));
}

void PagePainter::work(const std::stop_token& stop) {
    while (std::optional<PagePart> part = waiting_.take(stop)) {
        QImage image = image_of(*part);
        QMetaObject::invokeMethod(
            this,
            [this, made = PaintedPart{std::move(*part), std::move(image)}]() mutable {
                latest_ = std::move(made);
                Q_EMIT painted();
            },
            Qt::QueuedConnection);
    }
}

} // namespace throwline::ui
