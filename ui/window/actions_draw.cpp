#include "ui/window/window.h"
#include "ui/window/window_action.h"

namespace throwline::ui {

namespace {

template <HandId hand>
void draw(Window& window) {
    window.draw_with(hand);
}

template <HandId hand>
bool draws(const Window& window) {
    return window.hand() == hand;
}

bool has_scan(const Window& window) {
    return window.desk().plan()->underlay.has_value();
}

void put(Window& window, edit::Shelf shelf, const char* item) {
    window.show_floor();
    window.floor().put_in_middle({shelf, item});
}

} // namespace

std::span<const WindowAction> draw_actions() {
    static const WindowAction kActions[]{
        {"draw.choose", Menu::draw, nullptr, "&Choose and move", "C", draw<HandId::choose>, nullptr,
         draws<HandId::choose>},
        {"draw.measure", Menu::draw, nullptr, "&Measure", "M", draw<HandId::measure>, nullptr,
         draws<HandId::measure>},
        {"draw.room", Menu::draw, nullptr, "Room &walls", "W", draw<HandId::room>, nullptr,
         draws<HandId::room>, true},
        {"draw.door", Menu::draw, nullptr, "&Door", "D", draw<HandId::door>, nullptr,
         draws<HandId::door>},
        {"draw.window", Menu::draw, nullptr, "W&indow", "Shift+W", draw<HandId::window>, nullptr,
         draws<HandId::window>},
        {"draw.opening", Menu::draw, nullptr, "&Opening", nullptr, draw<HandId::opening>, nullptr,
         draws<HandId::opening>},
        {"draw.flats", Menu::draw, nullptr, "&Flats", "F", draw<HandId::flats>, nullptr,
         draws<HandId::flats>, true},
        {"draw.drape", Menu::draw, nullptr, "D&rape", "R", draw<HandId::drape>, nullptr,
         draws<HandId::drape>},
        {"draw.platform", Menu::draw, nullptr, "&Platform", "P", draw<HandId::platform>, nullptr,
         draws<HandId::platform>},
        {"draw.box", Menu::draw, nullptr, "&Box", "B", draw<HandId::box>, nullptr,
         draws<HandId::box>},
        {"draw.column", Menu::draw, nullptr, "Co&lumn", "Shift+C", draw<HandId::column>, nullptr,
         draws<HandId::column>},
        {"draw.pipe", Menu::draw, nullptr, "Pip&e", "Shift+P", draw<HandId::pipe>, nullptr,
         draws<HandId::pipe>},
        {"draw.lay_scan", Menu::draw, "&Scanned plan", "&Choose\u2026", nullptr,
         [](Window& window) { window.choose_underlay(); }, nullptr, nullptr, true},
        {"draw.place_scan", Menu::draw, "&Scanned plan", "&Put it in its place", nullptr,
         draw<HandId::underlay>, has_scan, draws<HandId::underlay>},
        {"draw.take_scan_away", Menu::draw, "&Scanned plan", "&Take it away", nullptr,
         [](Window& window) { window.take_underlay_away(); }, has_scan},
        {"put.cast", Menu::draw, "Put in the &middle", "&Somebody of the cast", nullptr,
         [](Window& window) { put(window, edit::Shelf::person, "cast"); }, nullptr, nullptr, true},
        {"put.crew", Menu::draw, "Put in the &middle", "Somebody of the cre&w", nullptr,
         [](Window& window) { put(window, edit::Shelf::person, "crew"); }},
        {"put.camera", Menu::draw, "Put in the &middle", "A &camera", nullptr,
         [](Window& window) { put(window, edit::Shelf::camera, ""); }},
        {"put.boom", Menu::draw, "Put in the &middle", "A &boom", nullptr,
         [](Window& window) { put(window, edit::Shelf::boom, ""); }},
        {"put.outlet", Menu::draw, "Put in the &middle", "An &outlet of a new circuit", nullptr,
         [](Window& window) { put(window, edit::Shelf::outlet, ""); }},
    };
    return kActions;
}

} // namespace throwline::ui
