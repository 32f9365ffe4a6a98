#pragma once

#include <QVariantMap>

class QSettings;

/// How a window was left, so that the next one begins so: its place and size, the widths of its
/// parts, which of them are open, what is shown on the floor, and guides and light of the
/// viewfinder. Every switch of the menu Show is kept by its name, but for full screen and the
/// theme.
namespace throwline::ui {

class Window;

/// Plain values by name, for a file of settings.
QVariantMap look_of(const Window& window);

enum class Placed {
    where_left,
    /// As large, wherever the desktop puts a new window.
    by_desktop
};
/// Gives a window that look. What is missing or cannot be made sense of stays as it is.
void give_look(Window& window, const QVariantMap& look, Placed placed);

void keep_look(QSettings& settings, const QVariantMap& look);
/// Empty when none was kept.
QVariantMap kept_look(const QSettings& settings);

} // namespace throwline::ui
