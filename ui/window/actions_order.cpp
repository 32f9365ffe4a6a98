#include "ui/window/window.h"
#include "ui/window/window_action.h"

namespace throwline::ui {

namespace {

bool has_beat(const Window& window) {
    return !window.desk().now().beat.empty();
}

bool has_shot(const Window& window) {
    return !window.desk().now().shot.empty();
}

} // namespace

std::span<const WindowAction> order_actions() {
    static const WindowAction kActions[]{
        {"order.new_beat", Menu::order, nullptr, "New &beat", "Ctrl+B",
         [](Window& window) { window.add_beat(); }},
        {"order.new_shot", Menu::order, nullptr, "New &shot", "Ctrl+T",
         [](Window& window) { window.add_shot(); },
         [](const Window& window) { return !window.desk().plan()->cameras.empty(); }},
        {"order.remove_shot", Menu::order, nullptr, "Take this s&hot away", nullptr,
         [](Window& window) { window.remove_shot(); }, has_shot, nullptr, true},
        {"order.remove_beat", Menu::order, nullptr, "Take this b&eat away", nullptr,
         [](Window& window) { window.remove_beat(); }, has_beat},
        {"order.next_beat", Menu::order, nullptr, "&Next beat", "PgDown",
         [](Window& window) { window.step_beat(1); }, has_beat, nullptr, true},
        {"order.last_beat", Menu::order, nullptr, "&Beat before", "PgUp",
         [](Window& window) { window.step_beat(-1); }, has_beat},
        {"order.next_shot", Menu::order, nullptr, "Ne&xt shot", "Ctrl+PgDown",
         [](Window& window) { window.step_shot(1); }},
        {"order.last_shot", Menu::order, nullptr, "Sh&ot before", "Ctrl+PgUp",
         [](Window& window) { window.step_shot(-1); }},
    };
    return kActions;
}

} // namespace throwline::ui
