#include "ui/sheets/page_preview.h"

#include "ui/look/look.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

namespace throwline::ui {

namespace {

constexpr double kAround_px = 16.0;
constexpr double kMostZoom = 12.0;
/// What a key or a notch of the wheel zooms by, and an arrow key moves.
constexpr double kZoomStep = 1.2;
constexpr double kMoved_px = 40.0;
/// A widget that is hardly there shows a page no smaller than this.
constexpr double kLeast_px_per_mm = 0.05;

} // namespace

PagePreview::PagePreview(QWidget* parent) : QWidget{parent} {
    setMinimumSize(240, 200);
    setAccessibleName(tr("Preview of the page"));
    setFocusPolicy(Qt::StrongFocus);
    tell_page();
    connect(&painter_, &PagePainter::painted, this, qOverload<>(&QWidget::update));
}

void PagePreview::show(std::shared_ptr<const sheet::Drawing> page) {
    if (page != page_) {
        page_ = std::move(page);
        tell_page();
        go_on();
    }
}

/// For whoever does not see it.
void PagePreview::tell_page() {
    const QString what = page_ == nullptr ? tr("No page yet.")
                                          : tr("%1, on %2.")
                                                .arg(QString::fromStdString(page_->title),
                                                     QString::fromStdString(page_->paper));
    setAccessibleDescription(
        what + tr(" Plus and minus zoom, arrow keys move the page, 0 shows all of it."));
}

void PagePreview::set_zoom(double zoom) {
    zoom_ = std::clamp(zoom, 1.0, kMostZoom);
    if (zoom_ == 1.0) {
        shift_ = {};
    }
    go_on();
}

double PagePreview::px_per_mm() const {
    const double fitting = std::min((width() - 2.0 * kAround_px) / page_->width_mm,
                                    (height() - 2.0 * kAround_px) / page_->height_mm);
    return std::max(fitting, kLeast_px_per_mm) * zoom_;
}

QRectF PagePreview::paper_rect() const {
    const QSizeF size = QSizeF{page_->width_mm, page_->height_mm} * px_per_mm();
    const double ratio = devicePixelRatioF();
    const auto whole = [ratio](double px) { return std::round(px * ratio) / ratio; };
    return {QPointF{whole((width() - size.width()) / 2.0 + shift_.x()),
                    whole((height() - size.height()) / 2.0 + shift_.y())},
            size};
}

/// What shows of the paper.
PagePart PagePreview::wanted() const {
    const QRectF paper = paper_rect();
    const QRectF seen = paper.intersected(rect()).translated(-paper.topLeft());
    const double scale = 1.0 / px_per_mm();
    return {page_, {seen.topLeft() * scale, seen.size() * scale}, px_per_mm(), devicePixelRatioF()};
}

bool PagePreview::is_painted() const {
    return page_ != nullptr && painter_.latest().of == wanted();
}

void PagePreview::go_on() {
    if (page_ != nullptr) {
        PagePart part = wanted();
        if (!part.part_mm.isEmpty() && part != painter_.latest().of) {
            painter_.ask(std::move(part));
        }
    }
    update();
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
    const PaintedPart& known = painter_.latest();
    if (known.of.page == page_) {
        const QRectF& part = known.of.part_mm;
        const QPointF corner = paper.topLeft() + part.topLeft() * px_per_mm();
        if (known.of.px_per_mm == px_per_mm()) {
            painter.drawImage(corner, known.image);
        } else {
            painter.setRenderHint(QPainter::SmoothPixmapTransform);
            painter.drawImage(QRectF{corner, part.size() * px_per_mm()}, known.image);
        }
    }
    painter.setPen(seam_hue(theme));
    painter.drawRect(paper);
}

void PagePreview::wheelEvent(QWheelEvent* event) {
    if (page_ == nullptr) {
        return;
    }
    const double before = zoom_;
    zoom_ =
        std::clamp(zoom_ * std::pow(kZoomStep, event->angleDelta().y() / 120.0), 1.0, kMostZoom);
    const QPointF middle = QRectF{rect()}.center();
    const QPointF from = event->position() - middle - shift_;
    shift_ += from * (1.0 - zoom_ / before);
    if (zoom_ == 1.0) {
        shift_ = {};
    }
    go_on();
}

void PagePreview::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        set_zoom(zoom_ * kZoomStep);
        return;
    case Qt::Key_Minus:
        set_zoom(zoom_ / kZoomStep);
        return;
    case Qt::Key_0:
        set_zoom(1.0);
        return;
    case Qt::Key_Left:
        shift_by({kMoved_px, 0.0});
        return;
    case Qt::Key_Right:
        shift_by({-kMoved_px, 0.0});
        return;
    case Qt::Key_Up:
        shift_by({0.0, kMoved_px});
        return;
    case Qt::Key_Down:
        shift_by({0.0, -kMoved_px});
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void PagePreview::shift_by(const QPointF& by_px) {
    shift_ += by_px;
    go_on();
}

void PagePreview::mousePressEvent(QMouseEvent* event) {
    pressed_at_ = event->position();
}

void PagePreview::mouseMoveEvent(QMouseEvent* event) {
    shift_by(event->position() - pressed_at_);
    pressed_at_ = event->position();
}

void PagePreview::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    go_on();
}

} // namespace throwline::ui
