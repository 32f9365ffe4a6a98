#include "ui/recce/recce_picture.h"

#include "sheet/marks.h"
#include "ui/look/look.h"
#include "ui/paint/painter.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>

namespace throwline::ui {

namespace {

constexpr double kStale = 0.45;

} // namespace

ReccePicture::ReccePicture(QWidget* parent) : QWidget{parent} {
    setAccessibleName(tr("The room as read"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

/// The sheet's lettering is as high on the screen as that of the window.
double ReccePicture::px_per_mm() const {
    return QFontMetricsF{font()}.capHeight() * 0.95 / sheet::kLetter_mm;
}

QSizeF ReccePicture::size_mm() const {
    return QSizeF{size()} / px_per_mm();
}

void ReccePicture::show_drawing(std::shared_ptr<const sheet::Drawing> drawing, bool is_fresh) {
    if (drawing != nullptr) {
        drawing_ = std::move(drawing);
    }
    is_fresh_ = is_fresh;
    update();
}

void ReccePicture::show_words(const QString& words) {
    words_ = words;
    setAccessibleDescription(words);
    update();
}

void ReccePicture::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    Q_EMIT resized();
}

void ReccePicture::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter{this};
    const Theme theme = theme_of(palette());
    painter.fillRect(rect(), floor_ground(theme));
    if (drawing_ != nullptr) {
        painter.save();
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setOpacity(is_fresh_ ? 1.0 : kStale);
        const double scale = std::min(width() / drawing_->width_mm, height() / drawing_->height_mm);
        painter.translate((width() - scale * drawing_->width_mm) / 2.0,
                          (height() - scale * drawing_->height_mm) / 2.0);
        painter.scale(scale, scale);
        paint::paint_drawing(painter, *drawing_, theme);
        painter.restore();
    }
    if (!words_.isEmpty()) {
        const QRectF place = QRectF{rect()}.adjusted(24, 24, -24, -24);
        const QRectF box = painter.boundingRect(place, Qt::AlignCenter | Qt::TextWordWrap, words_);
        painter.setPen(Qt::NoPen);
        painter.setBrush(floor_ground(theme));
        painter.drawRoundedRect(box.adjusted(-10, -8, 10, 8), 4, 4);
        painter.setPen(paint::hue(sheet::Ink::lettering, theme));
        painter.drawText(place, Qt::AlignCenter | Qt::TextWordWrap, words_);
    }
}

} // namespace throwline::ui
