#pragma once

#include <QString>
#include <QStringList>
#include <functional>

class QWidget;

/// What a window asks the person in front of it. A value of functions, so that a test can answer.
namespace throwline::ui {

enum class UnsavedAnswer { save, discard, cancel };
enum class ChangedAnswer { keep_mine, load_theirs, save_as, cancel };

struct Questions {
    /// Changes of `title` are not in its file yet.
    std::function<UnsavedAnswer(QWidget* over, const QString& title)> unsaved;
    /// The file of `title` was changed by somebody else; `what` tells what differs.
    std::function<ChangedAnswer(QWidget* over, const QString& title, const QStringList& what)>
        changed;
    /// Tape readings are typed and not in the plan: whether they may be dropped.
    std::function<bool(QWidget* over)> drop_readings;
    /// Work that a crash left behind is there no longer once it is dropped: whether it may be.
    std::function<bool(QWidget* over, const QString& title)> drop_left_work;
    /// Empty when nothing is to be opened, or saved.
    std::function<QString(QWidget* over, const QString& folder)> path_to_open;
    std::function<QString(QWidget* over, const QString& suggested)> path_to_save;
    /// A scanned plan to lay beneath the floor; empty when none is to be.
    std::function<QString(QWidget* over, const QString& folder)> picture_to_lay;
    /// Something to be read before going on: a heading, and sentences.
    std::function<void(QWidget* over, const QString& heading, const QStringList& sentences)> tell;
};

/// With dialogs.
Questions asked_in_dialogs();

} // namespace throwline::ui
