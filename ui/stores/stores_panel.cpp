#include "ui/stores/stores_panel.h"

#include "catalogue/own_items.h"
#include "checks/things_used.h"
#include "ui/look/clear_button.h"
#include "ui/stores/own_item_form.h"
#include "ui/stores/shelves.h"
#include "ui/stores/store_painter.h"
#include "ui/stores/stores_model.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStandardPaths>
#include <QTimer>
#include <QTreeView>
#include <QVBoxLayout>
#include <algorithm>
#include <fmt/format.h>

namespace throwline::ui {

namespace {

QString text(const std::string& words) {
    return QString::fromStdString(words);
}

QString first_of(const Errors& errors) {
    return text(text_of(errors.front()));
}

QPushButton* button(const QString& words, const QString& tip, QWidget* parent) {
    auto* made = new QPushButton{words, parent};
    made->setToolTip(tip);
    made->setAccessibleDescription(tip);
    made->setAutoDefault(false);
    return made;
}

/// Around the words of a column's head.
constexpr int kHeaderMargins_px = 10;

} // namespace

std::filesystem::path usual_own_items_file() {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::AppDataLocation);
    return std::filesystem::path{folder.toStdString()} / "own-items.json";
}

StoresPanel::StoresPanel(Desk& desk, QWidget* parent, std::filesystem::path own_items)
    : QWidget{parent}, desk_{desk}, base_{desk.catalogue()}, own_items_{std::move(own_items)} {
    setAccessibleName(tr("Stores"));
    setAutoFillBackground(true);
    model_ = new StoresModel{desk_, this};
    auto* rows = new QVBoxLayout{this};
    rows->setContentsMargins(6, 6, 6, 6);
    rows->setSpacing(4);
    add_search();
    add_shelves();
    add_buttons();
    setFocusProxy(search_);
    connect(&desk_, &Desk::catalogue_changed, this, [this] { painter_->forget_symbols(); });
    if (const auto own = read_own(); !own) {
        // Whoever shows sentences listens only once this is built.
        QTimer::singleShot(0, this, [this, why = first_of(own.error())] { desk_.say(why); });
    }
    tell_found();
    tell_buttons();
}

StoresPanel::~StoresPanel() = default;

void StoresPanel::add_search() {
    search_ = new QLineEdit{this};
    search_->setPlaceholderText(tr("Search the Stores"));
    search_->setAccessibleName(tr("Search the Stores"));
    search_->setToolTip(tr("Any words of a name or a shelf; Down goes to what was found"));
    add_clear_button(*search_);
    search_->installEventFilter(this);
    connect(search_, &QLineEdit::textChanged, this, &StoresPanel::search);
    found_ = new QLabel{this};
    found_->setWordWrap(true);
    found_->setAccessibleName(tr("What was found"));
    layout()->addWidget(search_);
    layout()->addWidget(found_);
}

void StoresPanel::add_shelves() {
    shelves_ = new Shelves{[this](const QModelIndex& index) {
                               const edit::StoresRow* row = model_->row_at(index);
                               return row == nullptr ? QPixmap{} : painter_->symbol(*row);
                           },
                           this};
    shelves_->setModel(model_);
    painter_ = new StorePainter{*model_, desk_, *shelves_};
    shelves_->setItemDelegate(painter_);
    shelves_->setAccessibleName(tr("Shelves"));
    shelves_->setAccessibleDescription(
        tr("Enter puts an item in the middle of the floor; F2 types how many the crew owns"));
    shelves_->setDragEnabled(true);
    shelves_->setDragDropMode(QAbstractItemView::DragOnly);
    shelves_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    shelves_->setExpandsOnDoubleClick(false);
    shelves_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    shelves_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    // The painter draws the marks that open and close shelves; every pixel of width is for words.
    shelves_->setIndentation(0);
    shelves_->setRootIsDecorated(false);
    shelves_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    shelves_->setAllColumnsShowFocus(false);
    shelves_->installEventFilter(this);
    QHeaderView& header = *shelves_->header();
    header.setStretchLastSection(false);
    header.setSectionResizeMode(StoresModel::item_column, QHeaderView::Stretch);
    header.setSectionResizeMode(StoresModel::owned_column, QHeaderView::Fixed);
    header.setMinimumSectionSize(20);
    header.resizeSection(StoresModel::owned_column,
                         fontMetrics().horizontalAdvance(tr("Owned")) + kHeaderMargins_px);
    header.setSectionsMovable(false);
    connect(&header, &QHeaderView::sectionResized, this,
            [this] { Q_EMIT painter_->sizeHintChanged({}); });
    connect(shelves_, &QTreeView::doubleClicked, this, [this](const QModelIndex& index) {
        if (index.column() == StoresModel::item_column) {
            put_current();
        }
    });
    connect(shelves_, &QTreeView::clicked, this, [this](const QModelIndex& index) {
        if (model_->row_at(index) == nullptr) {
            shelves_->setExpanded(index, !shelves_->isExpanded(index));
        } else if (index.column() == StoresModel::owned_column) {
            edit_count();
        }
    });
    connect(shelves_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            &StoresPanel::tell_buttons);
    connect(model_, &QAbstractItemModel::modelReset, this, [this] {
        tell_found();
        tell_buttons();
    });
    qobject_cast<QVBoxLayout*>(layout())->addWidget(shelves_, 1);
}

void StoresPanel::add_buttons() {
    auto* row = new QHBoxLayout;
    put_ = button(tr("&Put down"), tr("Puts it in the middle of what is looked at (Enter)"), this);
    connect(put_, &QPushButton::clicked, this, &StoresPanel::put_current);
    auto* add =
        button(tr("&New own\u2026"),
               tr("An item of one's own, like the one that is chosen; kept for every plan"), this);
    connect(add, &QPushButton::clicked, this, [this] { open_form(true); });
    row->addWidget(put_);
    row->addWidget(add);
    row->addStretch();
    auto* own_row = new QHBoxLayout;
    edit_own_ = button(tr("&Change own\u2026"), tr("Changes the own item that is chosen"), this);
    connect(edit_own_, &QPushButton::clicked, this, [this] { open_form(false); });
    remove_own_ = button(tr("&Remove own"), tr("Takes the own item out of the Stores"), this);
    connect(remove_own_, &QPushButton::clicked, this, &StoresPanel::remove_own);
    own_row->addWidget(edit_own_);
    own_row->addWidget(remove_own_);
    own_row->addStretch();
    auto* rows = qobject_cast<QVBoxLayout*>(layout());
    rows->addLayout(row);
    rows->addLayout(own_row);
}

void StoresPanel::search(const QString& words) {
    if (search_->text() != words) {
        search_->setText(words);
        return;
    }
    model_->search(words.trimmed());
    if (words.trimmed().isEmpty()) {
        shelves_->collapseAll();
    } else {
        shelves_->expandAll();
    }
}

void StoresPanel::tell_found() {
    const bool has_words = !search_->text().trimmed().isEmpty();
    found_->setVisible(has_words && model_->rowCount() == 0);
    found_->setText(tr("Nothing on the shelves is called like that."));
}

void StoresPanel::tell_buttons() {
    const edit::StoresRow* row = model_->row_at(shelves_->currentIndex());
    const bool is_own = row != nullptr && model_->is_own(*row);
    put_->setEnabled(row != nullptr && row->put.has_value());
    edit_own_->setVisible(is_own && !row->table.empty());
    remove_own_->setVisible(is_own);
}

void StoresPanel::put_current() {
    const edit::StoresRow* row = model_->row_at(shelves_->currentIndex());
    if (row != nullptr && row->put) {
        Q_EMIT put_wanted(*row->put);
    }
}

void StoresPanel::edit_count() {
    const QModelIndex current = shelves_->currentIndex();
    const edit::StoresRow* row = model_->row_at(current);
    if (row != nullptr && !row->item.empty()) {
        shelves_->edit(current.siblingAtColumn(StoresModel::owned_column));
    }
}

bool StoresPanel::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) {
        return QWidget::eventFilter(watched, event);
    }
    const int key = static_cast<QKeyEvent*>(event)->key();
    const bool is_enter = key == Qt::Key_Return || key == Qt::Key_Enter;
    if (watched == search_ && (key == Qt::Key_Down || is_enter) && model_->rowCount() > 0) {
        const QModelIndex shelf = model_->index(0, 0);
        shelves_->setCurrentIndex(shelves_->isExpanded(shelf) ? model_->index(0, 0, shelf) : shelf);
        shelves_->setFocus();
        return true;
    }
    if (watched == shelves_ && key == Qt::Key_F2) {
        edit_count();
        return true;
    }
    if (watched == shelves_ && is_enter) {
        const QModelIndex current = shelves_->currentIndex();
        if (current.isValid() && model_->row_at(current) == nullptr) {
            shelves_->setExpanded(current, !shelves_->isExpanded(current));
        } else {
            put_current();
        }
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

OwnItemForm* StoresPanel::open_form(bool is_new) {
    const edit::StoresRow* row = model_->row_at(shelves_->currentIndex());
    std::optional<catalogue::OwnRow> known;
    if (row != nullptr) {
        known = catalogue::own_row(*desk_.catalogue(), row->table, row->item);
    }
    if (!is_new && !known) {
        return nullptr;
    }
    if (!known) {
        known = catalogue::OwnRow{"stock"};
    }
    const std::string replaced = is_new ? "" : known->name();
    auto* form = new OwnItemForm{
        *std::move(known),
        is_new ? OwnItemForm::Asks::for_a_new_one : OwnItemForm::Asks::for_changes,
        desk_.plan()->units,
        [this, replaced](const catalogue::OwnRow& typed) { return keep_own(typed, replaced); },
        this};
    form->setAttribute(Qt::WA_DeleteOnClose);
    form->open();
    return form;
}

/// Keeps it, and takes the one it replaces away when it has another name.
Checked<void> StoresPanel::keep_own(const catalogue::OwnRow& row, const std::string& replaced) {
    const std::string name = row.name();
    const bool is_renamed = !replaced.empty() && replaced != name;
    if (is_renamed && is_needed(replaced)) {
        return tl::unexpected<Errors>{
            Errors{{fmt::format("{} is on the plan or in its kit; it cannot get another name now",
                                replaced),
                    {{}, "/name"}}}};
    }
    if (const auto kept = catalogue::own_item_kept(own_items_, row); !kept) {
        return kept;
    }
    if (is_renamed) {
        if (const auto gone = catalogue::own_item_removed(own_items_, replaced); !gone) {
            return gone;
        }
    }
    const Checked<void> read = read_own();
    if (read) {
        search(text(name));
        shelves_->setCurrentIndex(model_->index_of(name));
    }
    return read;
}

bool StoresPanel::is_needed(const std::string& item) const {
    const plan::Plan& plan = *desk_.plan();
    const auto used = checks::things_used(plan);
    return used.contains(item)
           || std::any_of(plan.kit.begin(), plan.kit.end(),
                          [&](const plan::KitItem& owned) { return owned.item == item; });
}

void StoresPanel::remove_own() {
    const edit::StoresRow* row = model_->row_at(shelves_->currentIndex());
    if (row == nullptr || !model_->is_own(*row)) {
        return;
    }
    const std::string item = row->item;
    if (is_needed(item)) {
        desk_.say(tr("%1 is on the plan or in its kit; take it away there first").arg(text(item)));
        return;
    }
    if (const auto gone = catalogue::own_item_removed(own_items_, item); !gone) {
        desk_.say(first_of(gone.error()));
        return;
    }
    if (const auto own = read_own(); !own) {
        desk_.say(first_of(own.error()));
    }
}

Checked<void> StoresPanel::read_own() {
    const auto names = catalogue::own_names(own_items_);
    if (!names) {
        return tl::unexpected<Errors>{names.error()};
    }
    if (names->empty() && desk_.catalogue() == base_) {
        return {};
    }
    auto all = names->empty() ? Checked<catalogue::Catalogue>{*base_}
                              : catalogue::with_own_items(*base_, own_items_);
    if (!all) {
        return tl::unexpected<Errors>{all.error()};
    }
    model_->set_own_names({names->begin(), names->end()});
    desk_.set_catalogue(std::make_shared<const catalogue::Catalogue>(std::move(*all)));
    return {};
}

} // namespace throwline::ui
