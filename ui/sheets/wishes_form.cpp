#include "ui/sheets/wishes_form.h"

#include "sheet/sheet_kinds.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QGridLayout>
#include <QListWidget>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>

namespace throwline::ui {

namespace {

QString text_of(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

/// "floor-plan" as people say it.
QString shown_kind(std::string_view name) {
    QString words = text_of(name).replace(QLatin1Char{'-'}, QLatin1Char{' '});
    words[0] = words[0].toUpper();
    return words;
}

/// What can be left off a sheet.
struct SwitchRow {
    const char* words;
    bool SheetWishes::* part;
    /// Whether the plan has any of it.
    bool (*is_there)(const plan::Plan&);
};
constexpr std::array<SwitchRow, 5> kSwitches{
    SwitchRow{"Camera c&overage", &SheetWishes::coverage,
              [](const plan::Plan& plan) { return !plan.cameras.empty(); }},
    SwitchRow{"Poo&ls of light", &SheetWishes::pools,
              [](const plan::Plan& plan) { return !plan.lamps.empty(); }},
    SwitchRow{"&Findings", &SheetWishes::findings, [](const plan::Plan&) { return true; }},
    SwitchRow{"S&quares", &SheetWishes::ground, [](const plan::Plan&) { return true; }},
    SwitchRow{"Scanned pla&n", &SheetWishes::underlay,
              [](const plan::Plan& plan) { return plan.underlay.has_value(); }}};

/// The first entry of the kinds stands for all of them.
constexpr int kAllRow = 0;

/// Chooses an entry by its words, else the first.
void choose(QComboBox& box, const QString& words) {
    box.setCurrentIndex(std::max(0, box.findText(words)));
}

/// Other entries, the choice kept where it can be.
void fill(QComboBox& box, const QStringList& entries) {
    const QString chosen = box.currentText();
    const QSignalBlocker quiet{box};
    box.clear();
    box.addItems(entries);
    choose(box, chosen);
}

} // namespace

WishesForm::WishesForm(Desk& desk, QWidget* parent) : QWidget{parent}, desk_{desk} {
    auto* rows = new QVBoxLayout{this};
    rows->setContentsMargins(0, 0, 0, 0);
    add_kinds();
    add_boxes();
    add_switches();
    look_at_plan();
}

void WishesForm::add_kinds() {
    kinds_ = new QListWidget{this};
    kinds_->setAccessibleName(tr("Sheets to print"));
    const auto add = [&](const QString& words, std::string_view name, const QString& hint) {
        auto* entry = new QListWidgetItem{words, kinds_};
        entry->setData(Qt::UserRole, text_of(name));
        entry->setToolTip(hint);
        entry->setFlags(entry->flags() | Qt::ItemIsUserCheckable);
        entry->setCheckState(Qt::Unchecked);
    };
    add(tr("Everything"), {}, tr("Every kind of sheet that has something to show"));
    for (const sheet::SheetKind& kind : sheet::all_sheets()) {
        add(shown_kind(kind.name), kind.name, text_of(kind.summary));
    }
    connect(kinds_, &QListWidget::itemChanged, this, &WishesForm::tick);
    qobject_cast<QVBoxLayout*>(layout())->addWidget(kinds_, 1);
}

void WishesForm::add_boxes() {
    auto* form = new QFormLayout;
    const auto combo = [&](const QString& label) {
        auto* box = new QComboBox{this};
        box->setAccessibleName(QString{label}.remove(QLatin1Char{'&'}));
        form->addRow(label, box);
        return box;
    };
    paper_ = combo(tr("Pap&er"));
    way_ = combo(tr("&Way round"));
    scale_ = combo(tr("S&cale"));
    shot_ = combo(tr("S&hots"));
    for (const catalogue::Paper& paper : desk_.catalogue()->papers) {
        paper_->addItem(QString::fromStdString(paper.name));
    }
    way_->addItems({tr("As fits best"), tr("Landscape"), tr("Portrait")});
    for (QComboBox* box : {paper_, way_, scale_, shot_}) {
        connect(box, &QComboBox::currentIndexChanged, this, &WishesForm::changed);
    }
    connect(scale_, &QComboBox::currentIndexChanged, this,
            [this] { tiles_->setEnabled(scale_->currentIndex() > 0); });
    qobject_cast<QVBoxLayout*>(layout())->addLayout(form);
}

void WishesForm::add_switches() {
    auto* cells = new QGridLayout;
    for (std::size_t i = 0; i < kSwitches.size(); ++i) {
        switches_[i] = new QCheckBox{tr(kSwitches[i].words), this};
        cells->addWidget(switches_[i], static_cast<int>(i) / 2, static_cast<int>(i) % 2);
        connect(switches_[i], &QCheckBox::toggled, this, &WishesForm::changed);
    }
    tiles_ = new QCheckBox{tr("&Tiles"), this};
    tiles_->setToolTip(tr("At a scale of your own choice: a drawing that is too large for the "
                          "paper goes on several sheets of it, to be glued together"));
    tiles_->setEnabled(false);
    cells->addWidget(tiles_, 2, 1);
    connect(tiles_, &QCheckBox::toggled, this, &WishesForm::changed);
    qobject_cast<QVBoxLayout*>(layout())->addLayout(cells);
}

void WishesForm::look_at_plan() {
    QStringList scales{tr("The largest that fits")};
    for (const catalogue::DrawingScale& scale : desk_.catalogue()->scales) {
        if (scale.system == desk_.plan()->units) {
            scales << QString::fromStdString(scale.name);
        }
    }
    QStringList shots{tr("All")};
    for (const plan::Shot& shot : desk_.plan()->shots) {
        shots << QString::fromStdString(shot.id.name);
    }
    fill(*scale_, scales);
    fill(*shot_, shots);
    for (std::size_t i = 0; i < kSwitches.size(); ++i) {
        switches_[i]->setEnabled(kSwitches[i].is_there(*desk_.plan()));
    }
    tiles_->setEnabled(scale_->currentIndex() > 0);
}

/// The entry for all says whether all, some or none are ticked, and ticks all or none.
void WishesForm::tick(QListWidgetItem* entry) {
    if (kinds_->row(entry) == kAllRow) {
        const QSignalBlocker quiet{kinds_};
        for (int row = kAllRow + 1; row < kinds_->count(); ++row) {
            kinds_->item(row)->setCheckState(entry->checkState());
        }
    }
    look_at_all();
    Q_EMIT changed();
}

void WishesForm::look_at_all() {
    const auto ticked = static_cast<int>(wishes().kinds.size());
    const QSignalBlocker quiet{kinds_};
    kinds_->item(kAllRow)->setCheckState(ticked == 0                     ? Qt::Unchecked
                                         : ticked + 1 == kinds_->count() ? Qt::Checked
                                                                         : Qt::PartiallyChecked);
}

SheetWishes WishesForm::wishes() const {
    SheetWishes wishes;
    wishes.kinds.clear();
    for (int row = kAllRow + 1; row < kinds_->count(); ++row) {
        const QListWidgetItem* entry = kinds_->item(row);
        if (entry->checkState() == Qt::Checked) {
            wishes.kinds.push_back(entry->data(Qt::UserRole).toString().toStdString());
        }
    }
    wishes.paper = paper_->currentText().toStdString();
    if (way_->currentIndex() > 0) {
        wishes.way = way_->currentIndex() == 1 ? sheet::Orientation::landscape
                                               : sheet::Orientation::portrait;
    }
    wishes.scale = scale_->currentIndex() > 0 ? scale_->currentText().toStdString() : std::string{};
    wishes.tiles = tiles_->isChecked();
    for (std::size_t i = 0; i < kSwitches.size(); ++i) {
        wishes.*kSwitches[i].part = switches_[i]->isChecked();
    }
    return wishes;
}

void WishesForm::show_wishes(const SheetWishes& wishes) {
    const QSignalBlocker quiet{this};
    for (int row = kAllRow + 1; row < kinds_->count(); ++row) {
        QListWidgetItem* entry = kinds_->item(row);
        const std::string name = entry->data(Qt::UserRole).toString().toStdString();
        const bool ticked =
            std::find(wishes.kinds.begin(), wishes.kinds.end(), name) != wishes.kinds.end();
        entry->setCheckState(ticked ? Qt::Checked : Qt::Unchecked);
    }
    look_at_all();
    const int paper = paper_->findText(QString::fromStdString(wishes.paper));
    choose(*paper_, paper < 0 ? text_of(usual_paper(desk_.plan()->units))
                              : QString::fromStdString(wishes.paper));
    way_->setCurrentIndex(!wishes.way ? 0 : *wishes.way == sheet::Orientation::landscape ? 1 : 2);
    choose(*scale_, QString::fromStdString(wishes.scale));
    tiles_->setChecked(wishes.tiles);
    for (std::size_t i = 0; i < kSwitches.size(); ++i) {
        switches_[i]->setChecked(wishes.*kSwitches[i].part);
    }
}

plan::Id<plan::Shot> WishesForm::shot() const {
    return shot_->currentIndex() > 0 ? plan::Id<plan::Shot>{shot_->currentText().toStdString()}
                                     : plan::Id<plan::Shot>{};
}

} // namespace throwline::ui
