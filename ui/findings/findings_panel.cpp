#include "ui/findings/findings_panel.h"

#include "checks/cautions.h"
#include "edit/accept.h"
#include "ui/findings/finding_painter.h"
#include "ui/findings/findings_model.h"

#include <QButtonGroup>
#include <QFocusEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

namespace throwline::ui {

namespace {

using namespace std::chrono_literals;

/// Work that takes less is over before anybody could read about it.
constexpr auto kPatience = 500ms;
constexpr int kProgressSteps = 100;
/// Lines of cautions that show without scrolling.
constexpr int kCautionLines = 5;

QString text(const std::string& words) {
    return QString::fromStdString(words);
}

/// The working over several lines, one an input.
QString told(const Working& working) {
    QString words = QStringLiteral("<b>%1</b>").arg(text(working.formula).toHtmlEscaped());
    for (const WorkingTerm& term : working.inputs) {
        const QString name = term.symbol.empty()
                                 ? text(term.name)
                                 : QStringLiteral("%1, %2").arg(text(term.symbol), text(term.name));
        words += QStringLiteral("<br>%1: %2")
                     .arg(name.toHtmlEscaped(), text(term.value).toHtmlEscaped());
    }
    words += QStringLiteral("<br>= %1<br><i>%2</i>")
                 .arg(text(working.result).toHtmlEscaped(), text(working.source).toHtmlEscaped());
    return words;
}

QPushButton* order_button(const QString& words, const QString& tip, QWidget* parent) {
    auto* button = new QPushButton{words, parent};
    button->setCheckable(true);
    button->setToolTip(tip);
    button->setAccessibleName(tip);
    return button;
}

/// Whether it is about the same, whatever its figures.
bool is_same(const checks::Finding& a, const checks::Finding& b) {
    return a.check == b.check && a.shot == b.shot && a.beat == b.beat && a.things == b.things;
}

} // namespace

FindingsPanel::FindingsPanel(Desk& desk, QWidget* parent)
    : QWidget{parent}, desk_{desk}, model_{new FindingsModel{this}} {
    setAccessibleName(tr("Findings"));
    setAutoFillBackground(true);
    auto* rows = new QVBoxLayout{this};
    rows->setContentsMargins(6, 6, 6, 6);
    rows->setSpacing(4);
    add_head();
    add_list();
    add_buttons();
    add_reason_editor();
    add_foot();
    // No focus proxy: Tab would go past what stands above the list.
    setFocusPolicy(Qt::ClickFocus);
    patience_.setSingleShot(true);
    patience_.setInterval(kPatience);
    connect(&patience_, &QTimer::timeout, this, &FindingsPanel::show_checking);
    connect(&desk_, &Desk::analysis_changed, this, &FindingsPanel::show_state);
    connect(&desk_, &Desk::checking_went_on, progress_, [this](double share) {
        progress_->setValue(static_cast<int>(share * kProgressSteps));
    });
    connect(&desk_, &Desk::plan_changed, this, &FindingsPanel::tell_cautions);
    connect(&desk_, &Desk::finding_pointed_at_changed, this, &FindingsPanel::point_from_outside);
    show_state();
    tell_cautions();
}

FindingsPanel::~FindingsPanel() = default;

void FindingsPanel::add_head() {
    auto* top = new QHBoxLayout;
    head_ = new QLabel{this};
    head_->setWordWrap(true);
    head_->setAccessibleName(tr("State of the findings"));
    top->addWidget(head_, 1);
    orders_ = new QButtonGroup{this};
    orders_->addButton(order_button(tr("Shots"), tr("Findings under their shots"), this),
                       static_cast<int>(sheet::FindingOrder::by_shot));
    orders_->addButton(order_button(tr("Things"), tr("Findings under what is to be moved"), this),
                       static_cast<int>(sheet::FindingOrder::by_thing));
    orders_->button(static_cast<int>(order_))->setChecked(true);
    for (QAbstractButton* button : orders_->buttons()) {
        top->addWidget(button);
    }
    connect(orders_, &QButtonGroup::idClicked, this,
            [this](int id) { set_order(static_cast<sheet::FindingOrder>(id)); });
    qobject_cast<QVBoxLayout*>(layout())->addLayout(top);

    checking_ = new QWidget{this};
    auto* row = new QHBoxLayout{checking_};
    row->setContentsMargins(0, 0, 0, 0);
    progress_ = new QProgressBar{checking_};
    progress_->setRange(0, kProgressSteps);
    progress_->setTextVisible(false);
    progress_->setAccessibleName(tr("Share of the checking that is done"));
    stop_ = new QPushButton{tr("S&top"), checking_};
    stop_->setToolTip(tr("Stops checking; what is shown stays greyed"));
    connect(stop_, &QPushButton::clicked, this, [this] { desk_.stop_checking(); });
    again_ = new QPushButton{tr("Check a&gain"), checking_};
    connect(again_, &QPushButton::clicked, this, [this] { desk_.check_again(); });
    row->addWidget(progress_, 1);
    row->addWidget(stop_);
    row->addWidget(again_);
    row->addStretch();
    layout()->addWidget(checking_);
}

void FindingsPanel::add_list() {
    nothing_ = new QLabel{this};
    nothing_->setWordWrap(true);
    nothing_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    nothing_->setAccessibleName(tr("What was looked at"));
    list_ = new QListView{this};
    list_->setModel(model_);
    list_->setItemDelegate(new FindingPainter{*model_, *list_});
    list_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    // Always there, so that the sentences are laid out for one width only.
    list_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    list_->setResizeMode(QListView::Adjust);
    list_->setSelectionMode(QAbstractItemView::SingleSelection);
    list_->setAccessibleName(tr("Findings, worst first"));
    list_->setAccessibleDescription(tr("Choosing one goes to its shot and things; F2 shows its "
                                       "working"));
    list_->installEventFilter(this);
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& index) {
                tell_row();
                if (!is_restoring_ && index.isValid()) {
                    go_to_row(index.row());
                }
            });
    connect(list_, &QListView::clicked, this,
            [this](const QModelIndex& index) { go_to_row(index.row()); });
    connect(list_, &QListView::activated, this,
            [this](const QModelIndex& index) { go_to_row(index.row()); });
    auto* rows = qobject_cast<QVBoxLayout*>(layout());
    rows->addWidget(nothing_, 1);
    rows->addWidget(list_, 1);
}

void FindingsPanel::add_buttons() {
    working_ = new QLabel{this};
    working_->setWordWrap(true);
    working_->setTextFormat(Qt::RichText);
    working_->setFrameShape(QFrame::StyledPanel);
    working_->setMargin(4);
    working_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    working_->setAccessibleName(tr("Working of the chosen finding"));
    working_->hide();
    layout()->addWidget(working_);
    buttons_ = new QWidget{this};
    auto* row = new QHBoxLayout{buttons_};
    row->setContentsMargins(0, 0, 0, 0);
    accept_ = new QPushButton{buttons_};
    connect(accept_, &QPushButton::clicked, this, [this] {
        const auto current = current_row();
        if (current && !model_->row(*current).reason.empty()) {
            take_back();
        } else {
            begin_accepting();
        }
    });
    show_working_ = new QPushButton{tr("&Working"), buttons_};
    show_working_->setCheckable(true);
    show_working_->setToolTip(tr("Shows how its figures came about (F2)"));
    connect(show_working_, &QPushButton::toggled, this, &FindingsPanel::tell_working);
    row->addWidget(accept_);
    row->addWidget(show_working_);
    row->addStretch();
    layout()->addWidget(buttons_);
}

void FindingsPanel::add_reason_editor() {
    reason_editor_ = new QWidget{this};
    auto* rows = new QVBoxLayout{reason_editor_};
    rows->setContentsMargins(0, 0, 0, 0);
    reason_ = new QLineEdit{reason_editor_};
    reason_->setPlaceholderText(tr("Why it may stay so"));
    reason_->setAccessibleName(tr("Why the crew lives with this finding"));
    reason_->setToolTip(tr("The reason is printed on the sheets"));
    reason_->installEventFilter(this);
    connect(reason_, &QLineEdit::returnPressed, this, &FindingsPanel::accept);
    auto* row = new QHBoxLayout;
    auto* yes = new QPushButton{tr("Accept it"), reason_editor_};
    connect(yes, &QPushButton::clicked, this, &FindingsPanel::accept);
    auto* no = new QPushButton{tr("Leave it"), reason_editor_};
    connect(no, &QPushButton::clicked, this, &FindingsPanel::end_accepting);
    row->addWidget(yes);
    row->addWidget(no);
    row->addStretch();
    rows->addWidget(reason_);
    rows->addLayout(row);
    reason_editor_->hide();
    layout()->addWidget(reason_editor_);
}

void FindingsPanel::add_foot() {
    cautions_ = new QLabel;
    cautions_->setWordWrap(true);
    cautions_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    cautions_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    cautions_->setAccessibleName(tr("Cautions"));
    caution_area_ = new QScrollArea{this};
    caution_area_->setWidget(cautions_);
    caution_area_->setWidgetResizable(true);
    caution_area_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    caution_area_->setAccessibleName(tr("Cautions"));
    layout()->addWidget(caution_area_);
}

void FindingsPanel::set_order(sheet::FindingOrder order) {
    orders_->button(static_cast<int>(order))->setChecked(true);
    if (order != order_) {
        order_ = order;
        if (desk_.analysis() != nullptr) {
            show_findings(desk_.analysis());
        }
    }
}

void FindingsPanel::show_state() {
    const AnalysisPtr analysis = desk_.analysis();
    if (analysis != nullptr) {
        patience_.stop();
        checking_->hide();
        show_findings(analysis);
        return;
    }
    model_->set_stale();
    end_accepting();
    nothing_->setVisible(false);
    list_->setVisible(true);
    tell_row();
    if (desk_.is_checking()) {
        head_->setText(tr("Checking the change\u2026"));
        if (!patience_.isActive() && checking_->isHidden()) {
            patience_.start();
        }
        if (!checking_->isHidden()) {
            show_checking();
        }
    } else {
        patience_.stop();
        head_->setText(tr("Not checked: it was stopped."));
        progress_->hide();
        stop_->hide();
        again_->show();
        checking_->show();
    }
}

void FindingsPanel::show_checking() {
    if (desk_.is_checking()) {
        progress_->show();
        stop_->show();
        again_->hide();
        checking_->show();
    }
}

void FindingsPanel::show_findings(AnalysisPtr analysis) {
    progress_->setValue(0);
    head_->setText(analysis->findings.empty() ? tr("No findings")
                                              : text(sheet::findings_counted(*analysis)));
    nothing_->setText(text(sheet::nothing_found(*analysis)));
    nothing_->setVisible(analysis->findings.empty());
    list_->setVisible(!analysis->findings.empty());
    is_restoring_ = true;
    const int scrolled = list_->verticalScrollBar()->value();
    const std::vector<checks::Finding>& findings = analysis->findings;
    model_->show(std::move(analysis), order_);
    // Rows that are not laid out yet leave the scroll bar nowhere to go.
    list_->doItemsLayout();
    for (std::size_t i = 0; kept_ && i < findings.size(); ++i) {
        if (is_same(findings[i], *kept_)) {
            choose_row(model_->row_of(static_cast<int>(i)));
            break;
        }
    }
    list_->verticalScrollBar()->setValue(scrolled);
    is_restoring_ = false;
    tell_row();
}

void FindingsPanel::tell_cautions() {
    QString words;
    for (const std::string& caution : checks::cautions_for(*desk_.plan())) {
        words += (words.isEmpty() ? QString{} : QStringLiteral("\n")) + text(caution);
    }
    cautions_->setText(words);
    const int frame = 2 * caution_area_->frameWidth();
    caution_area_->setFixedHeight(kCautionLines * cautions_->fontMetrics().lineSpacing() + frame);
}

std::optional<int> FindingsPanel::current_row() const {
    const QModelIndex index = list_->currentIndex();
    if (!index.isValid() || model_->is_stale() || model_->row(index.row()).is_heading()) {
        return std::nullopt;
    }
    return index.row();
}

std::vector<checks::Finding> FindingsPanel::findings_of(int row) const {
    std::vector<checks::Finding> findings;
    for (const int index : model_->row(row).findings) {
        findings.push_back(model_->analysis()->findings[static_cast<std::size_t>(index)]);
    }
    return findings;
}

/// What the buttons are about, and the working.
void FindingsPanel::tell_row() {
    const auto row = current_row();
    const bool is_accepted = row && !model_->row(*row).reason.empty();
    accept_->setText(is_accepted ? tr("Take &back") : tr("&Accept\u2026"));
    accept_->setToolTip(is_accepted
                            ? tr("The finding counts again")
                            : tr("Keeps the finding, with the reason why the crew lives with it"));
    accept_->setEnabled(row.has_value());
    show_working_->setEnabled(row.has_value());
    tell_working();
}

void FindingsPanel::tell_working() {
    const auto row = current_row();
    const bool shows = row && show_working_->isChecked();
    if (shows) {
        working_->setText(told(findings_of(*row).front().working));
    }
    working_->setVisible(shows);
}

void FindingsPanel::choose_row(int row) {
    list_->setCurrentIndex(row < 0 ? QModelIndex{} : model_->index(row));
}

void FindingsPanel::point_from_outside() {
    const int finding = desk_.finding_pointed_at();
    const int row = finding < 0 ? -1 : model_->row_of(finding);
    if (row >= 0 && current_row() != row) {
        is_restoring_ = true;
        choose_row(row);
        kept_ = findings_of(row).front();
        is_restoring_ = false;
    }
}

void FindingsPanel::go_to_row(int row) {
    if (model_->is_stale() || model_->row(row).is_heading()) {
        return;
    }
    const int index = model_->row(row).findings.front();
    const AnalysisPtr of = model_->analysis();
    const checks::Finding finding = of->findings[static_cast<std::size_t>(index)];
    kept_ = finding;
    if (!finding.beat.empty() || !finding.shot.empty()) {
        desk_.set_now({finding.beat.empty() ? desk_.now().beat : finding.beat, finding.shot});
    }
    desk_.choose(edit::things_named(*desk_.plan(), finding.things));
    // Going there may have begun another check, in which the number is that of another finding.
    desk_.point_at_finding(desk_.analysis() == of ? index : -1);
}

void FindingsPanel::begin_accepting() {
    if (current_row()) {
        buttons_->hide();
        reason_editor_->show();
        reason_->setFocus();
    }
}

void FindingsPanel::end_accepting() {
    if (reason_editor_->isHidden()) {
        return;
    }
    const bool had_focus = reason_editor_->isAncestorOf(focusWidget());
    reason_->clear();
    reason_editor_->hide();
    buttons_->show();
    if (had_focus) {
        list_->setFocus();
    }
}

void FindingsPanel::accept() {
    const auto row = current_row();
    if (!row) {
        return;
    }
    const auto step =
        edit::accepted(desk_.context(), findings_of(*row), reason_->text().toStdString());
    if (desk_.take(step)) {
        end_accepting();
    }
}

void FindingsPanel::take_back() {
    if (const auto row = current_row()) {
        desk_.take(edit::acceptance_taken_back(desk_.context(), findings_of(*row)));
    }
}

void FindingsPanel::focusInEvent(QFocusEvent* event) {
    list_->setFocus(event->reason());
}

bool FindingsPanel::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (watched == list_ && key == Qt::Key_F2 && current_row()) {
            show_working_->toggle();
            return true;
        }
        if (watched == reason_ && key == Qt::Key_Escape) {
            end_accepting();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace throwline::ui
