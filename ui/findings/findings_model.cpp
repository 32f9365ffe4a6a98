#include "ui/findings/findings_model.h"

#include <algorithm>

namespace throwline::ui {

namespace {

QString text(std::string_view words) {
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

/// What a screen reader speaks.
QString spoken(const sheet::FindingRow& row) {
    if (row.is_heading()) {
        return text(row.heading);
    }
    const QString sentence = QStringLiteral("%1 %2: %3")
                                 .arg(text(checks::name_of(row.severity)))
                                 .arg(row.number)
                                 .arg(text(row.words));
    return row.reason.empty()
               ? sentence
               : FindingsModel::tr("Accepted, %1 Reason: %2").arg(sentence, text(row.reason));
}

} // namespace

void FindingsModel::show(AnalysisPtr analysis, sheet::FindingOrder order) {
    beginResetModel();
    analysis_ = std::move(analysis);
    rows_ = analysis_ == nullptr ? std::vector<sheet::FindingRow>{}
                                 : sheet::finding_rows(*analysis_, order);
    endResetModel();
}

void FindingsModel::set_stale() {
    if (!is_stale()) {
        analysis_.reset();
        if (!rows_.empty()) {
            Q_EMIT dataChanged(index(0), index(static_cast<int>(rows_.size()) - 1));
        }
    }
}

int FindingsModel::row_of(int finding) const {
    const auto holds = [&](const sheet::FindingRow& row) {
        return std::find(row.findings.begin(), row.findings.end(), finding) != row.findings.end();
    };
    const auto found = std::find_if(rows_.begin(), rows_.end(), holds);
    return found == rows_.end() || is_stale() ? -1 : static_cast<int>(found - rows_.begin());
}

int FindingsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant FindingsModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) {
        return {};
    }
    const sheet::FindingRow& shown = row(index.row());
    if (role == Qt::DisplayRole) {
        return shown.is_heading() ? text(shown.heading) : text(shown.words);
    }
    if (role == Qt::AccessibleTextRole) {
        return is_stale() ? tr("Out of date: %1").arg(spoken(shown)) : spoken(shown);
    }
    return {};
}

Qt::ItemFlags FindingsModel::flags(const QModelIndex& index) const {
    if (!index.isValid() || is_stale() || row(index.row()).is_heading()) {
        return Qt::NoItemFlags;
    }
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
}

} // namespace throwline::ui
