#include "ui/findings/finding_painter.h"

#include "ui/findings/findings_model.h"
#include "ui/look/look.h"
#include "ui/look/lozenge.h"

#include <QListView>
#include <QPainter>
#include <cmath>

namespace throwline::ui {

namespace {

constexpr double kPad_px = 6.0;
constexpr int kWrapped = Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop;
/// Tall enough for any sentence.
constexpr double kTall_px = 1e5;

QString text(const std::string& words) {
    return QString::fromStdString(words);
}

QFont bold(QFont font) {
    font.setBold(true);
    return font;
}

QFont struck(QFont font) {
    font.setStrikeOut(true);
    return font;
}

QColor faint(const QPalette& palette) {
    return palette.color(QPalette::Disabled, QPalette::WindowText);
}

QString reason_of(const sheet::FindingRow& row) {
    return FindingPainter::tr("Accepted: %1").arg(text(row.reason));
}

double height_of(const QFontMetricsF& metrics, const QString& words, double width_px) {
    return metrics.boundingRect(QRectF{0, 0, width_px, kTall_px}, kWrapped, words).height();
}

} // namespace

FindingPainter::FindingPainter(const FindingsModel& model, QListView& view)
    : QStyledItemDelegate{&view}, model_{model}, view_{view} {
    connect(&model_, &QAbstractItemModel::modelReset, this, &FindingPainter::forget_heights);
}

void FindingPainter::forget_heights() {
    heights_.assign(static_cast<std::size_t>(model_.rowCount()), 0);
    int highest = 0;
    for (int row = 0; row < model_.rowCount(); ++row) {
        highest = std::max(highest, model_.row(row).number);
    }
    widest_number_ = highest;
}

double FindingPainter::text_from(const QFont& font) const {
    return kPad_px * 2.0
           + lozenge_size(QFontMetricsF{bold(font)}, static_cast<int>(widest_number_)).width();
}

QSize FindingPainter::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const int width = view_.viewport()->width();
    if (width != width_) {
        width_ = width;
        heights_.assign(static_cast<std::size_t>(model_.rowCount()), 0);
    }
    int& height = heights_[static_cast<std::size_t>(index.row())];
    if (height == 0) {
        const sheet::FindingRow& row = model_.row(index.row());
        const QFontMetricsF metrics{option.font};
        double tall = 0.0;
        if (row.is_heading()) {
            tall = metrics.height() + 1.5 * kPad_px;
        } else {
            const double room = width - text_from(option.font) - kPad_px;
            tall = height_of(metrics, text(row.words), room) + kPad_px;
            tall += row.reason.empty() ? 0.0 : height_of(metrics, reason_of(row), room);
            tall = std::max(tall, lozenge_size(metrics, row.number).height() + kPad_px);
        }
        height = static_cast<int>(std::ceil(tall));
    }
    return {width, height};
}

void FindingPainter::paint_heading(QPainter& painter, const QRect& rect, int row) const {
    painter.setFont(bold(view_.font()));
    painter.setPen(model_.is_stale() ? faint(view_.palette())
                                     : view_.palette().color(QPalette::WindowText));
    const QRectF inner = QRectF{rect}.adjusted(kPad_px, 0, -kPad_px, -2.0);
    const QString words = QFontMetricsF{painter.font()}.elidedText(text(model_.row(row).heading),
                                                                   Qt::ElideRight, inner.width());
    painter.drawText(inner, Qt::AlignLeft | Qt::AlignBottom, words);
    painter.setPen(seam_hue(theme_of(view_.palette())));
    painter.drawLine(rect.bottomLeft(), rect.bottomRight());
}

void FindingPainter::paint_finding(QPainter& painter, const QRect& rect, int row) const {
    const sheet::FindingRow& shown = model_.row(row);
    const QFont font = view_.font();
    const double from = text_from(font);
    painter.setFont(font);
    painter.setOpacity(model_.is_stale() ? 0.45 : shown.reason.empty() ? 1.0 : 0.7);
    const QSizeF lozenge = lozenge_size(QFontMetricsF{font}, shown.number);
    paint_lozenge(painter,
                  {rect.left() + from / 2.0, rect.top() + kPad_px / 2.0 + lozenge.height() / 2.0},
                  shown.number, shown.severity, theme_of(view_.palette()));
    painter.setOpacity(1.0);
    QColor hue =
        model_.is_stale() ? faint(view_.palette()) : view_.palette().color(QPalette::WindowText);
    if (!shown.reason.empty()) {
        hue.setAlphaF(hue.alphaF() * 0.7F);
    }
    painter.setPen(hue);
    QRectF place{rect.left() + from, rect.top() + kPad_px / 2.0, rect.width() - from - kPad_px,
                 kTall_px};
    painter.setFont(shown.reason.empty() ? font : struck(font));
    painter.drawText(place, kWrapped, text(shown.words));
    if (!shown.reason.empty()) {
        place.translate(0, height_of(QFontMetricsF{font}, text(shown.words), place.width()));
        painter.setFont(font);
        painter.setPen(model_.is_stale() ? faint(view_.palette())
                                         : view_.palette().color(QPalette::WindowText));
        painter.drawText(place, kWrapped, reason_of(shown));
    }
}

void FindingPainter::paint(QPainter* painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
    painter->save();
    painter->setClipRect(option.rect);
    if (model_.row(index.row()).is_heading()) {
        paint_heading(*painter, option.rect, index.row());
    } else {
        const bool is_current = option.state.testFlag(QStyle::State_Selected);
        const QColor hue = choice_hue(theme_of(view_.palette()));
        if (is_current) {
            QColor wash = hue;
            wash.setAlphaF(0.14F);
            painter->fillRect(option.rect, wash);
            painter->fillRect(QRect{option.rect.topLeft(), QSize{3, option.rect.height()}}, hue);
        }
        paint_finding(*painter, option.rect, index.row());
        if (is_current && view_.hasFocus()) {
            painter->setPen(QPen{hue, 1.5});
            painter->setBrush(Qt::NoBrush);
            painter->drawRect(QRectF{option.rect}.adjusted(1, 1, -1, -1));
        }
    }
    painter->restore();
}

} // namespace throwline::ui
