#pragma once

#include "sheet/finding_rows.h"
#include "ui/desk/desk.h"

#include <QAbstractListModel>

namespace throwline::ui {

/// The findings as lines of a list. While a change is being checked the lines of before stay, and
/// say of themselves that they are out of date.
class FindingsModel : public QAbstractListModel {
    Q_OBJECT

  public:
    using QAbstractListModel::QAbstractListModel;

    /// Lines of what is known now.
    void show(AnalysisPtr analysis, sheet::FindingOrder order);
    /// What is shown is that of an earlier plan.
    void set_stale();
    bool is_stale() const { return analysis_ == nullptr; }

    /// The findings that are shown; null while they are those of an earlier plan.
    const AnalysisPtr& analysis() const { return analysis_; }
    const sheet::FindingRow& row(int row) const { return rows_[static_cast<std::size_t>(row)]; }
    /// The line that holds a finding of analysis(); -1 when none does.
    int row_of(int finding) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

  private:
    std::vector<sheet::FindingRow> rows_;
    AnalysisPtr analysis_;
};

} // namespace throwline::ui
