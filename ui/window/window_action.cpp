#include "ui/window/window_action.h"

namespace throwline::ui {

std::vector<const WindowAction*> all_actions() {
    std::vector<const WindowAction*> all;
    for (const auto part : {plan_actions(), edit_actions(), draw_actions(), order_actions(),
                            show_actions(), help_actions()}) {
        for (const WindowAction& action : part) {
            all.push_back(&action);
        }
    }
    return all;
}

const char* words_of(Menu menu) {
    switch (menu) {
    case Menu::plan:
        return "&Plan";
    case Menu::edit:
        return "&Edit";
    case Menu::draw:
        return "&Draw";
    case Menu::order:
        return "&Running order";
    case Menu::show:
        return "&Show";
    case Menu::help:
        return "&Help";
    }
    return "";
}

} // namespace throwline::ui
