#pragma once

#include <QObject>
#include <QString>
#include <functional>
#include <future>

namespace throwline::ui {

/// Writes files on a thread of its own, so that a slow disk or a long set halts nobody.
class FileWorker : public QObject {
    Q_OBJECT

  public:
    using QObject::QObject;

    /// Does a piece of work unless one is under way; its sentence is told when it is done. It runs
    /// on another thread, so it holds what it needs.
    void ask(std::function<QString()> work);
    bool is_busy() const { return is_busy_; }

  Q_SIGNALS:
    /// Where things were written, or why not.
    void told(const QString& sentence);

  private:
    bool is_busy_ = false;
    /// Waits for its thread when it ends.
    std::future<void> running_;
};

} // namespace throwline::ui
