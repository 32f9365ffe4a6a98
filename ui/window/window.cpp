#include "ui/window/window.h"

#include "plan/differences.h"
#include "plan/read_plan.h"
#include "sheet/finding_rows.h"
#include "ui/card_panel/card_panel.h"
#include "ui/findings/findings_panel.h"
#include "ui/recce/recce_window.h"
#include "ui/running_order/running_order.h"
#include "ui/said_line/said_line.h"
#include "ui/sheets/sheets_window.h"
#include "ui/stores/stores_panel.h"
#include "ui/underlay/underlay_reader.h"
#include "ui/viewfinder/frame_view.h"
#include "ui/viewfinder/viewfinder.h"
#include "ui/window/action_book.h"
#include "ui/window/left_work.h"
#include "ui/window/level_overlay.h"
#include "ui/window/start_page.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QFileInfo>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMenuBar>
#include <QMimeData>
#include <QPlainTextEdit>
#include <QScreen>
#include <QSplitter>
#include <QStackedWidget>
#include <QStatusBar>
#include <QTabWidget>
#include <QUrl>
#include <QVBoxLayout>

namespace throwline::ui {

namespace {

constexpr int kSideWidth_px = 286;
constexpr int kOrderHeight_px = 140;
constexpr int kViewfinderHeight_px = 236;
/// How long a sentence stays at the foot.
constexpr int kSaid_ms = 8000;
QString title_of(const plan::Plan& plan, const Keeper& keeper) {
    if (!keeper.path().empty()) {
        return QString::fromStdString(keeper.path().filename().string());
    }
    return plan.title.empty() ? QObject::tr("Untitled") : QString::fromStdString(plan.title);
}

/// An empty floor, whatever it is called.
bool is_blank(const plan::Plan& plan) {
    plan::Plan blank;
    blank.title = plan.title;
    blank.units = plan.units;
    return plan == blank;
}

/// What can be undone and redone of the text that is typed into a widget.
struct TextSteps {
    bool undo = false;
    bool redo = false;
};

/// Nothing for a widget that no text is typed into.
std::optional<TextSteps> text_steps_of(const QObject& widget) {
    if (const auto* line = qobject_cast<const QLineEdit*>(&widget)) {
        return TextSteps{line->isUndoAvailable(), line->isRedoAvailable()};
    }
    if (const auto* lines = qobject_cast<const QPlainTextEdit*>(&widget)) {
        return TextSteps{lines->document()->isUndoAvailable(),
                         lines->document()->isRedoAvailable()};
    }
    return std::nullopt;
}

} // namespace

Window::Window(CataloguePtr catalogue, Questions questions, RecoveryStore store, int number)
    : questions_{std::move(questions)}, store_{std::move(store)},
      desk_{new Desk{std::move(catalogue), this}},
      keeper_{new Keeper{*desk_, store_, number, this}} {
    setAttribute(Qt::WA_DeleteOnClose);
    setAcceptDrops(true);
    setWindowIcon(QIcon{QStringLiteral(":/icons/throwline.svg")});
    build();
    connect_parts();
    connect_start_page();
    connect_underlay();
    look_for_left_work();
    table_->setCurrentWidget(start_page_);
    tell_title();
    qApp->installEventFilter(this);
    resize(QSize{1280, 800}.boundedTo(screen()->availableSize()));
}

Window::~Window() = default;

/// From the outside in: what is put into another parent afterwards is styled once more, with all
/// that it holds. A splitter takes what is made in it. Things are made in the order in which Tab
/// goes through them.
void Window::build() {
    table_ = new QStackedWidget{this};
    setCentralWidget(table_);
    auto* work = new QWidget{table_};
    table_->addWidget(work);
    auto* down = new QSplitter{Qt::Vertical, work};
    down->setObjectName(QStringLiteral("down"));
    auto* across = new QSplitter{Qt::Horizontal, down};
    across->setObjectName(QStringLiteral("across"));
    build_drawer(*across);
    build_floor(*across);
    auto* right = new QSplitter{Qt::Vertical, across};
    right->setObjectName(QStringLiteral("right"));
    viewfinder_ = new Viewfinder{*desk_, right};
    card_ = new CardPanel{*desk_, right};
    right->setSizes({kViewfinderHeight_px, 400});
    right->setStretchFactor(1, 1);
    across->setSizes({kSideWidth_px, 700, kSideWidth_px});
    across->setStretchFactor(1, 1);
    order_ = new RunningOrder{*desk_, down};
    down->setSizes({560, kOrderHeight_px});
    down->setStretchFactor(0, 1);
    for (QSplitter* splitter : {right, across, down}) {
        splitter->setHandleWidth(1);
        splitter->setChildrenCollapsible(false);
    }
    line_ = new SaidLine{*desk_, work};
    line_->set_actions(ActionBook::sayable());
    auto* rows = new QVBoxLayout{work};
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    rows->addWidget(down, 1);
    rows->addWidget(line_);
    start_page_ = new StartPage{table_};
    table_->addWidget(start_page_);
    levels_ = new LevelOverlay{*desk_, this};
    statusBar()->addPermanentWidget(levels_);
    statusBar()->setSizeGripEnabled(false);
    actions_ = new ActionBook{*this, *menuBar()};
}

void Window::build_drawer(QSplitter& across) {
    drawer_ = new QTabWidget{&across};
    stores_ = new StoresPanel{*desk_, drawer_};
    findings_ = new FindingsPanel{*desk_, drawer_};
    drawer_->addTab(stores_, tr("Stores"));
    drawer_->addTab(findings_, tr("Findings"));
    drawer_->setAccessibleName(tr("Stores and findings"));
}

void Window::connect_parts() {
    connect(desk_, &Desk::said, this, &Window::tell_said);
    for (const auto signal : {&Desk::plan_changed, &Desk::saved_changed}) {
        connect(desk_, signal, this, &Window::tell_title);
    }
    for (const auto signal : {&Desk::plan_changed, &Desk::chosen_changed, &Desk::now_changed,
                              &Desk::overlays_changed}) {
        connect(desk_, signal, actions_, &ActionBook::look);
    }
    connect(levels_, &LevelOverlay::arrived, floor_, &Floor::set_levels);
    connect(floor_, &Floor::hand_changed, actions_, &ActionBook::look);
    connect(&viewfinder_->frame_view(), &FrameView::shading_changed, actions_, &ActionBook::look);
    connect(floor_, &Floor::card_wanted, this, [this] { keyboard_to(Part::card); });
    connect(floor_, &Floor::context_wanted, this,
            [this](const QPoint& at, const std::vector<edit::Thing>&) { show_menu_for(at); });
    // Opening may ask something, and where the file was dragged from waits for the drop to end.
    connect(floor_, &Floor::file_dropped, this, &Window::open_dropped, Qt::QueuedConnection);
    connect(stores_, &StoresPanel::put_wanted, floor_, &Floor::put_in_middle);
    connect(line_, &SaidLine::action_wanted, this, [this](const QString& id) {
        if (!do_action(id)) {
            tell_said(tr("That cannot be done just now."));
        }
    });
    connect(line_, &SaidLine::left, this, [this] { keyboard_to(Part::floor); });
    connect(keeper_, &Keeper::path_changed, this, &Window::tell_title);
    connect(keeper_, &Keeper::keeping_failed, this, &Window::tell_said);
    connect(keeper_, &Keeper::changed_underneath, this, &Window::ask_about_change,
            Qt::QueuedConnection);
    connect(desk_, &Desk::analysis_changed, this, [this] {
        const AnalysisPtr known = desk_->analysis();
        drawer_->setTabText(drawer_->indexOf(findings_),
                            known == nullptr
                                ? tr("Findings")
                                : tr("Findings (%1)").arg(sheet::finding_counts(*known).open()));
    });
}

void Window::connect_start_page() {
    connect(start_page_, &StartPage::demo_wanted, this, &Window::open_demo);
    connect(start_page_, &StartPage::studio_wanted, this, &Window::begin_studio);
    connect(start_page_, &StartPage::location_wanted, this, &Window::begin_location);
    connect(start_page_, &StartPage::empty_floor_wanted, this, &Window::begin_empty_floor);
    connect(start_page_, &StartPage::open_wanted, this, &Window::ask_and_open);
    connect(start_page_, &StartPage::recent_wanted, this, &Window::open);
    connect(start_page_, &StartPage::left_work_wanted, this, &Window::take_left_work);
    connect(start_page_, &StartPage::left_work_unwanted, this, &Window::drop_left_work);
}

// Beginning.

bool Window::lay_out_new(plan::Plan plan) {
    if (!may_replace()) {
        return false;
    }
    if (plan.title.empty()) {
        plan.title = tr("Untitled").toStdString();
    }
    keeper_->begin(std::move(plan));
    show_floor();
    return true;
}

void Window::begin_studio(const edit::Studio& studio, UnitSystem units) {
    plan::Plan empty;
    empty.units = units;
    const Result<edit::Step> made = edit::studio_made({empty, *desk_->catalogue(), {}}, studio);
    if (!made) {
        tell_said(QString::fromStdString(made.error().message));
        return;
    }
    lay_out_new(made->plan);
}

void Window::begin_empty_floor() {
    if (lay_out_new({})) {
        draw_with(HandId::room);
    }
}

void Window::begin_location() {
    if (lay_out_new({})) {
        open_recce();
    }
}

void Window::tell_open(const Result<QStringList>& told, const QString& path) {
    if (!told) {
        questions_.tell(this, tr("This cannot be opened"),
                        {QString::fromStdString(told.error().message)});
        return;
    }
    show_floor();
    if (!told->isEmpty()) {
        questions_.tell(this, told->first(), told->mid(1));
    }
    if (!path.isEmpty()) {
        Q_EMIT file_used(path);
    }
}

void Window::open(const QString& path) {
    if (!is_untouched()) {
        Q_EMIT window_wanted(path);
        return;
    }
    tell_open(keeper_->open(path.toStdString()), path);
}

void Window::open_demo(int which) {
    const std::filesystem::path path = demo_path(which);
    if (path.empty()) {
        tell_said(tr("The examples are not where the program is."));
        return;
    }
    // A demo is there to be played with: it has no file until it is saved under a name.
    const Checked<plan::Plan> plan = plan::read_plan_file(path, *desk_->catalogue());
    if (!plan) {
        tell_said(QString::fromStdString(text_of(plan.error().front())));
        return;
    }
    if (may_replace()) {
        keeper_->begin(*plan);
        desk_->mark_saved();
        show_floor();
    }
}

void Window::ask_and_open() {
    const QString folder = keeper_->path().empty()
                               ? QString{}
                               : QString::fromStdString(keeper_->path().parent_path().string());
    const QString path = questions_.path_to_open(this, folder);
    if (!path.isEmpty()) {
        open(path);
    }
}

void Window::show_start_page() {
    look_for_left_work();
    table_->setCurrentWidget(start_page_);
}

void Window::show_floor() {
    has_plan_ = true;
    if (table_->currentIndex() != 0) {
        table_->setCurrentIndex(0);
        floor_->setFocus();
    }
}

void Window::look_for_left_work() {
    std::vector<std::string> remarks;
    left_work_ = store_.left_behind(remarks);
    std::vector<LeftWork> shown;
    for (const Recovery& recovery : left_work_) {
        shown.push_back(left_work_of(recovery, *desk_->catalogue()));
    }
    start_page_->set_left_work(shown);
    for (const std::string& remark : remarks) {
        tell_said(QString::fromStdString(remark));
    }
}

void Window::take_left_work(int which) {
    if (which < 0 || static_cast<std::size_t>(which) >= left_work_.size() || !may_replace()) {
        return;
    }
    const Recovery recovery = left_work_[static_cast<std::size_t>(which)];
    tell_open(keeper_->take_up(recovery), {});
    if (!keeper_->readings().empty()) {
        open_recce();
    }
}

void Window::drop_left_work(int which) {
    if (which < 0 || static_cast<std::size_t>(which) >= left_work_.size()) {
        return;
    }
    const Recovery recovery = left_work_[static_cast<std::size_t>(which)];
    if (questions_.drop_left_work(this, left_work_of(recovery, *desk_->catalogue()).title)) {
        store_.drop(recovery.kept);
        look_for_left_work();
    }
}

// Keeping.

bool Window::is_untouched() const {
    return keeper_->path().empty() && !desk_->history().can_undo() && keeper_->readings().empty()
           && (desk_->is_saved() || !has_plan() || is_blank(*desk_->plan()));
}

/// The editor keeps the keyboard, so that one may go on typing.
void Window::take_typing() {
    const QPointer<QWidget> typed = QApplication::focusWidget();
    if (typed != nullptr && (typed->window() == this || typed->window() == recce_)
        && text_steps_of(*typed)) {
        typed->clearFocus();
        if (typed != nullptr && typed->isVisible()) {
            typed->setFocus(Qt::OtherFocusReason);
        }
    }
}

bool Window::save() {
    take_typing();
    SaveOutcome outcome = keeper_->save();
    switch (outcome.saved) {
    case Saved::done:
        tell_said(tr("Saved."));
        Q_EMIT file_used(QString::fromStdString(keeper_->path().string()));
        return true;
    case Saved::no_name:
        return save_as();
    case Saved::changed_underneath:
        ask_about_change();
        return desk_->is_saved();
    case Saved::failed:
        questions_.tell(this, tr("Not saved; the work is still here"), {outcome.sentence});
        return false;
    }
    return false;
}

bool Window::save_as() {
    take_typing();
    const QString suggested =
        keeper_->path().empty()
            ? QString::fromStdString(desk_->plan()->title) + QStringLiteral(".json")
            : QString::fromStdString(keeper_->path().string());
    const QString path = questions_.path_to_save(this, suggested);
    if (path.isEmpty()) {
        return false;
    }
    const SaveOutcome outcome = keeper_->save_as(path.toStdString());
    if (outcome.saved != Saved::done) {
        questions_.tell(this, tr("Not saved; the work is still here"), {outcome.sentence});
        return false;
    }
    tell_said(tr("Saved."));
    Q_EMIT file_used(path);
    return true;
}

void Window::ask_about_change() {
    // Being asked takes a while, in which the file may change once more.
    if (is_asking_) {
        return;
    }
    is_asking_ = true;
    const ChangedAnswer answer = questions_.changed(this, title_of(*desk_->plan(), *keeper_),
                                                    keeper_->differences_from_file());
    switch (answer) {
    case ChangedAnswer::keep_mine:
        if (const SaveOutcome outcome = keeper_->save(true); outcome.saved != Saved::done) {
            questions_.tell(this, tr("Not saved; the work is still here"), {outcome.sentence});
        }
        break;
    case ChangedAnswer::load_theirs:
        tell_open(keeper_->load_theirs(), {});
        break;
    case ChangedAnswer::save_as:
        save_as();
        break;
    case ChangedAnswer::cancel:
        break;
    }
    is_asking_ = false;
}

bool Window::may_replace() {
    take_typing();
    if (!is_untouched() && !may_close()) {
        return false;
    }
    // Nor do its readings lie over what comes.
    delete recce_;
    keeper_->keep_readings({});
    return true;
}

bool Window::may_close() {
    take_typing();
    return may_drop_readings() && may_drop_changes();
}

bool Window::may_drop_changes() {
    if (!has_plan() || desk_->is_saved() || is_untouched()) {
        return true;
    }
    switch (questions_.unsaved(this, title_of(*desk_->plan(), *keeper_))) {
    case UnsavedAnswer::save:
        return save();
    case UnsavedAnswer::discard:
        return true;
    case UnsavedAnswer::cancel:
        return false;
    }
    return false;
}

void Window::closeEvent(QCloseEvent* event) {
    if (!may_close()) {
        event->ignore();
        return;
    }
    Q_EMIT leaving();
    keeper_->let_go();
    for (QWidget* other :
         {static_cast<QWidget*>(recce_.data()), static_cast<QWidget*>(sheets_.data())}) {
        if (other != nullptr) {
            other->close();
        }
    }
    event->accept();
}

void Window::dragEnterEvent(QDragEnterEvent* event) {
    if (event->mimeData()->hasUrls()) {
        event->acceptProposedAction();
    }
}

void Window::dropEvent(QDropEvent* event) {
    for (const QUrl& url : event->mimeData()->urls()) {
        QMetaObject::invokeMethod(
            this, [this, path = url.toLocalFile()] { open_dropped(path); }, Qt::QueuedConnection);
    }
}

void Window::open_dropped(const QString& path) {
    const QFileInfo file{path};
    const QString kind = file.suffix().toLower();
    if (kind == QStringLiteral("json")) {
        open(path);
    } else if (QStringList{QStringLiteral("png"), QStringLiteral("jpg"), QStringLiteral("jpeg"),
                           QStringLiteral("pdf")}
                   .contains(kind)) {
        tell_said(tr("%1 is a picture; Draw, Scanned plan, Choose lays it beneath the floor.")
                      .arg(file.fileName()));
    } else {
        tell_said(tr("%1 is no plan; plans end with .json.").arg(file.fileName()));
    }
}

bool Window::eventFilter(QObject* watched, QEvent* event) {
    const auto* widget = qobject_cast<QWidget*>(watched);
    if (event->type() == QEvent::ShortcutOverride && widget != nullptr
        && widget->window() == this) {
        const auto* key = static_cast<QKeyEvent*>(event);
        const std::optional<TextSteps> steps = text_steps_of(*watched);
        if (steps
            && ((key->matches(QKeySequence::Undo) && !steps->undo)
                || (key->matches(QKeySequence::Redo) && !steps->redo))) {
            event->ignore();
            return true;
        }
    }
    return QMainWindow::eventFilter(watched, event);
}

bool Window::do_action(const QString& id) {
    return actions_->run(id);
}

void Window::set_recent(const QStringList& paths) {
    actions_->set_recent(paths);
    start_page_->set_recent(paths);
}

void Window::tell_title() {
    setWindowModified(has_plan() && !desk_->is_saved());
    setWindowTitle(tr("%1[*] \u2013 Throwline").arg(title_of(*desk_->plan(), *keeper_)));
}

void Window::tell_said(const QString& sentence) {
    statusBar()->showMessage(sentence, kSaid_ms);
}

} // namespace throwline::ui
