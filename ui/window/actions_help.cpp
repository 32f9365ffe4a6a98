#include "ui/window/window.h"
#include "ui/window/window_action.h"

namespace throwline::ui {

std::span<const WindowAction> help_actions() {
    static const WindowAction kActions[]{
        {"help.contents", Menu::help, nullptr, "&How to work with it", "F1",
         [](Window& window) { window.open_help(QStringLiteral("start")); }},
        {"help.keys", Menu::help, nullptr, "&Keys of the menus", "Shift+F1",
         [](Window& window) { window.open_help(QStringLiteral("keys")); }},
        {"help.sayings", Menu::help, nullptr, "What can be &typed", nullptr,
         [](Window& window) { window.open_help(QStringLiteral("sayings")); }},
        {"help.start_page", Menu::help, nullptr, "&Start page", nullptr,
         [](Window& window) { window.show_start_page(); }, nullptr, nullptr, true},
        {"help.about", Menu::help, nullptr, "&About Throwline", nullptr,
         [](Window& window) { window.open_help(QStringLiteral("about")); }},
    };
    return kActions;
}

} // namespace throwline::ui
