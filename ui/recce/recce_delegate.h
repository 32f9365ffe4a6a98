#pragma once

#include <QStyledItemDelegate>

namespace throwline::ui {

/// Paints and edits the cells of a recce: a list of kinds, fields with an edge where they are not
/// understood, lozenges before what does not fit.
class RecceDelegate : public QStyledItemDelegate {
    Q_OBJECT

  public:
    explicit RecceDelegate(QObject* parent = nullptr);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model,
                      const QModelIndex& index) const override;
};

} // namespace throwline::ui
