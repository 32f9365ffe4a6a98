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
    QList<QRect> boxes;
    qsizetype line_begin = 0;
    // All of a line are as high as its highest, so that their letters stand on one line too.
    const auto end_line = [&] {
        for (qsizetype i = line_begin; i < boxes.size(); ++i) {
            boxes[i].setHeight(line_height);
        }
        line_begin = boxes.size();
        x = rect.left();
        y += line_height;
        line_height = 0;
    };
    for (qsizetype i = 0; i < items_.size(); ++i) {
        // A full stop never begins a line, and is never pushed off it.
        const bool has_follower = i + 1 < items_.size() && clings(*items_[i + 1]);
        const int follower = has_follower ? items_[i + 1]->sizeHint().width() : 0;
        const QSize hint = items_[i]->sizeHint();
        const int width = qMin(hint.width(), rect.width() - follower);
        const bool is_full = x + width + follower > rect.left() + rect.width();
        if (is_full && line_height > 0 && !clings(*items_[i])) {
            end_line();
        }
        const int height =
            items_[i]->hasHeightForWidth() ? items_[i]->heightForWidth(width) : hint.height();
        boxes.append(QRect{x, y, width, height});
        x += width;
        line_height = qMax(line_height, height);
    }
    end_line();
    for (qsizetype i = 0; i < items_.size() && !measure_only; ++i) {
        items_[i]->setGeometry(boxes[i]);
    }
    return y - rect.top();
}

} // namespace throwline::ui
