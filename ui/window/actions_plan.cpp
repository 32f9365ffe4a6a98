#include "ui/window/window.h"
#include "ui/window/window_action.h"

#include <QCoreApplication>

namespace throwline::ui {

std::span<const WindowAction> plan_actions() {
    static const WindowAction kActions[]{
        {"plan.new", Menu::plan, nullptr, "&New window", "Ctrl+N",
         [](Window& window) { Q_EMIT window.new_window_wanted(); }},
        {"plan.open", Menu::plan, nullptr, "&Open\u2026", "Ctrl+O",
         [](Window& window) { window.ask_and_open(); }},
        {"plan.save", Menu::plan, nullptr, "&Save", "Ctrl+S", [](Window& window) { window.save(); },
         [](const Window& window) { return window.has_plan(); }, nullptr, true},
        {"plan.save_as", Menu::plan, nullptr, "Save &as\u2026", "Ctrl+Shift+S",
         [](Window& window) { window.save_as(); },
         [](const Window& window) { return window.has_plan(); }},
        {"plan.recce", Menu::plan, nullptr, "&Recce\u2026", "Ctrl+R",
         [](Window& window) { window.open_recce(); }, nullptr, nullptr, true},
        {"plan.sheets", Menu::plan, nullptr, "S&heets\u2026", "Ctrl+P",
         [](Window& window) { window.open_sheets(); },
         [](const Window& window) { return window.has_plan(); }},
        {"plan.close", Menu::plan, nullptr, "&Close window", "Ctrl+W",
         [](Window& window) { window.close(); }, nullptr, nullptr, true},
        {"plan.quit", Menu::plan, nullptr, "&Quit", "Ctrl+Q",
         [](Window& window) { Q_EMIT window.quit_wanted(); }},
    };
    return kActions;
}

} // namespace throwline::ui
