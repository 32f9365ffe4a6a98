#pragma once

#include "edit/make.h"

#include <QStringList>
#include <QWidget>
#include <vector>

class QPushButton;
class QVBoxLayout;

namespace throwline::ui {

class StudioForm;

/// Work that a crash left behind, as the start page offers it.
struct LeftWork {
    QString title;
    /// "12 minutes ago; 3 changes not in the file"
    QString summary;
};

/// What stands on the empty table: how to begin.
class StartPage : public QWidget {
    Q_OBJECT

  public:
    explicit StartPage(QWidget* parent = nullptr);

    void set_recent(const QStringList& paths);
    void set_left_work(const std::vector<LeftWork>& work);

  Q_SIGNALS:
    /// One of the invented productions: its number, from 0, in demo_names().
    void demo_wanted(int which);
    void studio_wanted(const throwline::edit::Studio& studio, throwline::UnitSystem units);
    void location_wanted();
    void empty_floor_wanted();
    void open_wanted();
    void recent_wanted(const QString& path);
    void left_work_wanted(int which);
    void left_work_unwanted(int which);

  private:
    QWidget* begin_column(QWidget* parent);
    QWidget* go_on_column(QWidget* parent);
    void put_stops_in_order();

    StudioForm* studio_ = nullptr;
    /// The last stop of the Tab key before what changes.
    QPushButton* empty_floor_ = nullptr;
    QVBoxLayout* recent_ = nullptr;
    QVBoxLayout* left_work_ = nullptr;
};

/// File names of the productions that come with the program, and how they are called.
struct DemoName {
    const char* file;
    const char* words;
};
const std::vector<DemoName>& demo_names();

} // namespace throwline::ui
