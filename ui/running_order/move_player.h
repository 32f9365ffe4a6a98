#pragma once

#include "ui/desk/desk.h"

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>

namespace throwline::ui {

/// Plays the way that people walk from one beat into the next, in about the time that it takes.
class MovePlayer : public QObject {
    Q_OBJECT

  public:
    explicit MovePlayer(Desk& desk, QObject* parent = nullptr);

    /// Goes on from where people are on their way; from a beat into the next one; in the last beat
    /// the way into it once more.
    void play();
    void stop();
    bool is_playing() const { return timer_.isActive(); }
    /// Times walking pace, > 0.
    void set_pace(double pace) { pace_ = pace; }
    double pace() const { return pace_; }

  Q_SIGNALS:
    /// Begins or ends.
    void playing_changed();

  private:
    void step();
    /// Index of the beat whose way is to be played; -1 for none.
    int beat_to_play() const;
    double seconds_into(int beat) const;

    Desk& desk_;
    QTimer timer_;
    QElapsedTimer since_;
    double from_ = 0.0;
    double seconds_ = 1.0;
    double pace_ = 1.0;
    /// The beat that is being played into.
    edit::Now into_;
};

/// The moment in a beat with the shot that goes on from the moment before, when it does.
edit::Now moment_in(const plan::Plan& plan, const plan::Id<plan::Beat>& beat,
                    const plan::Id<plan::Shot>& shot);

} // namespace throwline::ui
