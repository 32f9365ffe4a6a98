#include "ui/floor/hand_choose.h"

#include "base/length_text.h"
#include "edit/moves.h"
#include "edit/typed_place.h"
#include "ui/floor/floor_marks.h"

#include <QPainter>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace throwline::ui {

namespace {

/// The hand shakes by less than this.
constexpr double kStill_px = 4.0;
/// With more moved at once, only their places are drawn to something.
constexpr std::size_t kMostWithOutlines = 12;
constexpr std::size_t kMostPoints = 64;
/// Turning stops at whole steps of this, when it comes near one.
constexpr double kTurnStep_rad = std::numbers::pi / 12.0;
constexpr double kTurnReach_rad = std::numbers::pi / 60.0;

bool is_near(const QPointF& a, const QPointF& b) {
    return std::hypot(a.x() - b.x(), a.y() - b.y()) < kStill_px;
}

bool holds(const std::vector<edit::Thing>& things, const edit::Thing& thing) {
    return std::find(things.begin(), things.end(), thing) != things.end();
}

/// What can be drawn by itself; the others are part of something.
Follow follow_of(edit::Kind kind) {
    switch (kind) {
    case edit::Kind::wall:
    case edit::Kind::opening:
    case edit::Kind::pipe:
    case edit::Kind::outlet:
        return Follow::whole;
    case edit::Kind::scenery:
    case edit::Kind::person:
    case edit::Kind::camera:
    case edit::Kind::lamp:
    case edit::Kind::boom:
        return Follow::alone;
    }
    return Follow::whole;
}

Follow follow_of(const std::vector<edit::Thing>& things) {
    const bool all_alone = std::all_of(things.begin(), things.end(), [](const auto& thing) {
        return follow_of(thing.kind) == Follow::alone;
    });
    return all_alone ? Follow::alone : Follow::whole;
}

/// Whether a handle is put at a place that others can draw.
bool is_placed(edit::HandleKind kind) {
    switch (kind) {
    case edit::HandleKind::corner:
    case edit::HandleKind::microphone:
    case edit::HandleKind::path:
    case edit::HandleKind::edge:
        return true;
    case edit::HandleKind::aim:
    case edit::HandleKind::coverage_left:
    case edit::HandleKind::coverage_right:
    case edit::HandleKind::pool:
    case edit::HandleKind::turn:
        return false;
    }
    return false;
}

/// Brought to a whole step about `centre` when it is near one.
Vec2 in_whole_steps(const Vec2& at, const Vec2& centre) {
    const Vec2 arm = at - centre;
    const double angle_rad = angle_of(arm);
    const double whole_rad = std::round(angle_rad / kTurnStep_rad) * kTurnStep_rad;
    return std::abs(whole_rad - angle_rad) < kTurnReach_rad
               ? centre + unit_at(whole_rad) * arm.norm()
               : at;
}

std::vector<Vec2> points_of(Bench& bench, const std::vector<edit::Thing>& things) {
    std::vector<Vec2> points;
    for (const edit::Thing& thing : things) {
        const std::optional<Vec2> place = edit::place_of(bench.desk().context(), thing);
        if (place && points.size() < kMostPoints) {
            points.push_back(*place);
        }
        const Polygon& outline = bench.pick().outline(thing);
        if (things.size() <= kMostWithOutlines && points.size() + outline.size() <= kMostPoints) {
            points.insert(points.end(), outline.begin(), outline.end());
        }
    }
    return points;
}

} // namespace

void ChooseHand::press(const Pointer& pointer) {
    if (doing_ != Doing::nothing) {
        stop();
    }
    begun_on_ = desk().plan();
    pressed_at_ = pointer.at;
    pressed_px_ = pointer.px;
    pointer_at_ = pointer.at;
    adds_ = pointer.keys.testFlag(Qt::ShiftModifier);
    handle_ = adds_ ? std::nullopt : bench().handle_under(pointer.px);
    if (handle_) {
        doing_ = Doing::handle;
        by_m_ = Vec2::Zero();
        bench().leave_out_of_snapping({handle_->thing});
        bench().begin_drag({handle_->thing}, follow_of(handle_->thing.kind));
        say_value();
        return;
    }
    press_on(bench().under(pointer), pointer);
}

void ChooseHand::press_on(const std::vector<edit::Thing>& under, const Pointer&) {
    if (under.empty()) {
        doing_ = Doing::marquee;
        takes_touched_ = false;
        return;
    }
    doing_ = Doing::pressing;
    const std::vector<edit::Thing>& chosen = desk().chosen();
    was_chosen_ = std::any_of(under.begin(), under.end(),
                              [&](const edit::Thing& thing) { return holds(chosen, thing); });
    if (adds_) {
        toggle(under.front());
    } else if (!was_chosen_) {
        desk().choose(edit::whole_groups(desk().context(), std::span{&under.front(), 1}));
    }
    bench().leave_out_of_snapping(desk().chosen());
}

void ChooseHand::toggle(const edit::Thing& thing) {
    std::vector<edit::Thing> chosen = desk().chosen();
    const std::vector<edit::Thing> group =
        edit::whole_groups(desk().context(), std::span{&thing, 1});
    const bool goes = holds(chosen, thing);
    for (const edit::Thing& member : group) {
        std::erase(chosen, member);
        if (!goes) {
            chosen.push_back(member);
        }
    }
    desk().choose(std::move(chosen));
}

void ChooseHand::move(const Pointer& pointer) {
    pointer_at_ = pointer.at;
    switch (doing_) {
    case Doing::nothing:
        hover(pointer);
        return;
    case Doing::pressing:
        if (!is_near(pointer.px, pressed_px_) && !desk().chosen().empty()) {
            begin_moving();
            move_things(pointer);
        }
        return;
    case Doing::moving:
        move_things(pointer);
        return;
    case Doing::handle:
        move_handle(pointer);
        return;
    case Doing::marquee:
        takes_touched_ = pointer.keys.testFlag(Qt::AltModifier);
        Q_EMIT bench().changed();
        return;
    }
}

void ChooseHand::hover(const Pointer& pointer) {
    if (pointer.is_held) {
        return;
    }
    pointed_handle_ = bench().handle_under(pointer.px);
    const std::vector<edit::Thing> under =
        pointed_handle_ ? std::vector<edit::Thing>{} : bench().under(pointer);
    pointed_outline_ = under.empty() || holds(desk().chosen(), under.front())
                           ? Polygon{}
                           : bench().pick().outline(under.front());
    if (pointed_handle_) {
        bench().say_at_pointer(
            {QString::fromStdString(edit::value_shown(desk().shown_context(), *pointed_handle_))});
    } else {
        bench().say_at_pointer({});
    }
}

void ChooseHand::begin_moving() {
    doing_ = Doing::moving;
    moved_ = desk().chosen();
    points_ = points_of(bench(), moved_);
    bench().leave_out_of_snapping(moved_);
    bench().begin_drag(moved_, follow_of(moved_));
}

Result<edit::Step> ChooseHand::step_by(const Vec2& by_m) const {
    return edit::moved(desk().context(), moved_, by_m);
}

void ChooseHand::move_things(const Pointer& pointer) {
    by_m_ = bench().snapped_shift(pointer, points_, pointer.at - pressed_at_);
    step_ = step_by(by_m_);
    bench().preview(step_);
    QStringList words{bench().shown(by_m_.norm())};
    if (bench().snap()) {
        words << QString::fromStdString(bench().snap()->words);
    }
    bench().say_at_pointer(words);
}

void ChooseHand::move_handle(const Pointer& pointer) {
    if (is_near(pointer.px, pressed_px_) && by_m_.isZero()) {
        return;
    }
    by_m_ = pointer.at - pressed_at_;
    Vec2 to = pointer.at;
    if (is_placed(handle_->kind)) {
        to = bench().snapped(pointer);
    } else if (handle_->kind == edit::HandleKind::turn && !pointer.keys.testFlag(Qt::AltModifier)) {
        const std::optional<Vec2> centre = edit::place_of(desk().context(), handle_->thing);
        to = centre ? in_whole_steps(to, *centre) : to;
    }
    std::vector<edit::Thing> under = bench().under(pointer);
    std::erase(under, handle_->thing);
    step_ = edit::dragged(desk().context(), *handle_, to,
                          under.empty() ? std::nullopt : std::optional{under.front()});
    bench().preview(step_);
    say_value();
}

void ChooseHand::say_value() {
    const std::vector<edit::Handle> now = edit::handles_of(desk().shown_context(), handle_->thing);
    const auto same = std::find_if(now.begin(), now.end(), [&](const edit::Handle& other) {
        return other.kind == handle_->kind && other.index == handle_->index;
    });
    QStringList words;
    if (same != now.end()) {
        words << QString::fromStdString(edit::value_shown(desk().shown_context(), *same));
    }
    if (bench().snap()) {
        words << QString::fromStdString(bench().snap()->words);
    }
    bench().say_at_pointer(words);
}

void ChooseHand::release(const Pointer& pointer) {
    const Doing was = doing_;
    doing_ = Doing::nothing;
    switch (was) {
    case Doing::nothing:
        return;
    case Doing::pressing:
        if (!adds_) {
            choose_beneath(pointer);
        }
        return;
    case Doing::moving:
        bench().take(step_);
        return;
    case Doing::handle:
        if (by_m_.isZero()) {
            bench().end_drag();
        } else {
            bench().take(step_);
        }
        return;
    case Doing::marquee:
        choose_inside(pointer);
        return;
    }
}

/// A click where one was before goes on to what lies beneath.
void ChooseHand::choose_beneath(const Pointer& pointer) {
    const bool again = last_click_px_ && is_near(*last_click_px_, pointer.px);
    last_click_px_ = pointer.px;
    const std::vector<edit::Thing> under = bench().under(pointer);
    if (!was_chosen_ || under.empty()) {
        return;
    }
    const auto at = std::find_if(under.begin(), under.end(), [&](const edit::Thing& thing) {
        return holds(desk().chosen(), thing);
    });
    std::size_t next = at == under.end() ? 0 : static_cast<std::size_t>(at - under.begin());
    if (again) {
        next = (next + 1) % under.size();
    }
    desk().choose(edit::whole_groups(desk().context(), std::span{&under[next], 1}));
}

void ChooseHand::choose_inside(const Pointer& pointer) {
    last_click_px_.reset();
    if (is_near(pointer.px, pressed_px_)) {
        if (!adds_) {
            desk().choose({});
        }
        Q_EMIT bench().changed();
        return;
    }
    const bool touched = pointer.keys.testFlag(Qt::AltModifier);
    std::vector<edit::Thing> chosen = adds_ ? desk().chosen() : std::vector<edit::Thing>{};
    const std::vector<edit::Thing> inside = bench().pick().inside(pressed_at_, pointer.at, touched);
    for (const edit::Thing& thing : edit::whole_groups(desk().context(), inside)) {
        if (!holds(chosen, thing)) {
            chosen.push_back(thing);
        }
    }
    desk().choose(std::move(chosen));
    Q_EMIT bench().changed();
}

bool ChooseHand::takes_typing() const {
    return doing_ == Doing::moving || doing_ == Doing::handle;
}

QString ChooseHand::typed(const QString& text, bool final) {
    const std::string typed = text.toStdString();
    Result<edit::Step> step = failure({});
    if (doing_ == Doing::handle) {
        step = edit::typed(desk().context(), *handle_, typed);
    } else if (doing_ == Doing::moving) {
        const Result<Vec2> to =
            edit::typed_place(typed, pressed_at_, pressed_at_ + by_m_, desk().plan()->units);
        step = to ? step_by(*to - pressed_at_) : tl::unexpected{to.error()};
    }
    if (!step) {
        return QString::fromStdString(step.error().message);
    }
    if (final) {
        doing_ = Doing::nothing;
        bench().take(step);
    } else {
        bench().preview(step);
    }
    return {};
}

bool ChooseHand::end() {
    const bool was_busy = doing_ != Doing::nothing;
    stop();
    return was_busy;
}

void ChooseHand::stop() {
    doing_ = Doing::nothing;
    bench().end_drag();
}

void ChooseHand::look_again() {
    // Undone, or changed by something else, while it was held: what the drag would do was worked
    // out for the plan of before.
    if ((doing_ == Doing::moving || doing_ == Doing::handle) && desk().plan() != begun_on_) {
        stop();
    }
    if (!bench().is_dragging()) {
        pointed_outline_.clear();
        pointed_handle_.reset();
    }
}

void ChooseHand::paint(QPainter& painter) const {
    const MarkInk ink{bench().view, bench().theme};
    if (doing_ == Doing::nothing && !pointed_outline_.empty()) {
        paint_under_pointer(painter, ink, pointed_outline_);
    }
    if (doing_ != Doing::moving) {
        for (const edit::Handle& handle : bench().handles()) {
            const std::optional<edit::Handle>& on =
                handle_ && doing_ == Doing::handle ? handle_ : pointed_handle_;
            const bool is_on = on && on->thing == handle.thing && on->kind == handle.kind
                               && on->index == handle.index;
            paint_handle(painter, ink, handle, edit::place_of(desk().shown_context(), handle.thing),
                         is_on);
        }
    }
    if (bench().snap() && (doing_ == Doing::moving || doing_ == Doing::handle)) {
        paint_snap(painter, ink, *bench().snap(), doing_ == Doing::handle);
    }
    if (doing_ == Doing::marquee) {
        paint_marquee(painter, ink, pressed_at_, pointer_at_, takes_touched_);
    }
}

Qt::CursorShape ChooseHand::cursor() const {
    if (doing_ == Doing::moving) {
        return Qt::SizeAllCursor;
    }
    return pointed_handle_ || !pointed_outline_.empty() ? Qt::PointingHandCursor : Qt::ArrowCursor;
}

QString ChooseHand::hint() const {
    switch (doing_) {
    case Doing::moving:
        return QStringLiteral("Type how far, or let go; Alt moves freely; Esc leaves it");
    case Doing::handle:
        return QStringLiteral("Type a value, or let go; Esc leaves it");
    case Doing::marquee:
        return QStringLiteral("Takes what lies inside; with Alt also what is touched");
    case Doing::nothing:
    case Doing::pressing:
        return desk().chosen().empty()
                   ? QStringLiteral("Click to choose, drag to draw a box around several")
                   : QStringLiteral("Drag, or arrow keys; click once more for the one below");
    }
    return {};
}

} // namespace throwline::ui
