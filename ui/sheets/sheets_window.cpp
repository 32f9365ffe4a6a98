#include "ui/sheets/sheets_window.h"

#include "base/text_file.h"
#include "ui/paint/fonts.h"
#include "ui/paint/paint.h"
#include "ui/paint/painter.h"
#include "ui/sheets/page_preview.h"
#include "ui/sheets/print_pages.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFileDialog>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QMetaObject>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QSettings>
#include <QVBoxLayout>

namespace throwline::ui {

namespace {

QString of(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

/// "floor-plan" as people say it.
QString shown_kind(std::string_view name) {
    QString words = of(name).replace(QLatin1Char{'-'}, QLatin1Char{' '});
    words[0] = words[0].toUpper();
    return words;
}

constexpr int kSideWidth_px = 250;

} // namespace

SheetsWindow::SheetsWindow(Desk& desk, QWidget* parent)
    : QWidget{parent}, desk_{desk}, measure_{std::make_unique<paint::FontMeasure>()} {
    setWindowTitle(tr("Sheets"));
    auto* left = wishes();
    left->setFixedWidth(kSideWidth_px);
    list_ = new QListWidget{this};
    list_->setAccessibleName(tr("Pages"));
    list_->setFixedWidth(170);
    preview_ = new PagePreview{this};
    told_ = new QLabel{this};
    told_->setWordWrap(true);
    auto* middle = new QVBoxLayout;
    middle->addWidget(preview_, 1);
    middle->addWidget(told_);
    auto* columns = new QHBoxLayout{this};
    columns->addWidget(left);
    columns->addWidget(list_);
    columns->addLayout(middle, 1);
    resize(1100, 720);
    connect(list_, &QListWidget::currentRowChanged, this, &SheetsWindow::show_page);
    connect(&desk_, &Desk::analysis_changed, this, &SheetsWindow::draw);
    draw();
}

SheetsWindow::~SheetsWindow() = default;

QWidget* SheetsWindow::wishes() {
    auto* side = new QWidget{this};
    auto* rows = new QVBoxLayout{side};
    rows->setContentsMargins(0, 0, 0, 0);
    kinds_ = new QListWidget{side};
    kinds_->setAccessibleName(tr("Sheets to print"));
    for (const sheet::SheetKind& kind : sheet::all_sheets()) {
        auto* entry = new QListWidgetItem{shown_kind(kind.name), kinds_};
        entry->setData(Qt::UserRole, of(kind.name));
        entry->setToolTip(of(kind.summary));
        entry->setFlags(entry->flags() | Qt::ItemIsUserCheckable);
        entry->setCheckState(kind.name == "floor-plan" ? Qt::Checked : Qt::Unchecked);
    }
    rows->addWidget(kinds_, 1);
    auto* form = new QFormLayout;
    const auto combo = [&](const QString& label) {
        auto* box = new QComboBox{side};
        box->setAccessibleName(QString{label}.remove(QLatin1Char{'&'}));
        form->addRow(label, box);
        connect(box, &QComboBox::currentIndexChanged, this, &SheetsWindow::draw);
        return box;
    };
    paper_ = combo(tr("&Paper"));
    way_ = combo(tr("&Way round"));
    scale_ = combo(tr("S&cale"));
    shot_ = combo(tr("S&hots"));
    const QSignalBlocker quiet[]{QSignalBlocker{paper_}, QSignalBlocker{way_},
                                 QSignalBlocker{scale_}, QSignalBlocker{shot_}};
    for (const catalogue::Paper& paper : desk_.catalogue()->papers) {
        paper_->addItem(QString::fromStdString(paper.name));
    }
    const QString kept =
        QSettings{}.value(QStringLiteral("paper"), QStringLiteral("A3")).toString();
    paper_->setCurrentText(kept);
    way_->addItems({tr("As fits best"), tr("Landscape"), tr("Portrait")});
    scale_->addItem(tr("The largest that fits"));
    for (const catalogue::DrawingScale& scale : desk_.catalogue()->scales) {
        if (scale.system == desk_.plan()->units) {
            scale_->addItem(QString::fromStdString(scale.name));
        }
    }
    shot_->addItem(tr("All"));
    for (const plan::Shot& shot : desk_.plan()->shots) {
        shot_->addItem(QString::fromStdString(shot.id.name));
    }
    rows->addLayout(form);
    const auto check = [&](const QString& label) {
        auto* box = new QCheckBox{label, side};
        box->setChecked(true);
        rows->addWidget(box);
        connect(box, &QCheckBox::toggled, this, &SheetsWindow::draw);
        return box;
    };
    coverage_ = check(tr("Camera c&overage"));
    pools_ = check(tr("Poo&ls of light"));
    findings_ = check(tr("&Findings"));
    rows->addWidget(buttons());
    connect(kinds_, &QListWidget::itemChanged, this, &SheetsWindow::draw);
    return side;
}

QWidget* SheetsWindow::buttons() {
    auto* row = new QWidget{this};
    auto* cells = new QVBoxLayout{row};
    cells->setContentsMargins(0, 0, 0, 0);
    print_ = new QPushButton{tr("P&rint\u2026"), row};
    save_ = new QPushButton{tr("&Save as PDF, PNG, SVG\u2026"), row};
    auto* note =
        new QLabel{tr("Print at actual size, never \u201cfit to page\u201d, and lay a ruler on the "
                      "100 mm of the print."),
                   row};
    note->setWordWrap(true);
    cells->addWidget(print_);
    cells->addWidget(save_);
    cells->addWidget(note);
    connect(print_, &QPushButton::clicked, this, &SheetsWindow::print);
    connect(save_, &QPushButton::clicked, this, &SheetsWindow::ask_and_save);
    return row;
}

PrintWish SheetsWindow::wish() const {
    PrintWish wish;
    for (int row = 0; row < kinds_->count(); ++row) {
        const QListWidgetItem* entry = kinds_->item(row);
        if (entry->checkState() == Qt::Checked) {
            wish.kinds.push_back(entry->data(Qt::UserRole).toString().toStdString());
        }
    }
    wish.options.paper = paper_->currentText().toStdString();
    if (way_->currentIndex() > 0) {
        wish.options.orientation = way_->currentIndex() == 1 ? sheet::Orientation::landscape
                                                             : sheet::Orientation::portrait;
    }
    if (scale_->currentIndex() > 0) {
        wish.options.scale = scale_->currentText().toStdString();
    }
    if (shot_->currentIndex() > 0) {
        wish.options.shots.push_back({shot_->currentText().toStdString()});
    }
    wish.options.coverage = coverage_->isChecked();
    wish.options.pools = pools_->isChecked();
    wish.options.findings = findings_->isChecked();
    return wish;
}

void SheetsWindow::draw() {
    if (findings_ == nullptr || preview_ == nullptr) {
        return;
    }
    preview_->show(nullptr);
    pages_.clear();
    list_->clear();
    ++asked_;
    const AnalysisPtr known = desk_.analysis();
    print_->setEnabled(false);
    save_->setEnabled(false);
    is_drawing_ = known != nullptr;
    told_->setText(known == nullptr ? tr("Checking the plan\u2026") : tr("Drawing\u2026"));
    if (known == nullptr) {
        return;
    }
    QSettings{}.setValue(QStringLiteral("paper"), paper_->currentText());
    // The worker before this one ends first; its answer is for a question nobody asks any more.
    worker_ = std::jthread{[this, question = asked_, known, wish = wish(),
                            tables = desk_.catalogue(), measure = measure_.get()] {
        const sheet::SheetInput input{*known, *tables, *measure};
        auto set = std::make_shared<PrintedSet>(
            PrintedSet{known, sheet::sheet_set(input, wish.options, wish.kinds)});
        QMetaObject::invokeMethod(
            this, [this, question, set] { take(question, set); }, Qt::QueuedConnection);
    }};
}

void SheetsWindow::take(int question, std::shared_ptr<PrintedSet> set) {
    if (question != asked_) {
        return;
    }
    is_drawing_ = false;
    if (!set->pages) {
        told_->setText(QString::fromStdString(set->pages.error().message));
        return;
    }
    pages_ = std::move(*set->pages);
    for (const sheet::Drawing& page : pages_) {
        list_->addItem(QString::fromStdString(page.subject.empty() ? page.title : page.subject)
                           .section(QStringLiteral(" of "), 0, 0));
    }
    print_->setEnabled(!pages_.empty());
    save_->setEnabled(!pages_.empty());
    list_->setCurrentRow(0);
    show_page();
}

void SheetsWindow::show_page() {
    const int row = list_->currentRow();
    if (row < 0 || static_cast<std::size_t>(row) >= pages_.size()) {
        return;
    }
    const sheet::Drawing& page = pages_[static_cast<std::size_t>(row)];
    preview_->show(&page);
    QString words = QString::fromStdString(page.paper);
    if (!page.scale.empty()) {
        words = tr("%1 on %2").arg(QString::fromStdString(page.scale), words);
    }
    for (const sheet::LargerScale& larger : page.larger) {
        if (!larger.paper.empty()) {
            words += tr("; %1 would take %2")
                         .arg(QString::fromStdString(larger.scale),
                              QString::fromStdString(larger.paper));
            break;
        }
    }
    told_->setText(words);
}

void SheetsWindow::choose_kinds(const QStringList& names) {
    const QSignalBlocker quiet{kinds_};
    for (int row = 0; row < kinds_->count(); ++row) {
        QListWidgetItem* entry = kinds_->item(row);
        entry->setCheckState(names.contains(entry->data(Qt::UserRole).toString()) ? Qt::Checked
                                                                                  : Qt::Unchecked);
    }
    draw();
}

QString SheetsWindow::save_to(const QString& path) const {
    const paint::PaintSession session;
    const int row = std::max(0, list_->currentRow());
    if (pages_.empty()) {
        return tr("There is no page to save.");
    }
    const sheet::Drawing& page = pages_[static_cast<std::size_t>(row)];
    const Result<std::string> bytes = path.endsWith(QStringLiteral(".png"), Qt::CaseInsensitive)
                                          ? paint::rendered_png(session, page)
                                      : path.endsWith(QStringLiteral(".svg"), Qt::CaseInsensitive)
                                          ? paint::rendered_svg(session, page)
                                          : paint::rendered_pdf(session, pages_);
    if (!bytes) {
        return QString::fromStdString(bytes.error().message);
    }
    const auto done = write_file_whole(path.toStdString(), *bytes);
    return done ? QString{} : QString::fromStdString(done.error().message);
}

void SheetsWindow::ask_and_save() {
    const QString path = QFileDialog::getSaveFileName(
        this, tr("Save sheets"),
        QString::fromStdString(desk_.plan()->title) + QStringLiteral(".pdf"),
        tr("All pages as PDF (*.pdf);;This page as PNG (*.png);;This page as SVG (*.svg)"));
    if (!path.isEmpty()) {
        const QString fault = save_to(path);
        told_->setText(fault.isEmpty() ? tr("Saved %1").arg(path) : fault);
    }
}

void SheetsWindow::print() {
    if (pages_.empty()) {
        return;
    }
    QPrinter printer{QPrinter::HighResolution};
    set_up(printer, pages_.front());
    QPrintDialog dialog{&printer, this};
    if (dialog.exec() == QDialog::Accepted) {
        const QString fault = print_pages(printer, pages_);
        told_->setText(fault.isEmpty() ? tr("Sent to the printer.") : fault);
    }
}

} // namespace throwline::ui
