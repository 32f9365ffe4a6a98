#include "ui/card_panel/flow_layout.h"

#include <QWidget>

namespace throwline::ui {

namespace {

/// Whether an item stays with the one before it.
bool clings(QLayoutItem& item) {
    return item.widget() != nullptr && item.widget()->property(kClings).toBool();
}

} // namespace

FlowLayout::FlowLayout(QWidget* parent) : QLayout{parent} {
    setContentsMargins(0, 0, 0, 0);
}

FlowLayout::~FlowLayout() {
    qDeleteAll(items_);
}

void FlowLayout::addItem(QLayoutItem* item) {
    items_.append(item);
}

int FlowLayout::count() const {
    return static_cast<int>(items_.size());
}

QLayoutItem* FlowLayout::itemAt(int index) const {
    return items_.value(index);
}

QLayoutItem* FlowLayout::takeAt(int index) {
    return index >= 0 && index < items_.size() ? items_.takeAt(index) : nullptr;
}

int FlowLayout::heightForWidth(int width) const {
    return lay(QRect{0, 0, width, 0}, true);
}

QSize FlowLayout::minimumSize() const {
    QSize size;
    for (const QLayoutItem* item : items_) {
        size = size.expandedTo(item->minimumSize());
    }
    return size;
}

void FlowLayout::setGeometry(const QRect& rect) {
    QLayout::setGeometry(rect);
    lay(rect, false);
}

int FlowLayout::lay(const QRect& rect, bool measure_only) const {
    int x = rect.left();
    int y = rect.top();
    int line_height = 0;
    for (qsizetype i = 0; i < items_.size(); ++i) {
        QLayoutItem* item = items_[i];
        QSize size = item->sizeHint();
        size.setWidth(qMin(size.width(), rect.width()));
        // A full stop never begins a line.
        const bool has_follower = i + 1 < items_.size() && clings(*items_[i + 1]);
        const int with_follower =
            size.width() + (has_follower ? items_[i + 1]->sizeHint().width() : 0);
        if (x + with_follower > rect.left() + rect.width() && line_height > 0 && !clings(*item)) {
            x = rect.left();
            y += line_height;
            line_height = 0;
        }
        if (!measure_only) {
            item->setGeometry(QRect{QPoint{x, y}, size});
        }
        x += size.width();
        line_height = qMax(line_height, size.height());
    }
    return y + line_height - rect.top();
}

} // namespace throwline::ui
