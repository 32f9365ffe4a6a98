#pragma once

#include <functional>
#include <vector>

class QWidget;

/// Every panel and dialog of the window, and how each is come to.
namespace throwline::ui {

class Window;

struct Place {
    const char* name;
    /// Brings it up in a window with the first demo on it, and gives what it consists of.
    QWidget* (*open)(Window& window);
};

/// Part by part as they stand in the window, then what opens beside it.
const std::vector<Place>& places();

} // namespace throwline::ui
