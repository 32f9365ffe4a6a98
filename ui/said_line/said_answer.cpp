#include "ui/said_line/said_answer.h"

#include "ui/look/look.h"

#include <QLineEdit>
#include <QPainter>
#include <QStyleOptionFrame>
#include <cmath>

namespace throwline::ui {

namespace {

constexpr double kPad_px = 4.0;
constexpr double kTick_px = 6.0;
/// Wide enough for any sentence.
constexpr int kManyWords_px = 10000;
constexpr int kWrapped = Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop;
/// Between the frame of a line and its text, as QLineEdit lays it out.
constexpr double kTextMargin_px = 2.0;

} // namespace

SaidAnswer::SaidAnswer(QLineEdit& line, QWidget* parent) : QWidget{parent}, line_{line} {
    QSizePolicy policy{QSizePolicy::Preferred, QSizePolicy::Fixed};
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    hide();
}

void SaidAnswer::show_refusal(const QString& words, int at) {
    show_words(words, at, true);
}

void SaidAnswer::show_done(const QString& words) {
    show_words(words, -1, false);
}

void SaidAnswer::clear() {
    show_words({}, -1, false);
}

void SaidAnswer::show_words(const QString& words, int at, bool is_refusal) {
    words_ = words;
    marked_ = at;
    is_refusal_ = is_refusal;
    setAccessibleName(words);
    setVisible(!words.isEmpty());
    updateGeometry();
    update();
}

QRectF SaidAnswer::room(int width) const {
    return {kPad_px, kPad_px / 2.0, width - 2.0 * kPad_px, 1e4};
}

QSize SaidAnswer::sizeHint() const {
    // On one line; layouts ask for the height once they know the width.
    return {200, heightForWidth(kManyWords_px)};
}

int SaidAnswer::heightForWidth(int width) const {
    const double words = QFontMetricsF{font()}.boundingRect(room(width), kWrapped, words_).height();
    return static_cast<int>(std::ceil(words + kPad_px + (marked_ >= 0 ? kTick_px : 0.0)));
}

/// Over the character while the whole text is in view; below zero when it is not.
double SaidAnswer::mark_x() const {
    const QFontMetricsF metrics{line_.font()};
    QStyleOptionFrame frame;
    frame.initFrom(&line_);
    frame.lineWidth = line_.style()->pixelMetric(QStyle::PM_DefaultFrameWidth, &frame, &line_);
    const QRectF text = line_.style()->subElementRect(QStyle::SE_LineEditContents, &frame, &line_);
    if (marked_ < 0 || metrics.horizontalAdvance(line_.text()) > text.width()) {
        return -1.0;
    }
    const double x_px =
        text.left() + kTextMargin_px + metrics.horizontalAdvance(line_.text().left(marked_));
    return mapFromGlobal(line_.mapToGlobal(QPointF{x_px, 0.0})).x();
}

void SaidAnswer::paintEvent(QPaintEvent*) {
    QPainter painter{this};
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme theme = theme_of(palette());
    const QColor hue = paint::line_hue(sheet::Ink::error, theme);
    QColor ink = palette().color(QPalette::WindowText);
    ink.setAlphaF(is_refusal_ ? 1.0F : 0.72F);
    painter.setPen(ink);
    painter.drawText(room(width()), kWrapped, words_);
    const double x_px = mark_x();
    if (x_px >= 0.0) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(hue);
        painter.drawPolygon(QPolygonF{{{x_px - kTick_px * 0.7, height() - kTick_px},
                                       {x_px + kTick_px * 0.7, height() - kTick_px},
                                       {x_px, static_cast<double>(height())}}});
    }
    if (is_refusal_) {
        painter.fillRect(QRectF{0, 0, 2, static_cast<double>(height())}, hue);
    }
}

} // namespace throwline::ui
