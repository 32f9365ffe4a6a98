#pragma once

#include <QObject>
#include <QString>
#include <atomic>
#include <functional>
#include <future>

namespace throwline::ui {

/// Writes files on a thread of its own, so that a slow disk or a long set halts nobody.
class FileWorker : public QObject {
    Q_OBJECT

  public:
    using QObject::QObject;

    /// Told the share of a work that is done, 0..1; false once it is to be given up.
    using MayGoOn = std::function<bool(double share)>;
    /// Gives the sentence that is told when it is done. It runs on another thread, so it holds what
    /// it needs.
    using Work = std::function<QString(const MayGoOn&)>;

    /// Does a piece of work unless one is under way.
    void ask(Work work);
    bool is_busy() const { return is_busy_; }
    /// Asks the work under way to give up. It still tells its sentence.
    void stop() { is_stopped_ = true; }

  Q_SIGNALS:
    void went_on(double share);
    /// Where things were written, or why not.
    void told(const QString& sentence);

  private:
    bool is_busy_ = false;
    std::atomic<bool> is_stopped_ = false;
    /// Waits for its thread when it ends.
    std::future<void> running_;
};

} // namespace throwline::ui
