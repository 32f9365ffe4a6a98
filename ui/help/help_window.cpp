#include "ui/help/help_window.h"

#include "ui/look/clear_button.h"

#include <QFile>
#include <QLineEdit>
#include <QListWidget>
#include <QSplitter>
#include <QTextBrowser>
#include <QUrl>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

namespace throwline::ui {

namespace {

/// In reading order; each is a file of docs/help.
constexpr std::array kPages{"start", "floor", "order",  "light",
                            "card",  "recce", "sheets", "keeping"};

QString title_of(const QString& markdown) {
    return markdown.section(QLatin1Char{'\n'}, 0, 0).remove(QLatin1Char{'#'}).trimmed();
}

} // namespace

std::vector<HelpPage> carried_help() {
    std::vector<HelpPage> pages;
    for (const char* name : kPages) {
        QFile file{QStringLiteral(":/help/%1.md").arg(QString::fromLatin1(name))};
        if (file.open(QIODevice::ReadOnly)) {
            const QString markdown = QString::fromUtf8(file.readAll());
            pages.push_back({QString::fromLatin1(name), title_of(markdown), markdown});
        }
    }
    return pages;
}

HelpWindow::HelpWindow(std::vector<HelpPage> pages, QWidget* parent)
    : QWidget{parent, Qt::Window}, pages_{std::move(pages)}, search_{new QLineEdit{this}},
      list_{new QListWidget{this}}, text_{new QTextBrowser{this}} {
    setWindowTitle(tr("How to work with Throwline"));
    search_->setPlaceholderText(tr("Search"));
    search_->setAccessibleName(tr("Search in the help"));
    add_clear_button(*search_);
    list_->setAccessibleName(tr("Pages of the help"));
    text_->setAccessibleName(tr("Text of the help"));
    text_->setOpenLinks(false);
    auto* left = new QWidget{this};
    auto* rows = new QVBoxLayout{left};
    rows->setContentsMargins(0, 0, 0, 0);
    rows->addWidget(search_);
    rows->addWidget(list_);
    auto* halves = new QSplitter{this};
    halves->addWidget(left);
    halves->addWidget(text_);
    halves->setStretchFactor(1, 1);
    halves->setSizes({200, 560});
    auto* whole = new QVBoxLayout{this};
    whole->addWidget(halves);
    resize(780, 620);
    connect(search_, &QLineEdit::textChanged, this, &HelpWindow::fill);
    connect(list_, &QListWidget::currentRowChanged, this, &HelpWindow::show_chosen);
    // A link names another page; nothing is ever fetched.
    connect(text_, &QTextBrowser::anchorClicked, this,
            [this](const QUrl& link) { open(link.fileName().section(QLatin1Char{'.'}, 0, 0)); });
    fill({});
}

void HelpWindow::fill(const QString& sought) {
    const QString before = page();
    list_->clear();
    for (const HelpPage& page : pages_) {
        if (page.markdown.contains(sought, Qt::CaseInsensitive)) {
            auto* entry = new QListWidgetItem{page.title, list_};
            entry->setData(Qt::UserRole, page.name);
        }
    }
    open(before);
}

void HelpWindow::open(const QString& name) {
    for (int row = 0; row < list_->count(); ++row) {
        if (list_->item(row)->data(Qt::UserRole).toString() == name) {
            list_->setCurrentRow(row);
            return;
        }
    }
    list_->setCurrentRow(0);
}

QString HelpWindow::page() const {
    const QListWidgetItem* entry = list_->currentItem();
    return entry == nullptr ? QString{} : entry->data(Qt::UserRole).toString();
}

void HelpWindow::show_chosen() {
    const QString name = page();
    const auto found = std::find_if(pages_.begin(), pages_.end(),
                                    [&](const HelpPage& page) { return page.name == name; });
    text_->setMarkdown(found == pages_.end() ? QString{} : found->markdown);
    if (!search_->text().isEmpty()) {
        text_->find(search_->text());
    }
}

} // namespace throwline::ui
