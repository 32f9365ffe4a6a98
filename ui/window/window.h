#pragma once

#include "edit/moves.h"
#include "ui/desk/desk.h"
#include "ui/floor/floor.h"
#include "ui/keeping/keeper.h"
#include "ui/look/look.h"
#include "ui/window/questions.h"

#include <QMainWindow>
#include <QPointer>
#include <map>

class QSplitter;
class QStackedWidget;
class QTabWidget;

namespace throwline::ui {

class ActionBook;
class CardPanel;
class FindingsPanel;
class LevelOverlay;
class RecceWindow;
class RunningOrder;
class SaidLine;
class SheetsWindow;
class StartPage;
class StoresPanel;
class UnderlayNotice;
class UnderlayReader;
class Viewfinder;

/// The parts of the window that can be folded away or take the keyboard.
enum class Part { floor, stores, findings, viewfinder, card, order, line };

/// One production on the screen: the floor, and what stands at its edges.
class Window : public QMainWindow {
    Q_OBJECT

  public:
    /// `number` tells the windows of one program apart.
    Window(CataloguePtr catalogue, Questions questions, RecoveryStore store, int number);
    ~Window() override;

    Desk& desk() { return *desk_; }
    const Desk& desk() const { return *desk_; }
    Floor& floor() { return *floor_; }
    Keeper& keeper() { return *keeper_; }
    const Keeper& keeper() const { return *keeper_; }
    edit::Context context() const { return desk_->context(); }
    const std::vector<edit::Thing>& chosen() const { return desk_->chosen(); }
    bool take(const Result<edit::Step>& step) { return desk_->take(step); }

    /// Whether something is laid out, also while the start page lies over it.
    bool has_plan() const { return has_plan_; }
    /// Neither a file nor any change: another plan may take its place.
    bool is_untouched() const;
    bool all_chosen_locked() const;
    bool has_hidden() const;

    // Beginning.
    void begin_studio(const edit::Studio& studio, UnitSystem units);
    void begin_empty_floor();
    void begin_location();
    /// Opens a file in this window when it is untouched, else asks for another window.
    void open(const QString& path);
    void open_demo(int which);
    void ask_and_open();
    void show_start_page();

    // Keeping. Each returns whether the work is in its file.
    bool save();
    bool save_as();
    /// Asks about changes that are not saved and readings that are in no plan; whether the window
    /// may go.
    bool may_close();

    // Editing what is chosen.
    void copy();
    void cut();
    void paste();
    void copy_beside();
    void ask_rows_and_columns();
    void take_away(bool from_this_beat);
    void choose_all();
    void choose_others();
    void choose_same_kind();
    void turn(Angle by);
    /// In the line through the middle of what is chosen.
    void mirror(Angle line);
    void lock_or_unlock();
    void draw_with(HandId hand);
    HandId hand() const;
    /// The floor instead of the start page.
    void show_floor();

    // The scanned plan beneath the floor.
    void choose_underlay();
    void take_underlay_away();

    // The running order.
    void add_beat();
    void add_shot();
    void remove_beat();
    void remove_shot();
    void step_beat(int by);
    void step_shot(int by);

    // Parts of the window.
    bool is_open(Part part) const;
    void set_open(Part part, bool open);
    void keyboard_to(Part part);
    void open_recce();
    void open_sheets();
    void open_help(const QString& page);
    ThemeWish theme() const { return theme_; }
    void set_theme(ThemeWish theme) { theme_ = theme; }
    /// Does what an action does, when it can be done now; false when not, or there is none.
    bool do_action(const QString& id);

    void set_recent(const QStringList& paths);
    /// Work that a crash left behind, for the start page.
    void look_for_left_work();

    // Its parts, for tests.
    CardPanel& card() { return *card_; }
    StoresPanel& stores() { return *stores_; }
    FindingsPanel& findings() { return *findings_; }
    RunningOrder& order() { return *order_; }
    Viewfinder& viewfinder() { return *viewfinder_; }
    const Viewfinder& viewfinder() const { return *viewfinder_; }
    SaidLine& line() { return *line_; }
    RecceWindow* recce();
    StartPage& start_page() { return *start_page_; }
    UnderlayReader& underlay() { return *underlay_; }

  Q_SIGNALS:
    void new_window_wanted();
    /// A file for a window of its own.
    void window_wanted(const QString& path);
    void quit_wanted();
    void theme_wanted(throwline::ui::ThemeWish wish);
    void recent_cleared();
    /// About to close, with everything as it was left.
    void leaving();
    /// A file was opened or saved here.
    void file_used(const QString& path);

  protected:
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    /// A line of text without changes of its own leaves undo to the plan.
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void build();
    void build_drawer(QSplitter& across);
    void connect_parts();
    void connect_start_page();
    void build_floor(QSplitter& across);
    void help_at(QWidget& other, const QString& page);
    void open_dropped(const QString& path);
    /// Whether another plan may take the place of this one: it is in its file, or the question was
    /// answered.
    bool may_replace();
    bool may_drop_changes();
    /// What is being typed into a field is taken, as by leaving it.
    void take_typing();
    bool may_drop_readings();
    void connect_underlay();
    void tell_title();
    void tell_said(const QString& sentence);
    void take_left_work(int which);
    void drop_left_work(int which);
    /// Whether it was laid out: not when there is work that is to stay.
    bool lay_out_new(plan::Plan plan);
    void show_menu_for(const QPoint& at);
    void ask_about_change();
    void tell_open(const Result<QStringList>& told, const QString& path);
    /// Takes a choice as one action would, of whole groups.
    std::vector<edit::Thing> whole_choice() const;
    std::optional<Vec2> middle_of_choice() const;
    QWidget* part_widget(Part part) const;

    Questions questions_;
    RecoveryStore store_;
    ThemeWish theme_ = ThemeWish::as_desktop;
    Desk* desk_ = nullptr;
    Keeper* keeper_ = nullptr;
    QStackedWidget* table_ = nullptr;
    StartPage* start_page_ = nullptr;
    Floor* floor_ = nullptr;
    StoresPanel* stores_ = nullptr;
    FindingsPanel* findings_ = nullptr;
    Viewfinder* viewfinder_ = nullptr;
    CardPanel* card_ = nullptr;
    RunningOrder* order_ = nullptr;
    SaidLine* line_ = nullptr;
    QTabWidget* drawer_ = nullptr;
    LevelOverlay* levels_ = nullptr;
    ActionBook* actions_ = nullptr;
    UnderlayReader* underlay_ = nullptr;
    UnderlayNotice* notice_ = nullptr;
    QPointer<RecceWindow> recce_;
    QPointer<SheetsWindow> sheets_;
    std::vector<Recovery> left_work_;
    bool has_plan_ = false;
    bool is_asking_ = false;
};

} // namespace throwline::ui
