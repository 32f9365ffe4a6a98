#include "edit/moves.h"
#include "ui/window/window.h"
#include "ui/window/window_action.h"

#include <numbers>

namespace throwline::ui {

namespace {

constexpr Angle kTurn = Angle::degrees(15);
constexpr Angle kAcross = Angle::degrees(0);
constexpr Angle kUpwards = Angle::degrees(90);

template <edit::AlignTo to>
void line_up(Window& window) {
    window.take(edit::aligned(window.context(), window.chosen(), to));
}

template <edit::DistributeAlong along>
void spread_out(Window& window) {
    window.take(edit::distributed(window.context(), window.chosen(), along));
}

bool any_chosen(const Window& window) {
    return !window.chosen().empty();
}

bool several_chosen(const Window& window) {
    return window.chosen().size() >= 2;
}

bool three_chosen(const Window& window) {
    return window.chosen().size() >= 3;
}

} // namespace

std::span<const WindowAction> edit_actions() {
    static const WindowAction kActions[]{
        {"edit.undo", Menu::edit, nullptr, "&Undo", "Ctrl+Z",
         [](Window& window) { window.desk().undo(); },
         [](const Window& window) { return window.desk().history().can_undo(); }},
        {"edit.redo", Menu::edit, nullptr, "&Redo", "Ctrl+Shift+Z; Ctrl+Y",
         [](Window& window) { window.desk().redo(); },
         [](const Window& window) { return window.desk().history().can_redo(); }},
        {"edit.cut", Menu::edit, nullptr, "Cu&t", "Ctrl+X", [](Window& window) { window.cut(); },
         any_chosen, nullptr, true},
        {"edit.copy", Menu::edit, nullptr, "&Copy", "Ctrl+C", [](Window& window) { window.copy(); },
         any_chosen},
        {"edit.paste", Menu::edit, nullptr, "&Paste", "Ctrl+V",
         [](Window& window) { window.paste(); }},
        {"edit.double", Menu::edit, nullptr, "&Once more", "Ctrl+D",
         [](Window& window) { window.copy_beside(); }, any_chosen},
        {"edit.rows", Menu::edit, nullptr, "Ro&ws and columns\u2026", "Ctrl+Shift+D",
         [](Window& window) { window.ask_rows_and_columns(); }, any_chosen},
        {"edit.take_away", Menu::edit, nullptr, "Take a&way", "Del",
         [](Window& window) { window.take_away(false); }, any_chosen},
        {"edit.leave_beat", Menu::edit, nullptr, "Send off from this &beat on", "Shift+Del",
         [](Window& window) { window.take_away(true); }, any_chosen},
        {"edit.choose_all", Menu::edit, "C&hoose", "&Everything", "Ctrl+A",
         [](Window& window) { window.choose_all(); }, nullptr, nullptr, true},
        {"edit.choose_others", Menu::edit, "C&hoose", "The &others", "Ctrl+Shift+O",
         [](Window& window) { window.choose_others(); }},
        {"edit.choose_kind", Menu::edit, "C&hoose", "All of the same &kind", "Ctrl+Shift+A",
         [](Window& window) { window.choose_same_kind(); }, any_chosen},
        {"edit.choose_none", Menu::edit, "C&hoose", "&Nothing", nullptr,
         [](Window& window) { window.desk().choose({}); }, any_chosen},
        {"edit.turn_left", Menu::edit, "&Turn and mirror", "15\u00b0 to the &left", "Ctrl+Left",
         [](Window& window) { window.turn(kTurn); }, any_chosen, nullptr, true},
        {"edit.turn_right", Menu::edit, "&Turn and mirror", "15\u00b0 to the &right", "Ctrl+Right",
         [](Window& window) { window.turn(-kTurn); }, any_chosen},
        {"edit.mirror_across", Menu::edit, "&Turn and mirror", "Left becomes ri&ght",
         "Ctrl+Shift+M", [](Window& window) { window.mirror(kUpwards); }, any_chosen},
        {"edit.mirror_up", Menu::edit, "&Turn and mirror", "&Up becomes down", nullptr,
         [](Window& window) { window.mirror(kAcross); }, any_chosen},
        {"edit.line_up_left", Menu::edit, "&Line up", "At the &left", nullptr,
         line_up<edit::AlignTo::left>, several_chosen},
        {"edit.line_up_across", Menu::edit, "&Line up", "&Middles, one above the other", nullptr,
         line_up<edit::AlignTo::middle_across>, several_chosen},
        {"edit.line_up_right", Menu::edit, "&Line up", "At the &right", nullptr,
         line_up<edit::AlignTo::right>, several_chosen},
        {"edit.line_up_top", Menu::edit, "&Line up", "At the &top", nullptr,
         line_up<edit::AlignTo::top>, several_chosen},
        {"edit.line_up_up", Menu::edit, "&Line up", "Middles, &side by side", nullptr,
         line_up<edit::AlignTo::middle_up>, several_chosen},
        {"edit.line_up_bottom", Menu::edit, "&Line up", "At the &bottom", nullptr,
         line_up<edit::AlignTo::bottom>, several_chosen},
        {"edit.spread_across", Menu::edit, "&Spread out", "Evenly &across", nullptr,
         spread_out<edit::DistributeAlong::across>, three_chosen},
        {"edit.spread_up", Menu::edit, "&Spread out", "Evenly &up", nullptr,
         spread_out<edit::DistributeAlong::up>, three_chosen},
        {"edit.group", Menu::edit, nullptr, "&Group", "Ctrl+G",
         [](Window& window) { window.take(edit::grouped(window.context(), window.chosen())); },
         several_chosen, nullptr, true},
        {"edit.ungroup", Menu::edit, nullptr, "U&ngroup", "Ctrl+Shift+G",
         [](Window& window) { window.take(edit::ungrouped(window.context(), window.chosen())); },
         any_chosen},
        {"edit.lock", Menu::edit, nullptr, "Loc&k in place", "Ctrl+L",
         [](Window& window) { window.lock_or_unlock(); }, any_chosen,
         [](const Window& window) { return window.all_chosen_locked(); }},
        {"edit.hide", Menu::edit, nullptr, "H&ide", "Ctrl+H",
         [](Window& window) { window.take(edit::hidden(window.context(), window.chosen(), true)); },
         any_chosen},
        {"edit.show_everything", Menu::edit, nullptr, "Show what is hi&dden", "Ctrl+Shift+H",
         [](Window& window) { window.take(edit::everything_shown(window.context())); },
         [](const Window& window) { return window.has_hidden(); }},
    };
    return kActions;
}

} // namespace throwline::ui
