#include "ui/floor/bench.h"

#include "base/length_text.h"

#include <chrono>
#include <cmath>

namespace throwline::ui {

namespace {

// With more chosen than this, handles would cover the floor.
constexpr std::size_t kMostWithHandles = 6;

} // namespace

Bench::Bench(Desk& desk) : desk_{desk} {
    gather_pick();
}

Bench::~Bench() = default;

/// What was gathered before is taken apart on the thread that gathers anew: on a crowded floor it
/// takes longer than a frame may.
void Bench::gather_pick() {
    known_plan_ = desk_.plan();
    known_now_ = desk_.now();
    known_catalogue_ = desk_.catalogue();
    pick_ = std::async(std::launch::async,
                       [plan = known_plan_, catalogue = known_catalogue_, now = known_now_,
                        old_pick = std::move(pick_), old_field = std::move(field_)]() mutable {
                           old_pick = {};
                           old_field = {};
                           return edit::PickField{edit::Context{*plan, *catalogue, now}};
                       });
    field_ = {};
}

void Bench::gather_field() {
    field_ = std::async(std::launch::async,
                        [plan = known_plan_, catalogue = known_catalogue_, now = known_now_,
                         left_out = left_out_, old_field = std::move(field_)]() mutable {
                            old_field = {};
                            return edit::SnapField{edit::Context{*plan, *catalogue, now}, left_out};
                        });
}

const edit::PickField& Bench::pick() {
    return pick_.get();
}

std::vector<edit::Thing> Bench::under(const Pointer& pointer) {
    return pick().at(pointer.at, view.metres(kThingReach_px));
}

const std::vector<edit::Handle>& Bench::handles() {
    if (!handles_) {
        handles_.emplace();
        const std::vector<edit::Thing>& chosen = desk_.chosen();
        for (std::size_t i = 0; chosen.size() <= kMostWithHandles && i < chosen.size(); ++i) {
            const std::vector<edit::Handle> more =
                edit::handles_of(desk_.shown_context(), chosen[i]);
            handles_->insert(handles_->end(), more.begin(), more.end());
        }
    }
    return *handles_;
}

std::optional<edit::Handle> Bench::handle_under(const QPointF& px) {
    std::optional<edit::Handle> nearest;
    double least_px = kHandleReach_px;
    for (const edit::Handle& handle : handles()) {
        const QPointF away = view.at(handle.at) - px;
        const double distance_px = std::hypot(away.x(), away.y());
        if (distance_px <= least_px) {
            least_px = distance_px;
            nearest = handle;
        }
    }
    return nearest;
}

const std::vector<Polygon>& Bench::outlines() {
    if (!outlines_) {
        outlines_.emplace();
        // Right after a step the field is still being made, which is not waited for when a few
        // outlines are quicker made by themselves.
        const bool is_made = pick_.wait_for(std::chrono::seconds{0}) == std::future_status::ready;
        const bool is_few = desk_.chosen().size() <= kMostWithHandles;
        const bool is_known = desk_.shown() == desk_.plan() && (is_made || !is_few);
        for (const edit::Thing& thing : desk_.chosen()) {
            outlines_->push_back(is_known ? pick().outline(thing)
                                          : edit::outline_of(desk_.shown_context(), thing));
        }
    }
    return *outlines_;
}

void Bench::leave_out_of_snapping(std::vector<edit::Thing> things) {
    if (things != left_out_ || !field_.valid()) {
        left_out_ = std::move(things);
        gather_field();
    }
}

const edit::SnapField& Bench::field() {
    if (!field_.valid()) {
        gather_field();
    }
    return field_.get();
}

edit::SnapSettings Bench::settings_now() const {
    edit::SnapSettings now = settings;
    now.reach_m = view.metres(kSnapReach_px);
    return now;
}

Vec2 Bench::snapped(const Pointer& pointer, const std::optional<Vec2>& from) {
    snap_.reset();
    if (!pointer.keys.testFlag(Qt::AltModifier)) {
        snap_ = field().snapped(pointer.at, settings_now(), from);
    }
    Q_EMIT changed();
    return snap_ ? snap_->at : pointer.at;
}

Vec2 Bench::snapped_shift(const Pointer& pointer, std::span<const Vec2> points, const Vec2& by_m) {
    snap_.reset();
    if (!pointer.keys.testFlag(Qt::AltModifier)) {
        snap_ = field().snapped_shift(points, by_m, settings_now());
    }
    Q_EMIT changed();
    return snap_ ? snap_->at : by_m;
}

void Bench::begin_drag(std::vector<edit::Thing> things, Follow follow) {
    dragged_ = std::move(things);
    follow_ = follow;
    is_dragging_ = true;
    refusal_.clear();
    Q_EMIT drag_changed();
}

void Bench::preview(const Result<edit::Step>& step) {
    refusal_ = step ? QString{} : QString::fromStdString(step.error().message);
    if (step) {
        desk_.preview(step);
    } else {
        desk_.end_preview();
    }
    Q_EMIT changed();
}

bool Bench::take(const Result<edit::Step>& step) {
    clear_marks();
    hide_ghost();
    const bool was_taken = desk_.take(step);
    end_drag();
    return was_taken;
}

void Bench::end_drag() {
    if (is_dragging_) {
        is_dragging_ = false;
        dragged_.clear();
        desk_.end_preview();
        Q_EMIT drag_changed();
    }
    clear_marks();
}

void Bench::show_ghost(const Result<edit::Step>& step) {
    refusal_ = step ? QString{} : QString::fromStdString(step.error().message);
    ghost_plan_ = step ? std::make_shared<const plan::Plan>(step->plan) : nullptr;
    ghosts_ = step ? step->made : std::vector<edit::Thing>{};
    Q_EMIT changed();
}

void Bench::hide_ghost() {
    ghost_plan_.reset();
    ghosts_.clear();
    Q_EMIT changed();
}

void Bench::say_at_pointer(QStringList lines) {
    words_ = std::move(lines);
    Q_EMIT changed();
}

void Bench::clear_marks() {
    snap_.reset();
    words_.clear();
    refusal_.clear();
    Q_EMIT changed();
}

QString Bench::shown(double length_m) const {
    return QString::fromStdString(throwline::shown(Length::metres(length_m), desk_.plan()->units));
}

void Bench::forget() {
    handles_.reset();
    outlines_.reset();
    if (known_plan_ != desk_.plan() || known_now_ != desk_.now()
        || known_catalogue_ != desk_.catalogue()) {
        gather_pick();
    }
}

} // namespace throwline::ui
