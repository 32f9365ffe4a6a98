#include "ui/window/start_page.h"

#include "ui/window/studio_form.h"

#include <QFileInfo>
#include <QFrame>
#include <QHBoxLayout>
#include <QLabel>
#include <QLayoutItem>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

namespace throwline::ui {

namespace {

QLabel* heading(const QString& words, QWidget* parent) {
    auto* label = new QLabel{words, parent};
    QFont font = label->font();
    font.setPointSizeF(font.pointSizeF() * 1.25);
    font.setBold(true);
    label->setFont(font);
    return label;
}

QLabel* note(const QString& words, QWidget* parent) {
    auto* label = new QLabel{words, parent};
    label->setWordWrap(true);
    return label;
}

void clear(QLayout& layout) {
    while (QLayoutItem* item = layout.takeAt(0)) {
        if (QWidget* widget = item->widget()) {
            widget->deleteLater();
        }
        delete item;
    }
}

/// A thin line between two parts of the page.
QFrame* seam(QWidget* parent) {
    auto* line = new QFrame{parent};
    line->setFrameShape(QFrame::HLine);
    return line;
}

constexpr int kColumnWidth_px = 360;

} // namespace

const std::vector<DemoName>& demo_names() {
    static const std::vector<DemoName> kNames{
        {"cookery.json", QT_TRANSLATE_NOOP("Demo", "A cookery programme in a studio")},
        {"workshop_interview.json", QT_TRANSLATE_NOOP("Demo", "An interview in a workshop")},
        {"potters_bench.json", QT_TRANSLATE_NOOP("Demo", "A craft film at a potter's bench")},
        {"market_hall.json", QT_TRANSLATE_NOOP("Demo", "A market hall with 120 lamps")}};
    return kNames;
}

StartPage::StartPage(QWidget* parent) : QWidget{parent} {
    setAutoFillBackground(true);
    auto* scroll = new QScrollArea{this};
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto* inside = new QWidget{scroll->viewport()};
    auto* columns = new QHBoxLayout{inside};
    columns->setSpacing(48);
    columns->addStretch();
    columns->addWidget(begin_column(inside), 0, Qt::AlignTop);
    columns->addWidget(go_on_column(inside), 0, Qt::AlignTop);
    columns->addStretch();
    scroll->setWidget(inside);
    auto* whole = new QVBoxLayout{this};
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(scroll);
}

QWidget* StartPage::begin_column(QWidget* parent) {
    auto* column = new QWidget{parent};
    column->setFixedWidth(kColumnWidth_px);
    auto* rows = new QVBoxLayout{column};
    rows->addSpacing(12);
    rows->addWidget(heading(tr("Start a studio"), column));
    studio_ = new StudioForm{column};
    rows->addWidget(studio_);
    rows->addSpacing(10);
    rows->addWidget(seam(column));
    rows->addWidget(heading(tr("Start from a room on location"), column));
    rows->addWidget(note(tr("Type what the tape said; the room draws itself."), column));
    auto* location = new QPushButton{tr("Type tape &readings\u2026"), column};
    rows->addWidget(location);
    empty_floor_ = new QPushButton{tr("Draw the room on an &empty floor"), column};
    rows->addWidget(empty_floor_);
    connect(studio_, &StudioForm::make_wanted, this, [this] {
        if (const auto studio = studio_->studio()) {
            Q_EMIT studio_wanted(*studio, studio_->units());
        }
    });
    connect(location, &QPushButton::clicked, this, &StartPage::location_wanted);
    connect(empty_floor_, &QPushButton::clicked, this, &StartPage::empty_floor_wanted);
    return column;
}

QWidget* StartPage::go_on_column(QWidget* parent) {
    auto* column = new QWidget{parent};
    column->setFixedWidth(kColumnWidth_px);
    auto* rows = new QVBoxLayout{column};
    rows->addSpacing(12);
    left_work_ = new QVBoxLayout;
    rows->addLayout(left_work_);
    rows->addWidget(heading(tr("Go on with"), column));
    recent_ = new QVBoxLayout;
    recent_->setSpacing(4);
    rows->addLayout(recent_);
    auto* open = new QPushButton{tr("&Open a plan\u2026"), column};
    rows->addWidget(open);
    rows->addSpacing(10);
    rows->addWidget(seam(column));
    rows->addWidget(heading(tr("Look at an example"), column));
    for (std::size_t i = 0; i < demo_names().size(); ++i) {
        auto* demo = new QPushButton{tr(demo_names()[i].words), column};
        demo->setObjectName(QString::fromLatin1(demo_names()[i].file));
        connect(demo, &QPushButton::clicked, this,
                [this, i] { Q_EMIT demo_wanted(static_cast<int>(i)); });
        rows->addWidget(demo);
    }
    connect(open, &QPushButton::clicked, this, &StartPage::open_wanted);
    set_recent({});
    return column;
}

void StartPage::set_recent(const QStringList& paths) {
    clear(*recent_);
    if (paths.isEmpty()) {
        recent_->addWidget(note(tr("Nothing was opened here yet."), this));
    }
    for (const QString& path : paths) {
        const QFileInfo file{path};
        auto* button = new QPushButton{file.fileName(), this};
        button->setToolTip(file.exists() ? path : tr("%1 is not there any more").arg(path));
        button->setEnabled(file.exists());
        connect(button, &QPushButton::clicked, this, [this, path] { Q_EMIT recent_wanted(path); });
        recent_->addWidget(button);
    }
    put_stops_in_order();
}

void StartPage::set_left_work(const std::vector<LeftWork>& work) {
    clear(*left_work_);
    if (work.empty()) {
        return;
    }
    left_work_->addWidget(heading(tr("Work that was not put away"), this));
    for (std::size_t i = 0; i < work.size(); ++i) {
        auto* row = new QWidget{this};
        auto* cells = new QVBoxLayout{row};
        cells->setContentsMargins(0, 0, 0, 8);
        cells->addWidget(note(QStringLiteral("%1: %2").arg(work[i].title, work[i].summary), row));
        auto* buttons = new QHBoxLayout;
        auto* take = new QPushButton{tr("Take it up again"), row};
        auto* drop = new QPushButton{tr("Drop it"), row};
        take->setAccessibleName(tr("Take up %1 again").arg(work[i].title));
        drop->setAccessibleName(tr("Drop what was left of %1").arg(work[i].title));
        buttons->addWidget(take);
        buttons->addWidget(drop);
        cells->addLayout(buttons);
        connect(take, &QPushButton::clicked, this,
                [this, i] { Q_EMIT left_work_wanted(static_cast<int>(i)); });
        connect(drop, &QPushButton::clicked, this,
                [this, i] { Q_EMIT left_work_unwanted(static_cast<int>(i)); });
        left_work_->addWidget(row);
    }
    left_work_->addWidget(seam(this));
    put_stops_in_order();
}

/// What is made later would come last in the window.
void StartPage::put_stops_in_order() {
    QWidget* before = empty_floor_;
    for (const QLayout* part : {left_work_, recent_}) {
        for (int i = 0; i < part->count(); ++i) {
            QWidget* const row = part->itemAt(i)->widget();
            QList<QPushButton*> buttons = row->findChildren<QPushButton*>();
            if (auto* button = qobject_cast<QPushButton*>(row)) {
                buttons.append(button);
            }
            for (QPushButton* button : buttons) {
                setTabOrder(before, button);
                before = button;
            }
        }
    }
}

} // namespace throwline::ui
