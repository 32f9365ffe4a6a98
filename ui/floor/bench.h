#pragma once

#include "edit/handles.h"
#include "edit/pick.h"
#include "edit/snap.h"
#include "ui/desk/desk.h"
#include "ui/floor/floor_view.h"
#include "ui/look/look.h"

#include <QObject>
#include <QString>
#include <QStringList>
#include <future>
#include <optional>
#include <vector>

namespace throwline::ui {

/// The pointer over the floor.
struct Pointer {
    Vec2 at = Vec2::Zero();
    QPointF px;
    Qt::KeyboardModifiers keys = Qt::NoModifier;
    /// Its first button is down.
    bool is_held = false;
};

/// What a thing that is being dragged needs so that it follows the pointer: itself drawn live over
/// a picture that does not have it, or the whole picture made anew.
enum class Follow { alone, whole };

/// What the hands work with: the desk, the view, what is under the pointer, what draws it, and what
/// is shown beside it. On the interface thread.
class Bench : public QObject {
    Q_OBJECT

  public:
    explicit Bench(Desk& desk);
    ~Bench() override;

    Desk& desk() { return desk_; }
    FloorView view;
    edit::SnapSettings settings;
    Theme theme = Theme::light;

    /// Things of the plan in the history, as they are now.
    const edit::PickField& pick();
    /// What is under the pointer, what one means first.
    std::vector<edit::Thing> under(const Pointer& pointer);
    /// Handles of what is chosen as it is shown; none when a lot is.
    const std::vector<edit::Handle>& handles();
    std::optional<edit::Handle> handle_under(const QPointF& px);
    /// Outlines of what is chosen as it is shown.
    const std::vector<Polygon>& outlines();

    /// From now on these draw nothing to them: they are what is being moved. What does is gathered
    /// on another thread, so say it before it is asked for.
    void leave_out_of_snapping(std::vector<edit::Thing> things);
    /// Where a point is drawn to; itself with Alt held or nothing in reach. What drew it is shown.
    Vec2 snapped(const Pointer& pointer, const std::optional<Vec2>& from = std::nullopt);
    /// The same for a shift of things with these points.
    Vec2 snapped_shift(const Pointer& pointer, std::span<const Vec2> points, const Vec2& by_m);
    const std::optional<edit::Snap>& snap() const { return snap_; }

    /// A drag of these begins, goes on and ends.
    void begin_drag(std::vector<edit::Thing> things, Follow follow);
    /// Shows what would be; why not when it cannot.
    void preview(const Result<edit::Step>& step);
    /// Returns whether it was taken; the drag is over.
    bool take(const Result<edit::Step>& step);
    void end_drag();
    bool is_dragging() const { return is_dragging_; }
    const std::vector<edit::Thing>& dragged() const { return dragged_; }
    Follow follow() const { return follow_; }

    /// Shows what a step would make, faintly, without telling anybody else; why not when it cannot.
    void show_ghost(const Result<edit::Step>& step);
    void hide_ghost();
    /// Null for none.
    const plan::PlanPtr& ghost_plan() const { return ghost_plan_; }
    const std::vector<edit::Thing>& ghosts() const { return ghosts_; }

    /// Words beside the pointer, a line each.
    void say_at_pointer(QStringList lines);
    const QStringList& words() const { return words_; }
    /// Why the last step cannot be; empty when it can.
    const QString& refusal() const { return refusal_; }
    /// Forgets snap, words and refusal.
    void clear_marks();

    QString shown(double length_m) const;

    /// What was known of an older plan or choice is no longer true.
    void forget();

  Q_SIGNALS:
    /// Something on top of the picture is another.
    void changed();
    /// is_dragging() is another.
    void drag_changed();

  private:
    edit::SnapSettings settings_now() const;
    const edit::SnapField& field();
    void gather_pick();
    void gather_field();

    Desk& desk_;
    /// What the two fields are of.
    plan::PlanPtr known_plan_;
    edit::Now known_now_;
    CataloguePtr known_catalogue_;
    /// With thousands of things each takes several frames to make.
    std::shared_future<edit::PickField> pick_;
    std::shared_future<edit::SnapField> field_;
    std::vector<edit::Thing> left_out_;
    std::optional<std::vector<edit::Handle>> handles_;
    std::optional<std::vector<Polygon>> outlines_;
    std::optional<edit::Snap> snap_;
    QStringList words_;
    QString refusal_;
    bool is_dragging_ = false;
    std::vector<edit::Thing> dragged_;
    Follow follow_ = Follow::alone;
    plan::PlanPtr ghost_plan_;
    std::vector<edit::Thing> ghosts_;
};

/// How near a handle, and a thing, must be to the pointer, logical pixels.
inline constexpr double kHandleReach_px = 9.0;
inline constexpr double kThingReach_px = 5.0;
/// How near draws, logical pixels.
inline constexpr double kSnapReach_px = 10.0;

} // namespace throwline::ui
