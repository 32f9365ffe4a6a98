#pragma once

#include "edit/stores.h"

#include <QAbstractItemModel>
#include <QString>
#include <set>
#include <string>
#include <vector>

namespace throwline::ui {

class Desk;

/// The MIME type under which something is dragged out of the Stores.
QString store_mime_type();

/// Shelves, and on each the items that a search finds. The second column is how many the crew owns,
/// which can be typed.
class StoresModel : public QAbstractItemModel {
    Q_OBJECT

  public:
    enum Column { item_column, owned_column, column_count };

    explicit StoresModel(Desk& desk, QObject* parent = nullptr);

    void search(const QString& words);
    void set_own_names(std::set<std::string> names);
    bool is_own(const edit::StoresRow& row) const { return own_.contains(row.item); }
    /// Null for a shelf.
    const edit::StoresRow* row_at(const QModelIndex& index) const;
    /// The shelf's name and how many items stand on it.
    QString shelf_words(const QModelIndex& index) const;
    /// Where an item of the catalogue is; invalid when it is not shown.
    QModelIndex index_of(const std::string& name) const;

    QModelIndex index(int row, int column, const QModelIndex& parent = {}) const override;
    QModelIndex parent(const QModelIndex& index) const override;
    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    QStringList mimeTypes() const override;
    QMimeData* mimeData(const QModelIndexList& indexes) const override;
    Qt::DropActions supportedDragActions() const override { return Qt::CopyAction; }

  private:
    struct Shelf {
        edit::StoresShelf shelf = edit::StoresShelf::flats;
        /// Places in rows_.
        std::vector<std::size_t> rows;

        bool operator==(const Shelf&) const = default;
    };
    std::vector<Shelf> shelves_found() const;
    void fill();

    Desk& desk_;
    QString search_;
    std::set<std::string> own_;
    std::vector<edit::StoresRow> rows_;
    std::vector<Shelf> shelves_;
};

} // namespace throwline::ui
