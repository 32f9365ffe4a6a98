#include "edit/order.h"
#include "edit/say.h"
#include "ui/window/window.h"

#include <algorithm>

/// Beats and shots, from the window's menu and keys.
namespace throwline::ui {

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

} // namespace throwline::ui
