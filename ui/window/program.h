#pragma once

#include "ui/window/window.h"

#include <QObject>
#include <QStringList>
#include <vector>

class QApplication;

namespace throwline::ui {

/// The windows of one program, what they share, and what a second start of it hands over.
class Program : public QObject {
    Q_OBJECT

  public:
    Program(QApplication& application, CataloguePtr catalogue);
    ~Program() override;

    /// A window for each file, or one with the start page.
    void open(const QStringList& paths);

  private:
    Window* new_window();
    void wear(ThemeWish wish);
    void used(const QString& path);
    void tell_recent();
    void close_all();

    QApplication& application_;
    CataloguePtr catalogue_;
    int windows_made_ = 0;
    ThemeWish theme_ = ThemeWish::as_desktop;
};

} // namespace throwline::ui
