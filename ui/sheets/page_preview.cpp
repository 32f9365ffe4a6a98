#include "ui/sheets/page_preview.h"

#include "ui/look/look.h"
#include "ui/paint/painter.h"

#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

namespace throwline::ui {

namespace {

constexpr double kAround_px = 16.0;
constexpr double kMostZoom = 12.0;
/// A picture of the page is made no larger than this; beyond, only what is looked at is painted.
constexpr double kMostPixels = 24e6;

} // namespace

PagePreview::PagePreview(QWidget* parent) : QWidget{parent} {
    setMinimumSize(240, 200);
    setAccessibleName(tr("Preview of the page"));
    setFocusPolicy(Qt::StrongFocus);
}

void PagePreview::show(const sheet::Drawing* page) {
    page_ = page;
    picture_ = {};
    update();
}

void PagePreview::set_zoom(double zoom) {
    zoom_ = std::clamp(zoom, 1.0, kMostZoom);
    if (zoom_ == 1.0) {
        shift_ = {};
    }
    picture_ = {};
    update();
}

double PagePreview::fitting_px_per_mm() const {
    return std::min((width() - 2.0 * kAround_px) / page_->width_mm,
                    (height() - 2.0 * kAround_px) / page_->height_mm);
}

QRectF PagePreview::paper_rect() const {
    const double px_per_mm = fitting_px_per_mm() * zoom_;
    const QSizeF size{page_->width_mm * px_per_mm, page_->height_mm * px_per_mm};
    return {QPointF{(width() - size.width()) / 2.0, (height() - size.height()) / 2.0} + shift_,
            size};
}

void PagePreview::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter{this};
    const Theme theme = theme_of(palette());
    painter.fillRect(rect(), panel_ground(theme));
    if (page_ == nullptr) {
        return;
    }
    const QRectF paper = paper_rect();
    painter.fillRect(paper.translated(3, 4), QColor{0, 0, 0, 50});
    painter.fillRect(paper, Qt::white);
    const double ratio = devicePixelRatioF();
    const double px_per_mm = fitting_px_per_mm() * zoom_;
    if (picture_.isNull() && paper.width() * paper.height() * ratio * ratio <= kMostPixels) {
        picture_ = QImage{(paper.size() * ratio).toSize(), QImage::Format_ARGB32_Premultiplied};
        picture_.setDevicePixelRatio(ratio);
        picture_.fill(Qt::white);
        QPainter onto{&picture_};
        onto.setRenderHint(QPainter::Antialiasing);
        onto.scale(px_per_mm, px_per_mm);
        paint::paint_drawing(onto, *page_);
    }
    if (!picture_.isNull()) {
        painter.drawImage(paper.topLeft(), picture_);
    } else {
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setClipRect(paper);
        painter.translate(paper.topLeft());
        painter.scale(px_per_mm, px_per_mm);
        paint::paint_drawing(painter, *page_);
        painter.resetTransform();
    }
    painter.setPen(seam_hue(theme));
    painter.drawRect(paper);
}

void PagePreview::wheelEvent(QWheelEvent* event) {
    if (page_ == nullptr) {
        return;
    }
    const double before = zoom_;
    set_zoom(zoom_ * std::pow(1.2, event->angleDelta().y() / 120.0));
    const QPointF middle = QRectF{rect()}.center();
    const QPointF from = event->position() - middle - shift_;
    shift_ += from * (1.0 - zoom_ / before);
    if (zoom_ == 1.0) {
        shift_ = {};
    }
    update();
}

void PagePreview::mousePressEvent(QMouseEvent* event) {
    pressed_at_ = event->position();
}

void PagePreview::mouseMoveEvent(QMouseEvent* event) {
    shift_ += event->position() - pressed_at_;
    pressed_at_ = event->position();
    update();
}

void PagePreview::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    picture_ = {};
}

} // namespace throwline::ui
