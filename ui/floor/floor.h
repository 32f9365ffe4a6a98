#pragma once

#include "edit/make.h"
#include "edit/snap.h"
#include "ui/desk/desk.h"
#include "ui/desk/level_runner.h"
#include "ui/floor/floor_view.h"
#include "ui/floor/hands.h"

#include <QString>
#include <QTimer>
#include <QWidget>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

class QGestureEvent;

namespace throwline::ui {

class Bench;
class FloorFoot;
class FloorPicture;
class Hand;
class LivePart;
class TypedLine;
struct PictureWanted;
struct Pointer;

/// The sheet that everything is laid out on: the plan of now, drawn by a thread of its own, and on
/// top of it what is chosen, taken hold of, drawn or measured. Rulers along the top and the left,
/// scale, north and a scale bar at the foot.
class Floor : public QWidget {
    Q_OBJECT

  public:
    explicit Floor(Desk& desk, QWidget* parent = nullptr);
    ~Floor() override;

    HandId hand() const { return hand_id_; }
    const FloorView& view() const;
    /// What draws while something is moved or drawn; kept as long as the floor.
    const edit::SnapSettings& snapping() const;
    void set_snapping(const edit::SnapSettings& settings);
    /// The picture beneath the plan at several sizes; null for none.
    void set_underlay(std::shared_ptr<const std::vector<sheet::ReducedPicture>> sizes);
    /// The level map over the plan. It is shown with what it is of, and with nothing else.
    void set_levels(FloorLevels levels);
    /// Whether the picture shown is of the plan, moment and scale that are to be shown.
    bool is_up_to_date() const;
    /// "1:50", "about 1/4 in = 1 ft"
    QString scale_shown() const;
    /// What a child of the accessible tree stands for: everything on the floor that is not hidden,
    /// in the order in which Tab goes through it.
    const std::vector<edit::Thing>& things() const { return things_; }
    /// On the widget, logical pixels.
    QRect shown_rect(const edit::Thing& thing) const;
    /// The last thing of the choice; null when nothing is chosen.
    const edit::Thing* foremost() const;
    Desk& desk() { return desk_; }
    /// What a plan point is shown at, and the point that is, logical pixels of the widget.
    QPointF px_of(const Vec2& plan_point) const { return view().at(plan_point); }

  public Q_SLOTS:
    void set_hand(throwline::ui::HandId hand);
    /// The whole plan in view.
    void fit();
    /// These in view; the whole plan when there are none.
    void zoom_to(const std::vector<throwline::edit::Thing>& things);
    /// A scale by its name or one's own, "1:37", exactly; says so and returns false when it is
    /// none.
    bool set_scale(const QString& name);
    void zoom_in();
    void zoom_out();
    /// Puts something from the Stores down in the middle of what is looked at.
    void put_in_middle(const throwline::edit::StoreItem& item);

  Q_SIGNALS:
    void hand_changed(throwline::ui::HandId hand);
    /// What is chosen is to be typed about.
    void card_wanted();
    /// A menu for these is wanted at a place on the screen.
    void context_wanted(const QPoint& global, const std::vector<throwline::edit::Thing>& things);
    /// A file was let go of over the floor.
    void file_dropped(const QString& path);
    /// Another part of the plan is looked at, or at another scale.
    void view_changed();

  protected:
    bool event(QEvent* event) override;
    void changeEvent(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dragMoveEvent(QDragMoveEvent* event) override;
    void dragLeaveEvent(QDragLeaveEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    bool focusNextPrevChild(bool next) override;

  private:
    void connect_desk();
    void connect_parts();
    void lay_parts();
    bool is_quick() const;
    void take_look();
    void look_at_another_plan();
    void begin_or_end_drag();
    /// Asks for the picture of what is shown now. `afresh`: one that is being made is of no use.
    void ask(bool afresh);
    PictureWanted wanted() const;
    void went_elsewhere();
    void bring_into_view(const Vec2& at);
    void zoom_about(const QPointF& px, double factor);
    void pan(const QPointF& by_px);
    bool covers_view() const;

    void paint_picture(QPainter& painter) const;
    void paint_live(QPainter& painter);
    void paint_choices(QPainter& painter);
    void paint_words(QPainter& painter) const;
    void paint_finding(QPainter& painter) const;

    bool gesture(QGestureEvent& event);
    bool wants_for_itself(const QKeyEvent& event) const;
    bool key_of_view(const QKeyEvent& event);
    bool key_of_arrow(const QKeyEvent& event);
    bool starts_typing(const QKeyEvent& event) const;
    void nudge(const QPointF& steps, bool far);
    void move_pointer_by(const QPointF& steps, bool far);
    void press_by_key();
    void go_to_thing(bool next);
    void escape();
    void open_typed_line(const QString& text);
    void close_typed_line();
    void show_cursor();
    void tell_foot();
    double nudge_m(bool far) const;
    Pointer pointer_at(const QPointF& px, Qt::KeyboardModifiers keys, bool is_held) const;
    void carry(const QPointF& px, Qt::KeyboardModifiers keys);

    Desk& desk_;
    std::unique_ptr<Bench> bench_;
    HandId hand_id_ = HandId::choose;
    std::unique_ptr<Hand> hand_;
    std::unique_ptr<LivePart> live_;
    std::unique_ptr<LivePart> ghost_;
    FloorPicture* picture_ = nullptr;
    FloorFoot* foot_ = nullptr;
    TypedLine* typed_ = nullptr;
    std::shared_ptr<const std::vector<sheet::ReducedPicture>> underlay_;
    FloorLevels levels_;
    /// Names of what is dragged, and drawn over the picture instead of in it.
    std::set<std::string> lifted_;
    std::set<std::string> hidden_;
    std::vector<edit::Thing> things_;
    std::vector<std::vector<Vec2>> walks_;
    /// Runs while the view moves; then the words are set anew for what is in sight.
    QTimer come_to_rest_;
    /// Where the pointer was last, whether it is over the floor, and whether keys moved it there.
    QPointF pointer_px_;
    bool pointer_is_here_ = false;
    bool pointer_by_keys_ = false;
    /// From where the middle button, or any with Space held, drags the sheet.
    std::optional<QPointF> panning_from_;
    bool space_is_held_ = false;
    bool space_was_used_ = false;
    bool is_fitted_ = false;
    /// What hovers over the floor before it is let go.
    std::optional<edit::StoreItem> carried_;
};

} // namespace throwline::ui
