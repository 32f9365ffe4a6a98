#include "ui/sheets/sheets_window.h"

#include "lists/lists.h"
#include "ui/look/save_path.h"
#include "ui/sheets/page_preview.h"
#include "ui/sheets/print_pages.h"
#include "ui/sheets/save_sheets.h"
#include "ui/sheets/wishes_form.h"

#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QMenu>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrinter>
#include <QProgressBar>
#include <QPushButton>
#include <QScreen>
#include <QSettings>
#include <QVBoxLayout>
#include <algorithm>
#include <chrono>

namespace throwline::ui {

namespace {

using namespace std::chrono_literals;

/// Drawing that takes longer shows how far it is, and can be stopped.
constexpr auto kPatience = 500ms;
constexpr int kProgressSteps = 100;
constexpr int kSideWidth_px = 270;
constexpr int kListWidth_px = 170;

QString text_of(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString words_of(const sheet::Drawing& page) {
    QString words = QString::fromStdString(page.paper);
    if (!page.scale.empty()) {
        words = QObject::tr("%1 on %2").arg(QString::fromStdString(page.scale), words);
    }
    for (const sheet::LargerScale& larger : page.larger) {
        if (!larger.paper.empty()) {
            return words
                   + QObject::tr("; %1 would take %2")
                         .arg(QString::fromStdString(larger.scale),
                              QString::fromStdString(larger.paper));
        }
    }
    return words;
}

/// Counts pages for work that counts its share.
paint::MayGoOn by_page(const FileWorker::MayGoOn& may_go_on, std::size_t pages) {
    return [&may_go_on, pages](std::size_t done) {
        return may_go_on(static_cast<double>(done) / static_cast<double>(pages));
    };
}

/// "Cookery" from a title that would not do as a file's name.
QString file_stem(const plan::Plan& plan) {
    QString stem = QString::fromStdString(plan.title).simplified();
    stem.replace(QLatin1Char{'/'}, QLatin1Char{'-'});
    return stem.isEmpty() ? QObject::tr("Sheets") : stem;
}

} // namespace

SheetsWindow::SheetsWindow(Desk& desk, QWidget* parent)
    : QWidget{parent}, desk_{desk}, units_{desk.plan()->units} {
    setWindowTitle(tr("Sheets"));
    auto* left = wishes();
    left->setFixedWidth(kSideWidth_px);
    list_ = new QListWidget{this};
    list_->setAccessibleName(tr("Pages"));
    list_->setFixedWidth(kListWidth_px);
    preview_ = new PagePreview{this};
    auto* middle = new QVBoxLayout;
    middle->addWidget(preview_, 1);
    middle->addWidget(foot());
    auto* columns = new QHBoxLayout{this};
    columns->addWidget(left);
    columns->addWidget(list_);
    columns->addLayout(middle, 1);
    resize(QSize{1120, 660}.boundedTo(screen()->availableSize() * 0.9));
    form_->show_wishes(kept_wishes(QSettings{}, units_));
    patience_.setSingleShot(true);
    patience_.setInterval(kPatience);
    writing_patience_.setSingleShot(true);
    writing_patience_.setInterval(kPatience);
    connect(form_, &WishesForm::changed, this, &SheetsWindow::wish_changed);
    connect(list_, &QListWidget::currentRowChanged, this, &SheetsWindow::show_page);
    connect(&desk_, &Desk::plan_changed, this, &SheetsWindow::look_at_plan);
    connect(&desk_, &Desk::analysis_changed, this, &SheetsWindow::draw);
    connect(&worker_, &SheetWorker::drawn, this, &SheetsWindow::take);
    connect(&worker_, &SheetWorker::went_on, progress_, [this](double share) {
        progress_->setValue(static_cast<int>(share * kProgressSteps));
    });
    connect(&patience_, &QTimer::timeout, this, &SheetsWindow::tell_state);
    connect(&writing_patience_, &QTimer::timeout, this, &SheetsWindow::tell_state);
    connect(&files_, &FileWorker::went_on, progress_, [this](double share) {
        if (!is_drawing()) {
            progress_->setValue(static_cast<int>(share * kProgressSteps));
        }
    });
    connect(&files_, &FileWorker::told, this, [this](const QString& sentence) {
        tell_state();
        told_->setText(sentence);
    });
    draw();
}

SheetsWindow::~SheetsWindow() = default;

// Its parts -----------------------------------------------------------------------------------

QWidget* SheetsWindow::wishes() {
    auto* side = new QWidget{this};
    auto* rows = new QVBoxLayout{side};
    rows->setContentsMargins(0, 0, 0, 0);
    form_ = new WishesForm{desk_, side};
    rows->addWidget(form_, 1);
    add_buttons(side);
    return side;
}

void SheetsWindow::add_buttons(QWidget* side) {
    print_ = new QPushButton{tr("P&rint\u2026"), side};
    save_ = new QPushButton{tr("&Save as PDF, PNG, SVG\u2026"), side};
    lists_ = new QPushButton{tr("L&ists as CSV"), side};
    auto* menu = new QMenu{lists_};
    fill_list_menu(*menu);
    lists_->setMenu(menu);
    auto* note =
        new QLabel{tr("Print at actual size, never \u201cfit to page\u201d, and lay a ruler on the "
                      "100 mm of the print."),
                   side};
    note->setWordWrap(true);
    for (QWidget* part : std::initializer_list<QWidget*>{print_, save_, lists_, note}) {
        side->layout()->addWidget(part);
    }
    connect(print_, &QPushButton::clicked, this, &SheetsWindow::print);
    connect(save_, &QPushButton::clicked, this, &SheetsWindow::ask_and_save);
}

void SheetsWindow::fill_list_menu(QMenu& menu) {
    menu.addAction(tr("&All of them, in a folder\u2026"), this, [this] { ask_and_save_list({}); });
    menu.addSeparator();
    for (const lists::ListKind& kind : lists::all_lists()) {
        QAction* action =
            menu.addAction(text_of(kind.title) + QStringLiteral("\u2026"), this,
                           [this, name = text_of(kind.name)] { ask_and_save_list(name); });
        action->setToolTip(text_of(kind.summary));
    }
    menu.setToolTipsVisible(true);
}

QWidget* SheetsWindow::foot() {
    auto* foot = new QWidget{this};
    auto* row = new QHBoxLayout{foot};
    row->setContentsMargins(0, 0, 0, 0);
    told_ = new QLabel{foot};
    told_->setWordWrap(true);
    told_->setAccessibleName(tr("About the pages"));
    progress_ = new QProgressBar{foot};
    progress_->setRange(0, kProgressSteps);
    progress_->setTextVisible(false);
    progress_->setAccessibleName(tr("Share of the pages that are drawn"));
    stop_ = new QPushButton{tr("Sto&p"), foot};
    again_ = new QPushButton{tr("&Draw again"), foot};
    row->addWidget(told_, 1);
    row->addWidget(progress_, 1);
    row->addWidget(stop_);
    row->addWidget(again_);
    connect(stop_, &QPushButton::clicked, this, &SheetsWindow::stop);
    connect(again_, &QPushButton::clicked, this, [this] {
        if (desk_.analysis() == nullptr) {
            desk_.check_again();
        }
        draw();
    });
    return foot;
}

// What is wanted ------------------------------------------------------------------------------

PrintWish SheetsWindow::wish() const {
    const SheetWishes wishes = form_->wishes();
    PrintWish wish{wishes.kinds, options_for(wishes)};
    if (const plan::Id<plan::Shot> shot = form_->shot(); !shot.empty()) {
        wish.options.shots.push_back(shot);
    }
    if (wishes.underlay) {
        wish.options.underlay = underlay_;
    }
    return wish;
}

void SheetsWindow::wish_changed() {
    QSettings settings;
    keep_wishes(settings, form_->wishes(), units_);
    draw();
}

void SheetsWindow::look_at_plan() {
    form_->look_at_plan();
    if (desk_.plan()->units != units_) {
        units_ = desk_.plan()->units;
        form_->show_wishes(kept_wishes(QSettings{}, units_));
    }
}

void SheetsWindow::set_underlay(std::shared_ptr<const sheet::Pixels> underlay) {
    underlay_ = std::move(underlay);
    draw();
}

// Drawing -------------------------------------------------------------------------------------

bool SheetsWindow::is_drawing() const {
    return worker_.is_working();
}

std::span<const sheet::Drawing> SheetsWindow::pages() const {
    if (shown_ == nullptr || !shown_->pages || is_drawing() || desk_.analysis() == nullptr) {
        return {};
    }
    return *shown_->pages;
}

QString SheetsWindow::words() const {
    return told_->text();
}

void SheetsWindow::draw() {
    worker_.stop();
    progress_->setValue(0);
    if (const AnalysisPtr known = desk_.analysis()) {
        worker_.ask({known, desk_.catalogue(), wish()});
    }
    // Pages of before stay a moment, so that quick answers do not flicker.
    if (!patience_.isActive()) {
        patience_.start();
    }
    tell_state();
}

void SheetsWindow::stop() {
    files_.stop();
    if (desk_.analysis() != nullptr && !is_drawing()) {
        return;
    }
    if (desk_.analysis() == nullptr) {
        desk_.stop_checking();
    }
    worker_.stop();
    shown_.reset();
    patience_.stop();
    tell_state();
}

void SheetsWindow::take(std::shared_ptr<const DrawnSheets> sheets) {
    patience_.stop();
    const int before = list_->currentRow();
    shown_ = std::move(sheets);
    {
        const QSignalBlocker quiet{list_};
        list_->clear();
        for (const sheet::Drawing& page : pages()) {
            list_->addItem(QString::fromStdString(page.subject.empty() ? page.title : page.subject)
                               .section(QStringLiteral(" of "), 0, 0));
        }
        list_->setCurrentRow(std::clamp(before, 0, std::max(0, list_->count() - 1)));
    }
    tell_state();
    show_page();
}

/// What can be done now, and why nothing is to be seen.
void SheetsWindow::tell_state() {
    const bool is_checking = desk_.analysis() == nullptr && desk_.is_checking();
    const bool is_busy = is_checking || is_drawing();
    const bool takes_long = is_busy && !patience_.isActive();
    const bool writes_long = files_.is_busy() && !writing_patience_.isActive();
    progress_->setVisible((takes_long && is_drawing()) || writes_long);
    stop_->setVisible(takes_long || writes_long);
    again_->setVisible(!is_busy && shown_ == nullptr);
    const bool has_pages = !pages().empty();
    print_->setEnabled(has_pages && !files_.is_busy());
    save_->setEnabled(has_pages && !files_.is_busy());
    lists_->setEnabled(desk_.analysis() != nullptr && !files_.is_busy());
    if (has_pages) {
        return;
    }
    if (!is_busy || takes_long) {
        preview_->show(nullptr);
        list_->clear();
    }
    if (is_busy) {
        told_->setText(is_checking ? tr("Checking the plan\u2026") : tr("Drawing\u2026"));
    } else if (shown_ == nullptr) {
        told_->setText(tr("Nothing is drawn: it was stopped."));
    } else if (!shown_->pages) {
        told_->setText(QString::fromStdString(shown_->pages.error().message));
    } else if (shown_->question.wish.kinds.empty()) {
        told_->setText(tr("Tick what is to be printed."));
    } else {
        told_->setText(tr("The plan has nothing to show on what is ticked."));
    }
}

void SheetsWindow::show_page() {
    const int row = list_->currentRow();
    if (row < 0 || static_cast<std::size_t>(row) >= pages().size()) {
        return;
    }
    const sheet::Drawing& page = pages()[static_cast<std::size_t>(row)];
    preview_->show(std::shared_ptr<const sheet::Drawing>{shown_, &page});
    told_->setText(words_of(page));
}

// Printing and saving -------------------------------------------------------------------------

void SheetsWindow::save_to(const QString& path) {
    if (pages().empty()) {
        return;
    }
    const auto shown = static_cast<std::size_t>(std::max(0, list_->currentRow()));
    write([this, path, shown, held = shown_](const FileWorker::MayGoOn& may_go_on) {
        return saved_pages(session_, path, *held->pages, shown,
                           by_page(may_go_on, held->pages->size()));
    });
    told_->setText(tr("Saving\u2026"));
}

/// Has work with files done, with its progress and a way to stop it once it takes long.
void SheetsWindow::write(FileWorker::Work work) {
    files_.ask(std::move(work));
    if (!is_drawing()) {
        progress_->setValue(0);
    }
    writing_patience_.start();
    tell_state();
}

void SheetsWindow::save_lists(const QString& folder) {
    if (const AnalysisPtr known = desk_.analysis()) {
        write([known, tables = desk_.catalogue(), folder](const FileWorker::MayGoOn&) {
            return saved_lists(*known, *tables, folder);
        });
    }
}

void SheetsWindow::save_list(const QString& name, const QString& path) {
    if (const AnalysisPtr known = desk_.analysis()) {
        write([known, tables = desk_.catalogue(), name, path](const FileWorker::MayGoOn&) {
            return saved_list(*known, *tables, name, path);
        });
    }
}

void SheetsWindow::ask_and_save() {
    const QString path = asked_path_to_save(
        this, tr("Save sheets"), file_stem(*desk_.plan()) + QStringLiteral(".pdf"),
        {tr("All pages as PDF (*.pdf)"), tr("This page as PNG (*.png)"),
         tr("This page as SVG (*.svg)")});
    if (!path.isEmpty()) {
        save_to(path);
    }
}

/// Asks when lists of an earlier time, which somebody may have written into, are there.
bool SheetsWindow::may_replace_in(const QString& folder) {
    const QStringList there = lists_in(folder);
    return there.isEmpty()
           || QMessageBox::question(this, tr("Lists in %1").arg(folder),
                                    tr("These are there already and would be replaced: %1.")
                                        .arg(there.join(QStringLiteral(", "))),
                                    QMessageBox::Save | QMessageBox::Cancel, QMessageBox::Cancel)
                  == QMessageBox::Save;
}

/// No name stands for all of them.
void SheetsWindow::ask_and_save_list(const QString& name) {
    if (name.isEmpty()) {
        const QString folder = QFileDialog::getExistingDirectory(this, tr("Folder for the lists"));
        if (!folder.isEmpty() && may_replace_in(folder)) {
            save_lists(folder);
        }
        return;
    }
    const QString path = asked_path_to_save(this, tr("Save a list"), name + QStringLiteral(".csv"),
                                            {tr("Comma-separated (*.csv)")});
    if (!path.isEmpty()) {
        save_list(name, path);
    }
}

void SheetsWindow::print() {
    const std::shared_ptr<const DrawnSheets> held = shown_;
    if (pages().empty()) {
        return;
    }
    const auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    set_up(*printer, held->pages->front());
    if (QPrintDialog dialog{printer.get(), this}; dialog.exec() == QDialog::Accepted) {
        print_on(printer, held);
    }
}

void SheetsWindow::print_on(std::shared_ptr<QPrinter> printer,
                            std::shared_ptr<const DrawnSheets> sheets) {
    write([printer = std::move(printer),
           sheets = std::move(sheets)](const FileWorker::MayGoOn& may_go_on) {
        return print_pages(*printer, *sheets->pages, by_page(may_go_on, sheets->pages->size()));
    });
    told_->setText(tr("Printing\u2026"));
}

} // namespace throwline::ui
