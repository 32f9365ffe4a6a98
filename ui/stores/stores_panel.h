#pragma once

#include "catalogue/own_rows.h"
#include "edit/make.h"
#include "ui/desk/desk.h"

#include <QWidget>
#include <filesystem>

class QLabel;
class QLineEdit;
class QPushButton;
class QTreeView;

namespace throwline::ui {

class OwnItemForm;
class StorePainter;
class StoresModel;

/// Where the user's own items are kept: in the user's data folder.
std::filesystem::path usual_own_items_file();

/// A drawer of everything that can be put on the floor. Items are dragged out, or put in the middle
/// with Enter; how many the crew owns is typed beside them.
class StoresPanel : public QWidget {
    Q_OBJECT

  public:
    /// Own items of the file are added to the desk's catalogue at once.
    explicit StoresPanel(Desk& desk, QWidget* parent = nullptr,
                         std::filesystem::path own_items = usual_own_items_file());
    ~StoresPanel() override;

    void search(const QString& words);
    QTreeView& shelves() const { return *shelves_; }
    StoresModel& model() const { return *model_; }
    /// The form for a new item, which begins as the one that the line is on, or for changing the
    /// own item that the line is on; null where that is none. It shows itself.
    OwnItemForm* open_form(bool is_new);
    /// Takes the own item that the line is on out of the file. Refused with a sentence while the
    /// plan needs it.
    void remove_own();

  Q_SIGNALS:
    /// Something is to be put in the middle of the floor.
    void put_wanted(const throwline::edit::StoreItem& item);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void add_search();
    void add_shelves();
    void add_buttons();
    void tell_found();
    void tell_buttons();
    void put_current();
    void edit_count();
    Checked<void> keep_own(const catalogue::OwnRow& row, const std::string& replaced);
    bool is_needed(const std::string& item) const;
    /// Reads the file again. Errors: what is wrong with it.
    Checked<void> read_own();

    Desk& desk_;
    /// Without own items.
    CataloguePtr base_;
    std::filesystem::path own_items_;
    StoresModel* model_ = nullptr;
    QLineEdit* search_ = nullptr;
    QLabel* found_ = nullptr;
    QTreeView* shelves_ = nullptr;
    StorePainter* painter_ = nullptr;
    QPushButton* put_ = nullptr;
    QPushButton* edit_own_ = nullptr;
    QPushButton* remove_own_ = nullptr;
};

} // namespace throwline::ui
