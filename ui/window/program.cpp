#include "ui/window/program.h"

#include "ui/paint/paint.h"
#include "ui/window/handed_files.h"
#include "ui/window/kept_look.h"
#include "ui/window/open_window.h"

#include <QApplication>
#include <QFileInfo>
#include <QPointer>
#include <QSettings>
#include <unistd.h>

namespace throwline::ui {

namespace {

constexpr int kMostRecent = 10;

/// One program a user; the name holds whose it is.
QString server_name() {
    return QStringLiteral("throwline-%1").arg(getuid());
}

QString recent_key() {
    return QStringLiteral("recent");
}

QString theme_key() {
    return QStringLiteral("theme");
}

/// The one in front if there is one; null without any.
const Window* any_window() {
    if (const auto* front = qobject_cast<const Window*>(QApplication::activeWindow())) {
        return front;
    }
    for (const QWidget* widget : QApplication::topLevelWidgets()) {
        if (const auto* window = qobject_cast<const Window*>(widget)) {
            return window;
        }
    }
    return nullptr;
}

} // namespace

Program::Program(QApplication& application, CataloguePtr catalogue)
    : application_{application}, catalogue_{std::move(catalogue)} {
    const int kept = QSettings{}.value(theme_key(), 0).toInt();
    theme_ = kept == 1 ? ThemeWish::light : kept == 2 ? ThemeWish::dark : ThemeWish::as_desktop;
    apply_theme(application_, theme_);
    connect(new HandedFiles{server_name(), this}, &HandedFiles::handed, this, &Program::open);
}

Program::~Program() = default;

void Program::open(const QStringList& paths) {
    if (paths.isEmpty()) {
        new_window();
    }
    for (const QString& path : paths) {
        new_window()->open(path);
    }
}

Window* Program::new_window() {
    const Window* other = any_window();
    auto* window =
        new Window{catalogue_, asked_in_dialogs(), RecoveryStore::of_user(), windows_made_++};
    window->set_theme(theme_);
    connect(window, &Window::new_window_wanted, this, [this] { new_window(); });
    connect(window, &Window::window_wanted, this, [this](const QString& path) { open({path}); });
    connect(window, &Window::quit_wanted, this, &Program::close_all);
    connect(window, &Window::theme_wanted, this, &Program::wear);
    connect(window, &Window::file_used, this, &Program::used);
    connect(window, &Window::leaving, this, [window] {
        QSettings settings;
        keep_look(settings, look_of(*window));
    });
    connect(window, &Window::recent_cleared, this, [this] {
        QSettings{}.remove(recent_key());
        tell_recent();
    });
    window->set_recent(QSettings{}.value(recent_key()).toStringList());
    if (other != nullptr) {
        // As the other looks now, but not on top of it.
        give_look(*window, look_of(*other), Placed::by_desktop);
    } else {
        const QSettings settings;
        give_look(*window, kept_look(settings), Placed::where_left);
    }
    window->show();
    return window;
}

void Program::wear(ThemeWish wish) {
    theme_ = wish;
    QSettings{}.setValue(theme_key(), static_cast<int>(wish));
    apply_theme(application_, wish);
    for (QWidget* widget : QApplication::topLevelWidgets()) {
        if (auto* window = qobject_cast<Window*>(widget)) {
            window->set_theme(wish);
        }
    }
}

void Program::used(const QString& path) {
    QStringList recent = QSettings{}.value(recent_key()).toStringList();
    const QString absolute = QFileInfo{path}.absoluteFilePath();
    recent.removeAll(absolute);
    recent.prepend(absolute);
    QSettings{}.setValue(recent_key(), QStringList{recent.mid(0, kMostRecent)});
    tell_recent();
}

void Program::tell_recent() {
    const QStringList recent = QSettings{}.value(recent_key()).toStringList();
    for (QWidget* widget : QApplication::topLevelWidgets()) {
        if (auto* window = qobject_cast<Window*>(widget)) {
            window->set_recent(recent);
        }
    }
}

void Program::close_all() {
    // Closing may ask, and while it does windows and tips may come and go.
    std::vector<QPointer<Window>> windows;
    for (QWidget* widget : QApplication::topLevelWidgets()) {
        if (auto* window = qobject_cast<Window*>(widget)) {
            windows.emplace_back(window);
        }
    }
    for (const QPointer<Window>& window : windows) {
        if (window != nullptr && !window->close()) {
            return;
        }
    }
}

bool open_windows(CataloguePtr catalogue, const std::vector<std::string>& paths) {
    QStringList files;
    for (const std::string& path : paths) {
        files << QString::fromStdString(path);
    }
    // Qt ends the program when it finds no screen, with a message of its own; say it ours.
    const bool has_screen = qEnvironmentVariableIsSet("DISPLAY")
                            || qEnvironmentVariableIsSet("WAYLAND_DISPLAY")
                            || qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
    if (!has_screen) {
        return false;
    }
    char name[] = "throwline";
    char* arguments[] = {name, nullptr};
    int count = 1;
    QApplication application{count, arguments};
    QApplication::setApplicationName(QStringLiteral("throwline"));
    QApplication::setOrganizationName(QStringLiteral("throwline"));
    QApplication::setDesktopFileName(QStringLiteral("org.throwline.Throwline"));
    const paint::PaintSession session;
    // One program holds all windows of a user.
    if (hand_over_files(server_name(), files)) {
        return true;
    }
    Program program{application, std::move(catalogue)};
    program.open(files);
    return QApplication::exec() == 0;
}

} // namespace throwline::ui
