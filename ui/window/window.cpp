#include "ui/window/window.h"

#include "edit/clip.h"
#include "edit/order.h"
#include "edit/pick.h"
#include "edit/say.h"
#include "plan/differences.h"
#include "plan/read_plan.h"
#include "sheet/finding_rows.h"
#include "ui/card_panel/card_panel.h"
#include "ui/findings/findings_panel.h"
#include "ui/help/help_window.h"
#include "ui/recce/recce_window.h"
#include "ui/running_order/running_order.h"
#include "ui/said_line/said_line.h"
#include "ui/sheets/sheets_window.h"
#include "ui/stores/stores_panel.h"
#include "ui/underlay/underlay_reader.h"
#include "ui/viewfinder/frame_view.h"
#include "ui/viewfinder/viewfinder.h"
#include "ui/window/action_book.h"
#include "ui/window/help_pages.h"
#include "ui/window/left_work.h"
#include "ui/window/level_overlay.h"
#include "ui/window/rows_form.h"
#include "ui/window/start_page.h"

#include <QApplication>
#include <QClipboard>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QFileInfo>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMenu>
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
#include <algorithm>

namespace throwline::ui {

namespace {

constexpr int kSideWidth_px = 286;
constexpr int kOrderHeight_px = 140;
constexpr int kViewfinderHeight_px = 236;
/// How long a sentence stays at the foot.
constexpr int kSaid_ms = 8000;
/// Where a copy lands beside its original.
const Vec2 kBeside_m{0.5, -0.5};

QString title_of(const plan::Plan& plan, const Keeper& keeper) {
    if (!keeper.path().empty()) {
        return QString::fromStdString(keeper.path().filename().string());
    }
    return plan.title.empty() ? QObject::tr("Untitled") : QString::fromStdString(plan.title);
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
    auto* across = new QSplitter{Qt::Horizontal, down};
    build_drawer(*across);
    build_floor(*across);
    auto* right = new QSplitter{Qt::Vertical, across};
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
    connect(floor_, &Floor::file_dropped, this, &Window::open);
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
    connect(start_page_, &StartPage::left_work_unwanted, this, [this](int which) {
        store_.drop(left_work_[static_cast<std::size_t>(which)].kept);
        look_for_left_work();
    });
}

// Beginning.

void Window::lay_out_new(plan::Plan plan) {
    if (plan.title.empty()) {
        plan.title = tr("Untitled").toStdString();
    }
    keeper_->begin(std::move(plan));
    show_floor();
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
    lay_out_new({});
    draw_with(HandId::room);
}

void Window::begin_location() {
    lay_out_new({});
    open_recce();
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
    keeper_->begin(*plan);
    desk_->mark_saved();
    show_floor();
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
    if (which >= 0 && static_cast<std::size_t>(which) < left_work_.size()) {
        const Recovery recovery = left_work_[static_cast<std::size_t>(which)];
        tell_open(keeper_->take_up(recovery), {});
        if (!keeper_->readings().empty()) {
            open_recce();
        }
    }
}

// Keeping.

bool Window::has_plan() const {
    return table_->currentIndex() == 0;
}

bool Window::is_untouched() const {
    return keeper_->path().empty() && !desk_->history().can_undo() && keeper_->readings().empty()
           && (desk_->is_saved() || !has_plan());
}

bool Window::save() {
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

bool Window::may_close() {
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
        const QString path = url.toLocalFile();
        if (path.endsWith(QStringLiteral(".json"), Qt::CaseInsensitive)) {
            open(path);
        } else {
            tell_said(tr("%1 is no plan; plans end with .json.").arg(url.fileName()));
        }
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

// Editing.

std::vector<edit::Thing> Window::whole_choice() const {
    return edit::whole_groups(context(), chosen());
}

std::optional<Vec2> Window::middle_of_choice() const {
    std::optional<Vec2> low;
    Vec2 high = Vec2::Zero();
    for (const edit::Thing& thing : whole_choice()) {
        for (const Vec2& corner : edit::outline_of(context(), thing)) {
            high = low ? Vec2{high.cwiseMax(corner)} : corner;
            low = low ? Vec2{low->cwiseMin(corner)} : corner;
        }
    }
    return low ? std::optional{Vec2{(*low + high) / 2.0}} : std::nullopt;
}

void Window::copy() {
    const std::string text = edit::clipped(context(), whole_choice());
    if (text.empty()) {
        tell_said(tr("Walls, openings and outlets stay where they are; choose something else."));
        return;
    }
    auto* carried = new QMimeData;
    carried->setData(QStringLiteral("application/x-throwline-things"),
                     QByteArray::fromStdString(text));
    QStringList names;
    for (const edit::Thing& thing : chosen()) {
        names << QString::fromStdString(edit::name_of(thing));
    }
    carried->setText(names.join(QStringLiteral(", ")));
    QApplication::clipboard()->setMimeData(carried);
}

void Window::cut() {
    copy();
    take_away(false);
}

void Window::paste() {
    const QMimeData* carried = QApplication::clipboard()->mimeData();
    const QByteArray text = carried == nullptr
                                ? QByteArray{}
                                : carried->data(QStringLiteral("application/x-throwline-things"));
    if (text.isEmpty()) {
        tell_said(tr("Nothing was copied that can stand on a floor."));
        return;
    }
    show_floor();
    take(edit::pasted(context(), text.toStdString(), std::nullopt));
}

void Window::copy_beside() {
    take(edit::copied(context(), whole_choice(), kBeside_m));
}

void Window::ask_rows_and_columns() {
    if (const auto array = asked_rows(this, desk_->plan()->units)) {
        take(edit::arrayed(context(), whole_choice(), *array));
    }
}

void Window::take_away(bool from_this_beat) {
    take(edit::removed(context(), whole_choice(), from_this_beat));
}

void Window::choose_all() {
    std::vector<edit::Thing> things;
    for (const edit::Thing& thing : edit::things_on_floor(context())) {
        if (thing.kind != edit::Kind::wall && !edit::is_hidden(*desk_->plan(), thing)
            && !edit::is_locked(*desk_->plan(), thing)) {
            things.push_back(thing);
        }
    }
    desk_->choose(std::move(things));
}

void Window::choose_others() {
    std::vector<edit::Thing> things;
    for (const edit::Thing& thing : edit::things_on_floor(context())) {
        const bool is_chosen = std::find(chosen().begin(), chosen().end(), thing) != chosen().end();
        if (!is_chosen && thing.kind != edit::Kind::wall
            && !edit::is_hidden(*desk_->plan(), thing)) {
            things.push_back(thing);
        }
    }
    desk_->choose(std::move(things));
}

void Window::choose_same_kind() {
    std::vector<edit::Thing> things;
    for (const edit::Thing& thing : edit::things_on_floor(context())) {
        if (thing.kind == chosen().front().kind && !edit::is_hidden(*desk_->plan(), thing)) {
            things.push_back(thing);
        }
    }
    desk_->choose(std::move(things));
}

void Window::turn(Angle by) {
    if (const auto middle = middle_of_choice()) {
        take(edit::turned(context(), whole_choice(), *middle, by));
    }
}

void Window::mirror(Angle line) {
    if (const auto middle = middle_of_choice()) {
        take(edit::mirrored(context(), whole_choice(), *middle, line));
    }
}

bool Window::all_chosen_locked() const {
    return !chosen().empty()
           && std::all_of(chosen().begin(), chosen().end(), [&](const edit::Thing& thing) {
                  return edit::is_locked(*desk_->plan(), thing);
              });
}

bool Window::has_hidden() const {
    return !desk_->plan()->arrangement.hidden.empty();
}

void Window::lock_or_unlock() {
    take(edit::locked(context(), chosen(), !all_chosen_locked()));
}

void Window::draw_with(HandId hand) {
    show_floor();
    floor_->set_hand(hand);
    floor_->setFocus();
}

HandId Window::hand() const {
    return floor_->hand();
}

// The running order.

void Window::add_beat() {
    show_floor();
    const std::vector<plan::Beat>& beats = desk_->plan()->beats;
    const plan::Id<plan::Beat> after =
        !desk_->now().beat.empty() || beats.empty() ? desk_->now().beat : beats.back().id;
    const plan::PlanPtr before = desk_->plan();
    if (take(edit::beat_added(context(), after, {}))) {
        if (const auto now = edit::moment_made(*before, *desk_->plan())) {
            desk_->set_now(*now);
        }
    }
}

void Window::add_shot() {
    show_floor();
    const plan::Plan& plan = *desk_->plan();
    plan::Id<plan::Camera> camera =
        plan.cameras.empty() ? plan::Id<plan::Camera>{} : plan.cameras.front().id;
    for (const edit::Thing& thing : chosen()) {
        if (thing.kind == edit::Kind::camera) {
            camera.name = thing.name;
        }
    }
    const plan::PlanPtr before = desk_->plan();
    if (take(edit::shot_added(context(), desk_->now().beat, camera))) {
        if (const auto now = edit::moment_made(*before, *desk_->plan())) {
            desk_->set_now(*now);
        }
    }
}

void Window::remove_beat() {
    take(edit::beat_removed(context(), desk_->now().beat));
}

void Window::remove_shot() {
    take(edit::shot_removed(context(), desk_->now().shot));
}

void Window::step_beat(int by) {
    const std::vector<plan::Beat>& beats = desk_->plan()->beats;
    for (std::size_t i = 0; i < beats.size(); ++i) {
        if (beats[i].id == desk_->now().beat) {
            const int to =
                std::clamp(static_cast<int>(i) + by, 0, static_cast<int>(beats.size()) - 1);
            desk_->set_now({beats[static_cast<std::size_t>(to)].id, {}});
            return;
        }
    }
}

void Window::step_shot(int by) {
    const std::vector<plan::Shot>& shots = desk_->plan()->shots;
    if (shots.empty()) {
        return;
    }
    int to = by > 0 ? 0 : static_cast<int>(shots.size()) - 1;
    for (std::size_t i = 0; i < shots.size(); ++i) {
        if (shots[i].id == desk_->now().shot) {
            to = std::clamp(static_cast<int>(i) + by, 0, static_cast<int>(shots.size()) - 1);
        }
    }
    const plan::Shot& shot = shots[static_cast<std::size_t>(to)];
    desk_->set_now({shot.beats.front(), shot.id});
}

// Parts.

QWidget* Window::part_widget(Part part) const {
    switch (part) {
    case Part::floor:
        return floor_;
    case Part::stores:
        return stores_;
    case Part::findings:
        return findings_;
    case Part::viewfinder:
        return viewfinder_;
    case Part::card:
        return card_;
    case Part::order:
        return order_;
    case Part::line:
        return line_;
    }
    return floor_;
}

bool Window::is_open(Part part) const {
    if (part == Part::stores || part == Part::findings) {
        return !drawer_->isHidden() && drawer_->currentWidget() == part_widget(part);
    }
    return !part_widget(part)->isHidden();
}

void Window::set_open(Part part, bool open) {
    if (part == Part::stores || part == Part::findings) {
        drawer_->setVisible(open);
        if (open) {
            drawer_->setCurrentWidget(part_widget(part));
        }
    } else {
        part_widget(part)->setVisible(open);
    }
    actions_->look();
}

void Window::keyboard_to(Part part) {
    show_floor();
    if (part != Part::floor) {
        set_open(part, true);
    }
    QWidget* widget = part_widget(part);
    if (part == Part::line) {
        line_->edit().setFocus();
    } else if (widget->focusPolicy() != Qt::NoFocus) {
        widget->setFocus(Qt::ShortcutFocusReason);
    } else if (QWidget* inside = widget->nextInFocusChain()) {
        while (inside->focusPolicy() == Qt::NoFocus && widget->isAncestorOf(inside)) {
            inside = inside->nextInFocusChain();
        }
        inside->setFocus(Qt::ShortcutFocusReason);
    }
}

void Window::open_sheets() {
    if (sheets_ == nullptr) {
        sheets_ = new SheetsWindow{*desk_, this};
        sheets_->setWindowFlag(Qt::Window);
        sheets_->setAttribute(Qt::WA_DeleteOnClose);
        sheets_->set_underlay(underlay_->pixels());
    }
    sheets_->show();
    sheets_->raise();
    sheets_->activateWindow();
}

void Window::open_help(const QString& page) {
    auto* help = findChild<HelpWindow*>();
    if (help == nullptr) {
        help = new HelpWindow{help_pages(), this};
        help->setAttribute(Qt::WA_DeleteOnClose);
    }
    help->open(page);
    help->show();
    help->raise();
    help->activateWindow();
}

bool Window::do_action(const QString& id) {
    return actions_->run(id);
}

void Window::set_recent(const QStringList& paths) {
    actions_->set_recent(paths);
    start_page_->set_recent(paths);
}

void Window::show_menu_for(const QPoint& at) {
    QMenu menu{this};
    actions_->look();
    actions_->fill_short_menu(menu);
    menu.exec(at);
}

void Window::tell_title() {
    setWindowModified(has_plan() && !desk_->is_saved());
    setWindowTitle(tr("%1[*] \u2013 Throwline").arg(title_of(*desk_->plan(), *keeper_)));
}

void Window::tell_said(const QString& sentence) {
    statusBar()->showMessage(sentence, kSaid_ms);
}

} // namespace throwline::ui
