#include "ui/stores/store_painter.h"

#include "ui/stores/stores_model.h"

#include <QLineEdit>
#include <QPainter>
#include <QTreeView>
#include <cmath>

namespace throwline::ui {

namespace {

constexpr QSize kSymbol_px{44, 32};
constexpr int kPad_px = 3;
constexpr int kTextFrom_px = kSymbol_px.width() + 3 * kPad_px;
constexpr int kWrapped = Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop;
/// Tall enough for any words.
constexpr double kTall_px = 1e4;

QString text(const std::string& words) {
    return QString::fromStdString(words);
}

QFont small(QFont font) {
    font.setPointSizeF(font.pointSizeF() * 0.88);
    return font;
}

/// Fainter than the name beside it, but still read with ease.
QColor quiet(const QPalette& palette) {
    QColor hue = palette.color(QPalette::WindowText);
    hue.setAlphaF(0.72F);
    return hue;
}

} // namespace

StorePainter::StorePainter(const StoresModel& model, const Desk& desk, QTreeView& view)
    : QStyledItemDelegate{&view}, model_{model}, desk_{desk}, view_{view} {}

QPixmap StorePainter::symbol(const edit::StoresRow& row) const {
    return symbols_.symbol(row, *desk_.catalogue(), kSymbol_px, theme_of(view_.palette()),
                           view_.devicePixelRatioF());
}

QSize StorePainter::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const edit::StoresRow* row = model_.row_at(index);
    if (row == nullptr || index.column() != StoresModel::item_column) {
        return {0, QFontMetrics{option.font}.height() + 2 * kPad_px};
    }
    const double width = view_.columnWidth(StoresModel::item_column) - kTextFrom_px - kPad_px;
    double height = 0.0;
    for (const Words& words : words_of(*row)) {
        height += height_of(words, width);
    }
    return {0, std::max(static_cast<int>(std::ceil(height)), kSymbol_px.height()) + 2 * kPad_px};
}

void StorePainter::paint_shelf(QPainter& painter, const QStyleOptionViewItem& option,
                               const QModelIndex& index) const {
    if (index.column() != StoresModel::item_column) {
        return;
    }
    QFont font = view_.font();
    font.setBold(true);
    painter.setFont(font);
    const QColor ink = view_.palette().color(QPalette::WindowText);
    painter.setPen(ink);
    const int size = QFontMetrics{font}.height();
    painter.drawText(option.rect.adjusted(size + kPad_px, 0, 0, 0),
                     Qt::AlignVCenter | Qt::AlignLeft, model_.shelf_words(index));
    const double reach = size / 4.0;
    painter.save();
    painter.translate(option.rect.left() + size / 2.0 + kPad_px / 2.0,
                      option.rect.center().y() + 0.5);
    painter.rotate(view_.isExpanded(index) ? 90.0 : 0.0);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    painter.drawPolygon(QPolygonF{{{-reach * 0.7, -reach}, {reach, 0.0}, {-reach * 0.7, reach}}});
    painter.restore();
}

/// Name, size and counts, each in its own writing.
std::vector<StorePainter::Words> StorePainter::words_of(const edit::StoresRow& row) const {
    const QFont font = view_.font();
    const QPalette& palette = view_.palette();
    std::vector<Words> words{{text(row.name), font, palette.color(QPalette::WindowText)},
                             {text(row.size), small(font), quiet(palette)}};
    QString counts = text(edit::count_words(row));
    if (model_.is_own(row)) {
        counts = counts.isEmpty() ? tr("own item") : tr("own item, %1").arg(counts);
    }
    if (counts.isEmpty()) {
        return words;
    }
    const bool is_short = row.left().value_or(0) < 0;
    QFont count_font = small(font);
    count_font.setBold(is_short);
    words.push_back(
        {counts, count_font,
         is_short ? paint::line_hue(sheet::Ink::error, theme_of(palette)) : quiet(palette)});
    return words;
}

void StorePainter::paint_item(QPainter& painter, const QRect& rect,
                              const edit::StoresRow& row) const {
    painter.drawPixmap(rect.left() + kPad_px,
                       rect.top() + (rect.height() - kSymbol_px.height()) / 2, symbol(row));
    QRectF place{static_cast<double>(rect.left() + kTextFrom_px),
                 static_cast<double>(rect.top() + kPad_px),
                 static_cast<double>(rect.width() - kTextFrom_px - kPad_px), kTall_px};
    for (const Words& words : words_of(row)) {
        painter.setFont(words.font);
        painter.setPen(words.hue);
        painter.drawText(place, kWrapped, words.text);
        place.translate(0.0, height_of(words, place.width()));
    }
}

double StorePainter::height_of(const Words& words, double width_px) {
    return QFontMetricsF{words.font}
        .boundingRect(QRectF{0.0, 0.0, width_px, kTall_px}, kWrapped, words.text)
        .height();
}

/// A field, so that one sees that it can be typed into.
void StorePainter::paint_owned(QPainter& painter, const QRect& rect,
                               const edit::StoresRow& row) const {
    if (row.item.empty()) {
        return;
    }
    painter.setFont(view_.font());
    const QRect line{rect.left() + 2, rect.top() + kPad_px, rect.width() - kPad_px - 2,
                     QFontMetrics{view_.font()}.height()};
    const QString words = row.owned ? QString::number(*row.owned) : QStringLiteral("\u2013");
    painter.setPen(view_.palette().color(QPalette::WindowText));
    painter.drawText(line, Qt::AlignCenter, words);
    painter.setPen(QPen{quiet(view_.palette()), 1.0, Qt::DotLine});
    const int y = line.center().y() + QFontMetrics{view_.font()}.height() / 2 + 1;
    painter.drawLine(line.left() + 2 * kPad_px, y, line.right() - 2 * kPad_px, y);
}

void StorePainter::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    painter->save();
    painter->setClipRect(option.rect);
    painter->setRenderHint(QPainter::Antialiasing);
    const QColor hue = choice_hue(theme_of(view_.palette()));
    const bool is_row_current = index.siblingAtColumn(0) == view_.currentIndex().siblingAtColumn(0);
    if (is_row_current) {
        QColor wash = hue;
        wash.setAlphaF(0.14F);
        painter->fillRect(option.rect, wash);
    }
    if (const edit::StoresRow* row = model_.row_at(index)) {
        if (index.column() == StoresModel::item_column) {
            paint_item(*painter, option.rect, *row);
        } else {
            paint_owned(*painter, option.rect, *row);
        }
    } else {
        paint_shelf(*painter, option, index);
    }
    if (index == view_.currentIndex() && view_.hasFocus()) {
        painter->setPen(QPen{hue, 1.5});
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(QRectF{option.rect}.adjusted(1, 1, -1, -1));
    }
    painter->restore();
}

QWidget* StorePainter::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
    auto* line = new QLineEdit{parent};
    line->setAlignment(Qt::AlignCenter);
    line->setFrame(false);
    line->setAccessibleName(tr("How many %1 the crew owns").arg(text(model_.row_at(index)->name)));
    return line;
}

void StorePainter::setModelData(QWidget* editor, QAbstractItemModel* model,
                                const QModelIndex& index) const {
    if (const auto* line = qobject_cast<QLineEdit*>(editor)) {
        model->setData(index, line->text(), Qt::EditRole);
    }
}

} // namespace throwline::ui
