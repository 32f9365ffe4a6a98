#include "ui/recce/recce_model.h"

#include <algorithm>
#include <utility>

namespace throwline::ui {

namespace {

using survey::RecceRow;
using survey::RowField;
using survey::RowKind;

QString text(std::string_view words) {
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

std::optional<RowField> field_of(int column) {
    switch (column) {
    case RecceModel::from_column:
        return RowField::from;
    case RecceModel::to_column:
        return RowField::to;
    case RecceModel::reading_column:
        return RowField::reading;
    case RecceModel::note_column:
        return RowField::note;
    default:
        return std::nullopt;
    }
}

std::optional<RowKind> kind_called(const std::string& name) {
    const auto at = std::find_if(survey::kRowKinds.begin(), survey::kRowKinds.end(),
                                 [&](RowKind kind) { return survey::name_of(kind) == name; });
    return at == survey::kRowKinds.end() ? std::nullopt : std::optional{*at};
}

bool is_marked(survey::Verdict verdict) {
    return verdict != survey::Verdict::fine;
}

} // namespace

RecceModel::RecceModel(QObject* parent) : QAbstractTableModel{parent} {}

void RecceModel::set_text(const std::string& text) {
    if (text == text_ && !rows_.empty()) {
        return;
    }
    text_ = text;
    std::vector<RecceRow> rows = survey::recce_rows(text);
    if (rows.size() == rows_.size()) {
        rows_ = std::move(rows);
        said_.assign(rows_.size(), {});
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, kColumns - 1));
        return;
    }
    beginResetModel();
    rows_ = std::move(rows);
    said_.assign(rows_.size(), {});
    endResetModel();
}

void RecceModel::set_told(const survey::RecceTold& told) {
    said_.assign(rows_.size(), {});
    for (std::size_t i = 0; i < told.verdicts.size() && i < said_.size(); ++i) {
        said_[i].verdict = told.verdicts[i];
    }
    tell_errors(told.errors);
    Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, kColumns - 1));
}

void RecceModel::tell_errors(const Errors& errors) {
    for (const Error& error : errors) {
        const int at = row_on_line(error.place.line);
        if (at >= 0 && said_[static_cast<std::size_t>(at)].error.empty()) {
            Said& said = said_[static_cast<std::size_t>(at)];
            said.error = error.message;
            said.error_field = survey::field_at(rows_[static_cast<std::size_t>(at)], error.place);
        }
    }
}

int RecceModel::row_on_line(int line) const {
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (line >= rows_[i].line && line < rows_[i].line + rows_[i].lines) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

const RecceRow& RecceModel::row(int index) const {
    return index < static_cast<int>(rows_.size()) ? rows_[static_cast<std::size_t>(index)] : next_;
}

int RecceModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size()) + 1;
}

int RecceModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : kColumns;
}

QVariant RecceModel::words(const QModelIndex& index) const {
    const RecceRow& shown = row(index.row());
    if (index.column() == kind_column) {
        return text(survey::name_of(shown.kind));
    }
    if (const auto field = field_of(index.column())) {
        return text(shown.field(*field));
    }
    if (index.row() >= static_cast<int>(said_.size())) {
        return {};
    }
    const Said& said = said_[static_cast<std::size_t>(index.row())];
    return text(said.error.empty() ? said.verdict.words : said.error);
}

QString RecceModel::tip(const QModelIndex& index) const {
    if (const auto field = field_of(index.column())) {
        return text(survey::field_hint(row(index.row()).kind, *field));
    }
    return index.column() == verdict_column ? words(index).toString() : QString{};
}

QVariant RecceModel::data(const QModelIndex& index, int role) const {
    const bool has_said = index.row() < static_cast<int>(said_.size());
    switch (role) {
    case Qt::DisplayRole:
    case Qt::EditRole:
        return words(index);
    case Qt::ToolTipRole:
        return tip(index);
    case Qt::AccessibleTextRole: {
        const QString spoken = words(index).toString();
        return spoken.isEmpty()
                   ? QStringLiteral("%1, empty")
                         .arg(
                             headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString())
                   : spoken;
    }
    case verdict_role:
        if (has_said && is_marked(said_[static_cast<std::size_t>(index.row())].verdict.verdict)) {
            return static_cast<int>(said_[static_cast<std::size_t>(index.row())].verdict.verdict);
        }
        return {};
    case number_role:
        return has_said ? said_[static_cast<std::size_t>(index.row())].verdict.number : 0;
    case error_role:
        return has_said && !said_[static_cast<std::size_t>(index.row())].error.empty()
               && (index.column() == verdict_column
                   || field_of(index.column())
                          == said_[static_cast<std::size_t>(index.row())].error_field);
    case remark_role:
        return row(index.row()).kind == RowKind::remark;
    default:
        return {};
    }
}

QVariant RecceModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role != Qt::DisplayRole) {
        return {};
    }
    if (orientation == Qt::Vertical) {
        const RecceRow& shown = row(section);
        return shown.line > 0 ? QVariant{shown.line} : QVariant{QStringLiteral("+")};
    }
    switch (section) {
    case kind_column:
        return tr("What");
    case from_column:
        return tr("From");
    case to_column:
        return tr("To");
    case reading_column:
        return tr("Read");
    case note_column:
        return tr("Remark");
    case verdict_column:
        return tr("How it fits");
    default:
        return {};
    }
}

Qt::ItemFlags RecceModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags plain = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    const auto field = field_of(index.column());
    const bool is_open = index.column() == kind_column
                         || (field && !survey::field_hint(row(index.row()).kind, *field).empty());
    return is_open ? plain | Qt::ItemIsEditable : plain;
}

bool RecceModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole) {
        return false;
    }
    RecceRow changed = row(index.row());
    if (index.column() == kind_column) {
        const auto kind = kind_called(value.toString().toStdString());
        if (!kind) {
            return false;
        }
        changed.kind = *kind;
    } else if (const auto field = field_of(index.column())) {
        changed.field(*field) = value.toString().simplified().toStdString();
    } else {
        return false;
    }
    if (changed == row(index.row())) {
        return true;
    }
    change(index.row(), changed);
    return true;
}

void RecceModel::change(int at, const RecceRow& changed) {
    if (at < static_cast<int>(rows_.size())) {
        Q_EMIT text_wanted(text(survey::with_row(text_, changed)));
        return;
    }
    next_ = changed;
    if (survey::is_whole(next_)) {
        RecceRow done;
        // The next fact is most likely of the same kind.
        done.kind = next_.kind == RowKind::corners ? RowKind::reading : next_.kind;
        const std::string text_then = survey::with_row(text_, std::exchange(next_, done));
        Q_EMIT text_wanted(text(text_then));
    } else {
        Q_EMIT dataChanged(index(at, 0), index(at, kColumns - 1));
    }
}

void RecceModel::take_out(int at) {
    if (at >= 0 && at < static_cast<int>(rows_.size())) {
        Q_EMIT text_wanted(text(survey::without_row(text_, rows_[static_cast<std::size_t>(at)])));
    }
}

} // namespace throwline::ui
