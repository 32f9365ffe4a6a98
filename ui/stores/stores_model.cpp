#include "ui/stores/stores_model.h"

#include "ui/desk/desk.h"

#include <QJsonDocument>
#include <QJsonObject>
#include <QMimeData>
#include <algorithm>

namespace throwline::ui {

namespace {

QString text(std::string_view words) {
    return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
}

const char* name_of(edit::Shelf shelf) {
    switch (shelf) {
    case edit::Shelf::stock:
        return "stock";
    case edit::Shelf::person:
        return "person";
    case edit::Shelf::camera:
        return "camera";
    case edit::Shelf::lamp:
        return "lamp";
    case edit::Shelf::boom:
        return "boom";
    case edit::Shelf::outlet:
        return "outlet";
    }
    return "";
}

} // namespace

QString store_mime_type() {
    return QStringLiteral("application/x-throwline-item");
}

StoresModel::StoresModel(Desk& desk, QObject* parent) : QAbstractItemModel{parent}, desk_{desk} {
    connect(&desk_, &Desk::plan_changed, this, &StoresModel::fill);
    connect(&desk_, &Desk::catalogue_changed, this, &StoresModel::fill);
    rows_ = edit::stores_rows(*desk_.plan(), *desk_.catalogue());
    shelves_ = shelves_found();
}

void StoresModel::search(const QString& words) {
    if (words != search_) {
        beginResetModel();
        search_ = words;
        shelves_ = shelves_found();
        endResetModel();
    }
}

void StoresModel::set_own_names(std::set<std::string> names) {
    own_ = std::move(names);
}

/// The counts change at every step, what stands on the shelves hardly ever: then the lines stay.
void StoresModel::fill() {
    std::vector<edit::StoresRow> rows = edit::stores_rows(*desk_.plan(), *desk_.catalogue());
    const bool same_items =
        std::equal(rows.begin(), rows.end(), rows_.begin(), rows_.end(),
                   [](const auto& a, const auto& b) { return a.name == b.name; });
    if (!same_items) {
        beginResetModel();
        rows_ = std::move(rows);
        shelves_ = shelves_found();
        endResetModel();
        return;
    }
    rows_ = std::move(rows);
    for (int shelf = 0; shelf < static_cast<int>(shelves_.size()); ++shelf) {
        const QModelIndex top = index(shelf, 0);
        Q_EMIT dataChanged(index(0, 0, top), index(rowCount(top) - 1, owned_column, top));
    }
}

std::vector<StoresModel::Shelf> StoresModel::shelves_found() const {
    std::vector<Shelf> shelves;
    for (const std::size_t row : edit::found_in_stores(rows_, search_.toStdString())) {
        const edit::StoresShelf shelf = rows_[row].shelf;
        if (shelves.empty() || shelves.back().shelf != shelf) {
            shelves.push_back({shelf, {}});
        }
        shelves.back().rows.push_back(row);
    }
    return shelves;
}

const edit::StoresRow* StoresModel::row_at(const QModelIndex& index) const {
    if (!index.isValid() || index.internalId() == 0) {
        return nullptr;
    }
    const Shelf& shelf = shelves_[index.internalId() - 1];
    return &rows_[shelf.rows[static_cast<std::size_t>(index.row())]];
}

QString StoresModel::shelf_words(const QModelIndex& index) const {
    const Shelf& shelf = shelves_[static_cast<std::size_t>(index.row())];
    return QStringLiteral("%1 (%2)").arg(text(edit::name_of(shelf.shelf))).arg(shelf.rows.size());
}

QModelIndex StoresModel::index_of(const std::string& name) const {
    for (int shelf = 0; shelf < rowCount(); ++shelf) {
        const QModelIndex top = index(shelf, 0);
        for (int row = 0; row < rowCount(top); ++row) {
            const QModelIndex item = index(row, 0, top);
            if (row_at(item)->name == name) {
                return item;
            }
        }
    }
    return {};
}

QModelIndex StoresModel::index(int row, int column, const QModelIndex& parent) const {
    if (row < 0 || row >= rowCount(parent) || column < 0 || column >= column_count) {
        return {};
    }
    // Shelves have 0, items the place of their shelf from 1.
    const quintptr id = parent.isValid() ? static_cast<quintptr>(parent.row()) + 1 : 0;
    return createIndex(row, column, id);
}

QModelIndex StoresModel::parent(const QModelIndex& index) const {
    if (!index.isValid() || index.internalId() == 0) {
        return {};
    }
    return createIndex(static_cast<int>(index.internalId()) - 1, 0, quintptr{0});
}

int StoresModel::rowCount(const QModelIndex& parent) const {
    if (!parent.isValid()) {
        return static_cast<int>(shelves_.size());
    }
    const bool is_shelf = parent.internalId() == 0 && parent.column() == 0;
    return is_shelf ? static_cast<int>(shelves_[static_cast<std::size_t>(parent.row())].rows.size())
                    : 0;
}

int StoresModel::columnCount(const QModelIndex&) const {
    return column_count;
}

QVariant StoresModel::data(const QModelIndex& index, int role) const {
    const edit::StoresRow* row = row_at(index);
    if (row == nullptr) {
        const bool has_words = role == Qt::AccessibleTextRole
                               || (role == Qt::DisplayRole && index.column() == item_column);
        return index.isValid() && has_words ? QVariant{shelf_words(index)} : QVariant{};
    }
    const QString counts = text(edit::count_words(*row));
    if (index.column() == owned_column) {
        if (role == Qt::EditRole || role == Qt::DisplayRole) {
            return row->owned ? QVariant{*row->owned} : QVariant{};
        }
        if (role == Qt::AccessibleTextRole) {
            return row->owned ? tr("owned %1").arg(*row->owned) : tr("not counted");
        }
        if (role == Qt::ToolTipRole && !row->item.empty()) {
            return tr("How many the crew owns; F2 or a click types it, empty when not counted");
        }
        return {};
    }
    switch (role) {
    case Qt::DisplayRole:
        return text(row->name);
    case Qt::ToolTipRole:
    case Qt::AccessibleTextRole: {
        QStringList parts{text(row->name), text(row->size)};
        if (!counts.isEmpty()) {
            parts.append(counts);
        }
        if (is_own(*row)) {
            parts.append(tr("own item"));
        }
        return parts.join(QStringLiteral(", "));
    }
    default:
        return {};
    }
}

QVariant StoresModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    return section == item_column ? tr("Item") : tr("Owned");
}

bool StoresModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    const edit::StoresRow* row = row_at(index);
    if (row == nullptr || role != Qt::EditRole || index.column() != owned_column) {
        return false;
    }
    const QString typed = value.toString().trimmed();
    bool is_number = typed.isEmpty();
    const int count = typed.isEmpty() ? 0 : typed.toInt(&is_number);
    if (!is_number) {
        desk_.say(tr("\"%1\" is no count; type a whole number, or nothing").arg(typed));
        return false;
    }
    const std::string item = row->item;
    return desk_.take(edit::kit_set(desk_.context(), item,
                                    typed.isEmpty() ? std::nullopt : std::optional{count}));
}

Qt::ItemFlags StoresModel::flags(const QModelIndex& index) const {
    const edit::StoresRow* row = row_at(index);
    if (row == nullptr) {
        return index.isValid() ? Qt::ItemIsEnabled | Qt::ItemIsSelectable : Qt::NoItemFlags;
    }
    Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
    if (row->put) {
        flags |= Qt::ItemIsDragEnabled;
    }
    if (index.column() == owned_column && !row->item.empty()) {
        flags |= Qt::ItemIsEditable;
    }
    return flags;
}

QStringList StoresModel::mimeTypes() const {
    return {store_mime_type()};
}

QMimeData* StoresModel::mimeData(const QModelIndexList& indexes) const {
    for (const QModelIndex& index : indexes) {
        const edit::StoresRow* row = row_at(index);
        if (row == nullptr || !row->put) {
            continue;
        }
        const QJsonObject said{{QStringLiteral("shelf"), QLatin1String{name_of(row->put->shelf)}},
                               {QStringLiteral("item"), text(row->put->item)}};
        auto* data = new QMimeData;
        data->setData(store_mime_type(), QJsonDocument{said}.toJson(QJsonDocument::Compact));
        return data;
    }
    return nullptr;
}

} // namespace throwline::ui
