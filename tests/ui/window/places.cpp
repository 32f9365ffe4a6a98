#include "ui/window/places.h"

#include "ui/card_panel/card_panel.h"
#include "ui/findings/findings_panel.h"
#include "ui/help/help_window.h"
#include "ui/recce/recce_window.h"
#include "ui/running_order/running_order.h"
#include "ui/said_line/said_line.h"
#include "ui/sheets/sheets_window.h"
#include "ui/stores/own_item_form.h"
#include "ui/stores/stores_panel.h"
#include "ui/viewfinder/viewfinder.h"
#include "ui/window/start_page.h"
#include "ui/window/window.h"

#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QTest>

namespace throwline::ui {

namespace {

/// The Card of the first thing of a kind.
template <edit::Kind kind>
QWidget* card_of(Window& window) {
    window.set_open(Part::card, true);
    for (const edit::Thing& thing : window.floor().things()) {
        if (thing.kind == kind) {
            window.desk().choose({thing});
            break;
        }
    }
    QTest::qWait(1);
    return &window.card();
}

QWidget* findings_of(Window& window) {
    window.set_open(Part::findings, true);
    auto* list = window.findings().findChild<QListView*>();
    for (int row = 0; row < list->model()->rowCount(); ++row) {
        if (list->model()->index(row, 0).flags().testFlag(Qt::ItemIsSelectable)) {
            list->setCurrentIndex(list->model()->index(row, 0));
            break;
        }
    }
    return &window.findings();
}

QWidget* reason_of(Window& window) {
    findings_of(window);
    for (auto* button : window.findings().findChildren<QPushButton*>()) {
        if (button->isVisible() && button->text().contains(QStringLiteral("ccept"))) {
            button->click();
            break;
        }
    }
    return &window.findings();
}

template <class T>
QWidget* opened(Window& window, void (Window::*open)()) {
    (window.*open)();
    QTest::qWait(1);
    return window.findChild<T*>();
}

} // namespace

const std::vector<Place>& places() {
    static const std::vector<Place> kPlaces{
        {"Stores",
         [](Window& window) -> QWidget* {
             window.set_open(Part::stores, true);
             return &window.stores();
         }},
        {"Findings", findings_of},
        {"Reason", reason_of},
        {"Floor", [](Window& window) -> QWidget* { return &window.floor(); }},
        {"Viewfinder", [](Window& window) -> QWidget* { return &window.viewfinder(); }},
        {"CardOfThePlan",
         [](Window& window) -> QWidget* {
             window.desk().choose({});
             QTest::qWait(1);
             return &window.card();
         }},
        {"CardOfACamera", card_of<edit::Kind::camera>},
        {"CardOfALamp", card_of<edit::Kind::lamp>},
        {"CardOfAPerson", card_of<edit::Kind::person>},
        {"CardOfAPiece", card_of<edit::Kind::scenery>},
        {"CardOfAWall", card_of<edit::Kind::wall>},
        {"RunningOrder", [](Window& window) -> QWidget* { return &window.order(); }},
        {"Line",
         [](Window& window) -> QWidget* {
             QLineEdit& line = window.line().edit();
             line.setFocus();
             line.setText(QStringLiteral("move nobody left 40 cm"));
             QTest::keyClick(&line, Qt::Key_Return);
             return &window.line();
         }},
        {"StartPage",
         [](Window& window) -> QWidget* {
             window.set_recent({QStringLiteral(THROWLINE_SOURCE_DIR "/demo/cookery.json"),
                                QStringLiteral(THROWLINE_SOURCE_DIR "/demo/market_hall.json")});
             window.show_start_page();
             return &window.start_page();
         }},
        {"Sheets",
         [](Window& window) { return opened<SheetsWindow>(window, &Window::open_sheets); }},
        {"Recce", [](Window& window) { return opened<RecceWindow>(window, &Window::open_recce); }},
        {"Help",
         [](Window& window) -> QWidget* {
             window.open_help(QStringLiteral("start"));
             return window.findChild<HelpWindow*>();
         }},
        {"OwnItem", [](Window& window) -> QWidget* { return window.stores().open_form(true); }},
        {"OwnLamp", [](Window& window) -> QWidget* {
             OwnItemForm* form = window.stores().open_form(true);
             form->set_table("instruments");
             return form;
         }}};
    return kPlaces;
}

} // namespace throwline::ui
