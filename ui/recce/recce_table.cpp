#include "ui/recce/recce_table.h"

namespace throwline::ui {

bool RecceTable::focusNextPrevChild(bool next) {
    const QModelIndex at = currentIndex();
    const QModelIndex last =
        model()->index(model()->rowCount() - 1, model()->columnCount() - 1, rootIndex());
    const bool leaves = !at.isValid() || at == (next ? last : model()->index(0, 0, rootIndex()));
    return leaves ? QWidget::focusNextPrevChild(next) : QTableView::focusNextPrevChild(next);
}

} // namespace throwline::ui
