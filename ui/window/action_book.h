#pragma once

#include "ui/window/window_action.h"

#include <QMenu>
#include <QObject>
#include <QString>
#include <array>
#include <map>
#include <string>
#include <vector>

class QAction;
class QMenuBar;

namespace throwline::edit {
struct SayableAction;
}

namespace throwline::ui {

/// The table of actions as menus and keys of one window.
class ActionBook : public QObject {
    Q_OBJECT

  public:
    ActionBook(Window& window, QMenuBar& bar);

    /// Brings what can be done, and what is on, up to date.
    void look();
    /// Does an action when it can be done now.
    bool run(const QString& id);
    /// Null when there is none.
    QAction* action(const QString& id) const;
    /// What stands in the menu that a click with the other button opens.
    void fill_short_menu(QMenu& menu) const;
    void set_recent(const QStringList& paths);
    QMenu& menu(Menu which) { return *menus_[static_cast<std::size_t>(which)]; }

    /// All actions in words, without marks for the keyboard.
    static std::vector<edit::SayableAction> sayable();

  private:
    void add(const WindowAction& row);

    Window& window_;
    std::array<QMenu*, kMenus> menus_{};
    std::map<std::pair<QMenu*, std::string>, QMenu*> under_;
    std::vector<std::pair<const WindowAction*, QAction*>> actions_;
    QMenu* recent_ = nullptr;
};

} // namespace throwline::ui
