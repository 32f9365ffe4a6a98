#include "ui/stores/shelves.h"

#include <QDrag>
#include <QMimeData>

namespace throwline::ui {

Shelves::Shelves(Symbol symbol, QWidget* parent) : QTreeView{parent}, symbol_{std::move(symbol)} {}

void Shelves::startDrag(Qt::DropActions actions) {
    const QModelIndex index = currentIndex();
    QMimeData* carried = index.isValid() ? model()->mimeData({index}) : nullptr;
    if (carried == nullptr) {
        return;
    }
    auto* drag = new QDrag{this};
    drag->setMimeData(carried);
    const QPixmap symbol = symbol_(index);
    drag->setPixmap(symbol);
    // Up and to the left of the pointer.
    const QSizeF size = symbol.deviceIndependentSize();
    drag->setHotSpot({static_cast<int>(size.width()) + 6, static_cast<int>(size.height()) + 6});
    drag->exec(actions, Qt::CopyAction);
}

} // namespace throwline::ui
