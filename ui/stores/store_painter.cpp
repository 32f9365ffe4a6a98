#include "ui/stores/store_painter.h"

#include "ui/stores/stores_model.h"

#include <QLineEdit>
#include <QPainter>
#include <QTreeView>

namespace throwline::ui {

namespace {

constexpr QSize kSymbol_px{46, 34};
constexpr int kPad_px = 4;

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
    const int line = QFontMetrics{option.font}.height();
    if (model_.row_at(index) == nullptr) {
        return {0, line + 2 * kPad_px};
    }
    const int words = line + 2 * QFontMetrics{small(option.font)}.height() + kPad_px;
    return {0, std::max(words, kSymbol_px.height() + kPad_px)};
}

void StorePainter::paint_shelf(QPainter& painter, const QStyleOptionViewItem& option,
                               const QModelIndex& index) const {
    if (index.column() != StoresModel::item_column) {
        return;
    }
    QFont font = view_.font();
    font.setBold(true);
    painter.setFont(font);
    painter.setPen(view_.palette().color(QPalette::WindowText));
    painter.drawText(option.rect.adjusted(kPad_px, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft,
                     model_.shelf_words(index));
}

void StorePainter::paint_item(QPainter& painter, const QRect& rect,
                              const edit::StoresRow& row) const {
    painter.drawPixmap(rect.left() + kPad_px / 2,
                       rect.top() + (rect.height() - kSymbol_px.height()) / 2, symbol(row));
    const QFont font = view_.font();
    QRect line{rect.left() + kSymbol_px.width() + 2 * kPad_px, rect.top() + kPad_px / 2,
               rect.width() - kSymbol_px.width() - 3 * kPad_px, QFontMetrics{font}.height()};
    const auto write = [&](const QFont& in, const QColor& hue, const QString& words) {
        painter.setFont(in);
        painter.setPen(hue);
        line.setHeight(QFontMetrics{in}.height());
        painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter,
                         QFontMetrics{in}.elidedText(words, Qt::ElideRight, line.width()));
        line.translate(0, line.height());
    };
    write(font, view_.palette().color(QPalette::WindowText), text(row.name));
    write(small(font), quiet(view_.palette()), text(row.size));
    QString counts = text(edit::count_words(row));
    if (model_.is_own(row)) {
        counts = counts.isEmpty() ? tr("own item") : tr("own item, %1").arg(counts);
    }
    const bool is_short = row.left().value_or(0) < 0;
    QFont count_font = small(font);
    count_font.setBold(is_short);
    write(count_font,
          is_short ? paint::line_hue(sheet::Ink::error, theme_of(view_.palette()))
                   : quiet(view_.palette()),
          counts);
}

/// A field, so that one sees that it can be typed into.
void StorePainter::paint_owned(QPainter& painter, const QRect& rect,
                               const edit::StoresRow& row) const {
    if (row.item.empty()) {
        return;
    }
    painter.setFont(view_.font());
    const QRect line = rect.adjusted(2, 0, -kPad_px, -(rect.height() / 3));
    const QString words = row.owned ? QString::number(*row.owned) : QStringLiteral("\u2013");
    painter.setPen(view_.palette().color(QPalette::WindowText));
    painter.drawText(line, Qt::AlignCenter, words);
    painter.setPen(QPen{quiet(view_.palette()), 1.0, Qt::DotLine});
    const int y = line.center().y() + QFontMetrics{view_.font()}.height() / 2 + 1;
    painter.drawLine(line.left() + kPad_px, y, line.right() - kPad_px, y);
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
