#include "ui/viewfinder/frame_view.h"
#include "ui/viewfinder/viewfinder.h"
#include "ui/window/window.h"
#include "ui/window/window_action.h"

namespace throwline::ui {

namespace {

template <bool sheet::Overlays::* overlay>
void flip(Window& window) {
    sheet::Overlays overlays = window.desk().overlays();
    overlays.*overlay = !(overlays.*overlay);
    window.desk().set_overlays(overlays);
}

template <bool sheet::Overlays::* overlay>
bool is_shown(const Window& window) {
    return window.desk().overlays().*overlay;
}

template <Part part>
void fold(Window& window) {
    window.set_open(part, !window.is_open(part));
}

template <Part part>
bool is_open(const Window& window) {
    return window.is_open(part);
}

template <ThemeWish wish>
void wear(Window& window) {
    Q_EMIT window.theme_wanted(wish);
}

template <ThemeWish wish>
bool wears(const Window& window) {
    return window.theme() == wish;
}

bool is_lit(const Window& window) {
    return window.viewfinder().frame_view().shading() == Shading::lit;
}

void light_or_plain(Window& window) {
    window.viewfinder().frame_view().set_shading(is_lit(window) ? Shading::plain : Shading::lit);
}

} // namespace

std::span<const WindowAction> show_actions() {
    using sheet::Overlays;
    static const WindowAction kActions[]{
        {"show.fit", Menu::show, nullptr, "&Whole floor", "Home; Ctrl+0",
         [](Window& window) { window.floor().fit(); }},
        {"show.zoom_to", Menu::show, nullptr, "What is &chosen", "Shift+Home",
         [](Window& window) { window.floor().zoom_to(window.chosen()); },
         [](const Window& window) { return !window.chosen().empty(); }},
        {"show.nearer", Menu::show, nullptr, "&Nearer",
         "Ctrl++; Ctrl+=", [](Window& window) { window.floor().zoom_in(); }},
        {"show.farther", Menu::show, nullptr, "&Farther", "Ctrl+-",
         [](Window& window) { window.floor().zoom_out(); }},
        {"show.units", Menu::show, nullptr, "&Metres / feet and inches", "Ctrl+U",
         [](Window& window) { window.desk().toggle_units(); }},
        {"show.coverage", Menu::show, "&On the floor", "Camera &coverage", "Alt+1",
         flip<&Overlays::coverage>, nullptr, is_shown<&Overlays::coverage>, true},
        {"show.focus", Menu::show, "&On the floor", "Depth of &field", "Alt+2",
         flip<&Overlays::focus>, nullptr, is_shown<&Overlays::focus>},
        {"show.sight_lines", Menu::show, "&On the floor", "&Sight lines", "Alt+3",
         flip<&Overlays::sight_lines>, nullptr, is_shown<&Overlays::sight_lines>},
        {"show.beams", Menu::show, "&On the floor", "&Beams", "Alt+4", flip<&Overlays::beams>,
         nullptr, is_shown<&Overlays::beams>},
        {"show.pools", Menu::show, "&On the floor", "&Pools", "Alt+5", flip<&Overlays::pools>,
         nullptr, is_shown<&Overlays::pools>},
        {"show.levels", Menu::show, "&On the floor", "&Levels", "Alt+6", flip<&Overlays::levels>,
         nullptr, is_shown<&Overlays::levels>},
        {"show.circuits", Menu::show, "&On the floor", "C&ircuits", "Alt+7",
         flip<&Overlays::circuits>, nullptr, is_shown<&Overlays::circuits>},
        {"show.ways_out", Menu::show, "&On the floor", "&Ways out", "Alt+8",
         flip<&Overlays::ways_out>, nullptr, is_shown<&Overlays::ways_out>},
        {"show.findings", Menu::show, "&On the floor", "Fi&ndings", "Alt+9",
         flip<&Overlays::findings>, nullptr, is_shown<&Overlays::findings>},
        {"show.squares", Menu::show, "&On the floor", "S&quares", "Alt+0", flip<&Overlays::ground>,
         nullptr, is_shown<&Overlays::ground>, true},
        {"show.sizes", Menu::show, "&On the floor", "Si&zes of the room", nullptr,
         flip<&Overlays::sizes>, nullptr, is_shown<&Overlays::sizes>},
        {"show.lettering", Menu::show, "&On the floor", "Le&ttering", nullptr,
         flip<&Overlays::lettering>, nullptr, is_shown<&Overlays::lettering>},
        {"show.underlay", Menu::show, "&On the floor", "Scanned &plan", nullptr,
         flip<&Overlays::underlay>, nullptr, is_shown<&Overlays::underlay>},
        {"show.stores", Menu::show, nullptr, "&Stores", "F5", fold<Part::stores>, nullptr,
         is_open<Part::stores>, true},
        {"show.findings_list", Menu::show, nullptr, "&Findings", "F6", fold<Part::findings>,
         nullptr, is_open<Part::findings>},
        {"show.viewfinder", Menu::show, nullptr, "&Viewfinder", "F7", fold<Part::viewfinder>,
         nullptr, is_open<Part::viewfinder>},
        {"show.lit", Menu::show, nullptr, "Frame li&t by its lamps", nullptr, light_or_plain,
         nullptr, is_lit},
        {"show.card", Menu::show, nullptr, "C&ard", "F8", fold<Part::card>, nullptr,
         is_open<Part::card>},
        {"show.order", Menu::show, nullptr, "&Running order", "F9", fold<Part::order>, nullptr,
         is_open<Part::order>},
        {"show.full_screen", Menu::show, nullptr, "Full sc&reen", "F11",
         [](Window& window) { window.setWindowState(window.windowState() ^ Qt::WindowFullScreen); },
         nullptr, [](const Window& window) { return window.isFullScreen(); }, true},
        {"show.as_desktop", Menu::show, "&Light or dark", "As the &desktop", nullptr,
         wear<ThemeWish::as_desktop>, nullptr, wears<ThemeWish::as_desktop>},
        {"show.light", Menu::show, "&Light or dark", "&Light", nullptr, wear<ThemeWish::light>,
         nullptr, wears<ThemeWish::light>},
        {"show.dark", Menu::show, "&Light or dark", "&Dark", nullptr, wear<ThemeWish::dark>,
         nullptr, wears<ThemeWish::dark>},
        {"show.go_floor", Menu::show, "&Keyboard to", "The &floor", "F4",
         [](Window& window) { window.keyboard_to(Part::floor); }, nullptr, nullptr, true},
        {"show.go_card", Menu::show, "&Keyboard to", "The &card", "F3",
         [](Window& window) { window.keyboard_to(Part::card); }},
        {"show.go_line", Menu::show, "&Keyboard to", "The &line at the foot", "Ctrl+K",
         [](Window& window) { window.keyboard_to(Part::line); }},
        {"show.go_viewfinder", Menu::show, "&Keyboard to", "The &viewfinder", "Ctrl+Shift+F",
         [](Window& window) { window.keyboard_to(Part::viewfinder); }},
        {"show.go_stores", Menu::show, "&Keyboard to", "The &stores", "Ctrl+F",
         [](Window& window) { window.keyboard_to(Part::stores); }},
        {"show.go_findings", Menu::show, "&Keyboard to", "The f&indings", "Ctrl+E",
         [](Window& window) { window.keyboard_to(Part::findings); }},
        {"show.go_order", Menu::show, "&Keyboard to", "The &running order", "F10",
         [](Window& window) { window.keyboard_to(Part::order); }},
    };
    return kActions;
}

} // namespace throwline::ui
