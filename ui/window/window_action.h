#pragma once

#include <span>
#include <vector>

/// Everything that can be done in the window, as one table: menus, keys, the list of keys in the
/// help and the line at the window's foot are all made from it.
namespace throwline::ui {

class Window;

/// The menu that an action stands in, in the order of the menu bar.
enum class Menu { plan, edit, draw, order, show, help };
inline constexpr int kMenus = 6;

struct WindowAction {
    /// Stable, for tests and for what is said: "edit.undo".
    const char* id;
    Menu menu;
    /// A submenu, such as "Line up"; null for none.
    const char* under;
    /// With its mnemonic: "&Undo".
    const char* words;
    /// In portable form, several parted by "; "; null for none.
    const char* keys;
    void (*run)(Window& window);
    /// Null for what can always be done.
    bool (*can)(const Window& window) = nullptr;
    /// For what is on or off; null for what is just done.
    bool (*is_on)(const Window& window) = nullptr;
    /// Whether a line parts it from what stands before it.
    bool after_line = false;
};

/// Of one menu each; adding an action is a row in one of them.
std::span<const WindowAction> plan_actions();
std::span<const WindowAction> edit_actions();
std::span<const WindowAction> draw_actions();
std::span<const WindowAction> order_actions();
std::span<const WindowAction> show_actions();
std::span<const WindowAction> help_actions();

/// All of them, menu by menu.
std::vector<const WindowAction*> all_actions();
/// "&Plan"
const char* words_of(Menu menu);

} // namespace throwline::ui
