#pragma once

#include "ui/desk/desk.h"
#include "ui/stores/store_symbols.h"

#include <QColor>
#include <QFont>
#include <QStyledItemDelegate>
#include <vector>

class QTreeView;

namespace throwline::ui {

class StoresModel;

/// Paints a line of the Stores: symbol, name, size and counts; and types the count.
class StorePainter : public QStyledItemDelegate {
    Q_OBJECT

  public:
    StorePainter(const StoresModel& model, const Desk& desk, QTreeView& view);

    void forget_symbols() { symbols_.forget(); }
    QPixmap symbol(const edit::StoresRow& row) const;

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model,
                      const QModelIndex& index) const override;

  private:
    void paint_shelf(QPainter& painter, const QStyleOptionViewItem& option,
                     const QModelIndex& index) const;
    struct Words {
        QString text;
        QFont font;
        QColor hue;
    };
    std::vector<Words> words_of(const edit::StoresRow& row) const;
    static double height_of(const Words& words, double width_px);
    void paint_item(QPainter& painter, const QRect& rect, const edit::StoresRow& row) const;
    void paint_owned(QPainter& painter, const QRect& rect, const edit::StoresRow& row) const;

    const StoresModel& model_;
    const Desk& desk_;
    QTreeView& view_;
    /// Made when first painted.
    mutable StoreSymbols symbols_;
};

} // namespace throwline::ui
