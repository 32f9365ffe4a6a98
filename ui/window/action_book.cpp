#include "ui/window/action_book.h"

#include "edit/say.h"
#include "ui/window/window.h"

#include <QAction>
#include <QFileInfo>
#include <QMenuBar>

namespace throwline::ui {

namespace {

/// What stands in the short menu, parted where a name is empty.
constexpr const char* kShortMenu[]{"edit.cut",       "edit.copy", "edit.paste",  "edit.double",
                                   "edit.take_away", "",          "edit.lock",   "edit.hide",
                                   "edit.group",     "",          "show.zoom_to"};

QString shown_words(const char* words) {
    return QObject::tr(words);
}

QString bare_words(const WindowAction& row) {
    QString words = shown_words(row.words);
    if (row.under != nullptr) {
        words = shown_words(row.under) + QStringLiteral(": ") + words;
    }
    return words.remove(QLatin1Char{'&'}).remove(QStringLiteral("\u2026"));
}

} // namespace

ActionBook::ActionBook(Window& window, QMenuBar& bar) : QObject{&window}, window_{window} {
    for (int i = 0; i < kMenus; ++i) {
        QMenu* menu = bar.addMenu(shown_words(words_of(static_cast<Menu>(i))));
        menu->setToolTipsVisible(true);
        connect(menu, &QMenu::aboutToShow, this, &ActionBook::look);
        menus_[static_cast<std::size_t>(i)] = menu;
    }
    for (const WindowAction* row : all_actions()) {
        add(*row);
    }
    QMenu& plan = menu(Menu::plan);
    recent_ = new QMenu{tr("Opened &lately"), &plan};
    plan.insertMenu(action(QStringLiteral("plan.save")), recent_);
    set_recent({});
}

void ActionBook::add(const WindowAction& row) {
    QMenu* menu = menus_[static_cast<std::size_t>(row.menu)];
    if (row.after_line) {
        menu->addSeparator();
    }
    if (row.under != nullptr) {
        QMenu*& under = under_[{menu, row.under}];
        if (under == nullptr) {
            under = menu->addMenu(shown_words(row.under));
        } else if (row.after_line) {
            under->addSeparator();
        }
        menu = under;
    }
    QAction* action = menu->addAction(shown_words(row.words));
    action->setObjectName(QString::fromLatin1(row.id));
    if (row.keys != nullptr) {
        action->setShortcuts(QKeySequence::listFromString(QString::fromLatin1(row.keys)));
    }
    action->setCheckable(row.is_on != nullptr);
    connect(action, &QAction::triggered, this, [this, id = QString::fromLatin1(row.id)] {
        run(id);
        look();
    });
    // A key works wherever the keyboard is in this window, also while its menu is shut.
    window_.addAction(action);
    actions_.emplace_back(&row, action);
}

void ActionBook::look() {
    const edit::History& history = window_.desk().history();
    for (const auto& [row, action] : actions_) {
        // What cannot be done now is shut out where it is run, so that a key never lies dead
        // because nobody looked; the menu greys it.
        action->setEnabled(row->can == nullptr || row->can(window_));
        if (row->is_on != nullptr) {
            action->setChecked(row->is_on(window_));
        }
    }
    const auto tell = [&](const char* id, const QString& verb, const std::string& name) {
        action(QString::fromLatin1(id))
            ->setText(name.empty()
                          ? verb
                          : QStringLiteral("%1: %2").arg(verb, QString::fromStdString(name)));
    };
    tell("edit.undo", tr("&Undo"), history.undo_name());
    tell("edit.redo", tr("&Redo"), history.redo_name());
}

bool ActionBook::run(const QString& id) {
    for (const auto& [row, action] : actions_) {
        if (id == QLatin1String{row->id}) {
            if (row->can != nullptr && !row->can(window_)) {
                return false;
            }
            row->run(window_);
            return true;
        }
    }
    return false;
}

QAction* ActionBook::action(const QString& id) const {
    for (const auto& [row, action] : actions_) {
        if (id == QLatin1String{row->id}) {
            return action;
        }
    }
    return nullptr;
}

void ActionBook::fill_short_menu(QMenu& menu) const {
    for (const char* id : kShortMenu) {
        if (*id == '\0') {
            menu.addSeparator();
        } else {
            menu.addAction(action(QString::fromLatin1(id)));
        }
    }
}

void ActionBook::set_recent(const QStringList& paths) {
    recent_->clear();
    recent_->setEnabled(!paths.isEmpty());
    for (const QString& path : paths) {
        QAction* entry = recent_->addAction(QFileInfo{path}.fileName());
        entry->setToolTip(path);
        entry->setEnabled(QFileInfo::exists(path));
        connect(entry, &QAction::triggered, this, [this, path] { window_.open(path); });
    }
    recent_->addSeparator();
    connect(recent_->addAction(tr("Forget these")), &QAction::triggered, &window_,
            &Window::recent_cleared);
}

std::vector<edit::SayableAction> ActionBook::sayable() {
    std::vector<edit::SayableAction> actions;
    for (const WindowAction* row : all_actions()) {
        actions.push_back({row->id, bare_words(*row).toLower().toStdString()});
    }
    return actions;
}

} // namespace throwline::ui
