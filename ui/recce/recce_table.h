#pragma once

#include <QTableView>

namespace throwline::ui {

/// The Tab key goes from cell to cell, and out of the table behind the last and before the first.
class RecceTable : public QTableView {
    Q_OBJECT

  public:
    using QTableView::QTableView;

  protected:
    bool focusNextPrevChild(bool next) override;
};

} // namespace throwline::ui
