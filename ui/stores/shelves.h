#pragma once

#include <QTreeView>
#include <functional>

namespace throwline::ui {

/// The lines of the Stores. What is pulled out of them is carried as its small symbol, beside the
/// pointer, so that it does not hide the place where it will stand.
class Shelves : public QTreeView {
  public:
    using Symbol = std::function<QPixmap(const QModelIndex& index)>;

    Shelves(Symbol symbol, QWidget* parent);

  protected:
    void startDrag(Qt::DropActions actions) override;

  private:
    Symbol symbol_;
};

} // namespace throwline::ui
