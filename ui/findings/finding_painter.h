#pragma once

#include <QStyledItemDelegate>
#include <vector>

class QListView;

namespace throwline::ui {

class FindingsModel;

/// Paints a line of the findings: its lozenge, its sentence over as many lines as it takes, struck
/// when it is accepted, and why.
class FindingPainter : public QStyledItemDelegate {
    Q_OBJECT

  public:
    FindingPainter(const FindingsModel& model, QListView& view);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

  private:
    void paint_heading(QPainter& painter, const QRect& rect, int row) const;
    void paint_finding(QPainter& painter, const QRect& rect, int row) const;
    double text_from(const QFont& font) const;
    void forget_heights();

    const FindingsModel& model_;
    QListView& view_;
    double widest_number_ = 0.0;
    /// Heights of lines at a width of the list, 0 where not asked for yet: two thousand sentences
    /// are laid out once, not at every scroll.
    mutable std::vector<int> heights_;
    mutable int width_ = 0;
};

} // namespace throwline::ui
