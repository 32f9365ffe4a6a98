#include "ui/card_panel/card_panel.h"
#include "ui/findings/findings_panel.h"
#include "ui/help/help_window.h"
#include "ui/running_order/running_order.h"
#include "ui/said_line/said_line.h"
#include "ui/sheets/sheets_window.h"
#include "ui/stores/stores_panel.h"
#include "ui/underlay/underlay_reader.h"
#include "ui/viewfinder/viewfinder.h"
#include "ui/window/action_book.h"
#include "ui/window/help_pages.h"
#include "ui/window/window.h"

#include <QLineEdit>
#include <QMenu>
#include <QShortcut>
#include <QTabWidget>

/// The parts of the window, and the windows beside it.
namespace throwline::ui {

QWidget* Window::part_widget(Part part) const {
    switch (part) {
    case Part::floor:
        return floor_;
    case Part::stores:
        return stores_;
    case Part::findings:
        return findings_;
    case Part::viewfinder:
        return viewfinder_;
    case Part::card:
        return card_;
    case Part::order:
        return order_;
    case Part::line:
        return line_;
    }
    return floor_;
}

bool Window::is_open(Part part) const {
    if (part == Part::stores || part == Part::findings) {
        return !drawer_->isHidden() && drawer_->currentWidget() == part_widget(part);
    }
    return !part_widget(part)->isHidden();
}

void Window::set_open(Part part, bool open) {
    if (part == Part::stores || part == Part::findings) {
        drawer_->setVisible(open);
        if (open) {
            drawer_->setCurrentWidget(part_widget(part));
        }
    } else {
        part_widget(part)->setVisible(open);
    }
    actions_->look();
}

void Window::keyboard_to(Part part) {
    show_floor();
    if (part != Part::floor) {
        set_open(part, true);
    }
    QWidget* widget = part_widget(part);
    if (part == Part::line) {
        line_->edit().setFocus();
    } else if (widget->focusPolicy() != Qt::NoFocus) {
        widget->setFocus(Qt::ShortcutFocusReason);
    } else if (QWidget* inside = widget->nextInFocusChain()) {
        while (inside->focusPolicy() == Qt::NoFocus && widget->isAncestorOf(inside)) {
            inside = inside->nextInFocusChain();
        }
        inside->setFocus(Qt::ShortcutFocusReason);
    }
}

void Window::open_sheets() {
    if (sheets_ == nullptr) {
        sheets_ = new SheetsWindow{*desk_, this};
        sheets_->setWindowFlag(Qt::Window);
        sheets_->setAttribute(Qt::WA_DeleteOnClose);
        sheets_->set_underlay(underlay_->pixels());
        help_at(*sheets_, QStringLiteral("sheets"));
    }
    sheets_->show();
    sheets_->raise();
    sheets_->activateWindow();
}

void Window::open_help(const QString& page) {
    auto* help = findChild<HelpWindow*>();
    if (help == nullptr) {
        help = new HelpWindow{help_pages(), this};
        help->setAttribute(Qt::WA_DeleteOnClose);
    }
    help->open(page);
    help->show();
    help->raise();
    help->activateWindow();
}

/// The page about a window of its own, by the key of help.
void Window::help_at(QWidget& other, const QString& page) {
    auto* key = new QShortcut{QKeySequence{Qt::Key_F1}, &other};
    connect(key, &QShortcut::activated, this, [this, page] { open_help(page); });
}

void Window::show_menu_for(const QPoint& at) {
    // Not on the stack: the window may be closed while the menu is open.
    auto* menu = new QMenu{this};
    menu->setAttribute(Qt::WA_DeleteOnClose);
    actions_->look();
    actions_->fill_short_menu(*menu);
    menu->popup(at);
}

} // namespace throwline::ui
